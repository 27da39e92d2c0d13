package chemicals

import (
	"slices"
	"strings"

	"etchbound/schemas/columns"
)

// partOf reads one part of which names are made; its kind is for people.
func partOf(r columns.Row) string {
	r.Choice("kind", "element", "stem", "ending", "prefix", "word")
	return r.Named("part")
}

// Misspelt returns the names of the substances of which a name, slug or synonym is at
// most so many letters away from text, nearest first, where text is a slip of the
// pen. A formula, and a name all of whose words are made of parts of names, is no
// slip: tetraethylammonium hydroxide, sodium chlorate and ethanal are other chemicals
// than those that differ from them by a letter or two.
func (l *SubstanceLibrary) Misspelt(text string, letters int) []string {
	if _, err := ParseFormula(strings.TrimSpace(text)); err == nil {
		return nil
	}
	words := strings.Fields(fold(text))
	sound := slices.DeleteFunc(slices.Clone(words), func(w string) bool { return !l.wellFormed(w) })
	if len(words) == len(sound) {
		return nil
	}
	var out []string
	for _, name := range l.Nearest(text, 3) {
		s, _ := l.Find(name)
		if slices.ContainsFunc(append([]string{s.Name, s.Slug}, s.Synonyms...), func(other string) bool {
			return slipOf(fold(text), fold(other), sound, letters)
		}) {
			out = append(out, name)
		}
	}
	return out
}

// slipOf reports whether a text is another name with a few letters wrong, and neither
// its digits nor the words that are well formed.
func slipOf(text, name string, sound []string, letters int) bool {
	if d := editDistance(text, name); d > letters || 4*d >= len(name) || digits(text) != digits(name) {
		return false
	}
	there := strings.Fields(name)
	return !slices.ContainsFunc(sound, func(w string) bool { return !slices.Contains(there, w) })
}

func digits(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, s)
}

// wellFormed reports whether a word is made of parts of names and nothing else.
func (l *SubstanceLibrary) wellFormed(word string) bool {
	ends := make([]bool, len(word)+1) // where a part can end
	ends[0] = true
	for i := range word {
		for _, p := range l.parts {
			if ends[i] && strings.HasPrefix(word[i:], p) {
				ends[i+len(p)] = true
			}
		}
	}
	return ends[len(word)]
}
