package material

import (
	"slices"
	"strings"
	"unicode"
)

// Wall is what a text says a wall is made of.
type Wall struct {
	Text    string
	Wetted  []*Material // what meets the liquor; none: not known
	Behind  []*Material // the shell of a lining or coat
	Lined   bool        // it has a lining or coat
	Strange string      // words of what meets the liquor that are neither a material nor plain
	Hidden  bool        // something of the shell is not known
}

// Known reports whether every part that meets the liquor is held.
func (w *Wall) Known() bool { return len(w.Wetted) > 0 && w.Strange == "" }

// All are the materials of the wall, what meets the liquor first.
func (w *Wall) All() []*Material { return append(append([]*Material(nil), w.Wetted...), w.Behind...) }

// Name is the text as written, or that it is not stated.
func (w *Wall) Name() string {
	if w.Text == "" {
		return "a material that is not stated"
	}
	return w.Text
}

// split is the words of a text: what stands between other signs than letters and digits.
func split(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return !unicode.IsLetter(r) &&
			!unicode.IsDigit(r)
	})
}

// part is one piece of a text that means something: a material, a word for a coat, or
// a word that nobody knows.
type part struct {
	meaning
	words string
	known bool
}

// Read tells what a text says. An empty one says nothing.
func (t *Table) Read(text string) Wall {
	w := Wall{Text: strings.Join(strings.Fields(text), " ")}
	parts := t.parts(split(text))
	coat := -1
	for i, p := range parts {
		if p.known && p.coat {
			coat, w.Lined = i, true
			break
		}
	}
	inner := lining(parts, coat)
	for i, p := range parts {
		switch {
		case !p.known && coat >= 0 && i != inner:
			w.Hidden = true
		case !p.known:
			w.Strange = strings.TrimSpace(w.Strange + " " + p.words)
		case p.row < 0:
		case coat < 0 || i == inner:
			w.Wetted = append(w.Wetted, &t.rows[p.row])
		default:
			w.Behind = append(w.Behind, &t.rows[p.row])
		}
	}
	w.Wetted, w.Behind = named(w.Wetted), named(w.Behind)
	return w
}

// named leaves out what only says a sort beside a material that is named: in "HDPE
// plastic" it is HDPE that counts.
func named(list []*Material) []*Material {
	sort := func(m *Material) bool { return m.Class == "not named" }
	if !slices.ContainsFunc(list, func(m *Material) bool { return !sort(m) }) {
		return list
	}
	return slices.DeleteFunc(list, sort)
}

// lining is the part that names the lining: the word for the coat itself (enamelled),
// what stands behind "lined with", or what stands right before the word (PTFE-lined).
func lining(parts []part, coat int) int {
	switch {
	case coat < 0:
		return -1
	case parts[coat].row >= 0:
		return coat
	case coat+1 < len(parts) && strings.HasSuffix(parts[coat].words, " with"):
		return coat + 1
	}
	return coat - 1
}

// parts cuts words into the longest runs that mean something and leaves out what is
// plain: numbers and words of the trade that name no material.
func (t *Table) parts(words []string) []part {
	var out []part
	for at := 0; at < len(words); {
		n, found := t.longest(words[at:])
		key := strings.Join(words[at:at+n], " ")
		switch {
		case !found && !number(key):
			out = append(out, part{meaning{row: -1}, key, false})
		case found && (t.words[key].row >= 0 || t.words[key].coat):
			out = append(out, part{t.words[key], key, true})
		}
		at += n
	}
	return out
}

func (t *Table) longest(words []string) (int, bool) {
	for n := min(t.most, len(words)); n > 0; n-- {
		if _, there := t.words[strings.Join(words[:n], " ")]; there {
			return n, true
		}
	}
	return 1, false
}

// number reports whether a word is a number, or one with its unit.
func number(word string) bool { return word[0] >= '0' && word[0] <= '9' }
