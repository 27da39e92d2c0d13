package chemicals

import (
	"cmp"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"
)

// SubstanceLibrary finds substances by whatever a writer calls them.
type SubstanceLibrary struct {
	all     []*Substance
	formula map[string]*Substance // as written, where capitals tell Co from CO
	name    map[string]*Substance // folded slug, name, synonym, CAS, formula
	parts   []string              // of which names of chemicals are made
}

var library = sync.OnceValue(func() *SubstanceLibrary {
	all, err := loadSubstances(dataFiles)
	if err != nil {
		panic(err) // embedded, so a fault of the build; a test reads it
	}
	parts, err := read(dataFiles, "data/name_parts.csv", partOf)
	if err != nil {
		panic(err)
	}
	return newLibrary(all, parts)
})

// Library returns the substances the binary carries, parsed on first use. It
// is never changed and safe for concurrent use.
func Library() *SubstanceLibrary { return library() }

func newLibrary(all []*Substance, parts []string) *SubstanceLibrary {
	l := &SubstanceLibrary{all: all, parts: parts, formula: make(map[string]*Substance, len(all)),
		name: make(map[string]*Substance, 8*len(all))}
	for _, s := range all {
		l.keep(l.formula, s.Formula.Text, s)
		for _, n := range append([]string{s.Slug, s.Name, s.CAS}, s.Synonyms...) {
			l.keep(l.name, fold(n), s)
		}
	}
	for _, s := range all { // a name wins over the formula of something else
		l.keep(l.name, fold(s.Formula.Text), s)
	}
	return l
}

func (l *SubstanceLibrary) keep(in map[string]*Substance, key string, s *Substance) {
	if _, taken := in[key]; key != "" && !taken {
		in[key] = s
	}
}

// fold makes spellings that differ by capitals, spaces or underscores the same.
func fold(text string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return r == ' ' || r == '_' || r == '\t'
	}), " ")
}

// Find returns the substance with a slug, name, synonym, formula or CAS number.
// Capitals do not matter, unless two formulas differ only by them.
func (l *SubstanceLibrary) Find(text string) (*Substance, bool) {
	if s, ok := l.formula[strings.TrimSpace(text)]; ok {
		return s, true
	}
	s, ok := l.name[fold(text)]
	return s, ok
}

// All returns every substance in file order. The slice is the caller's, the
// substances are shared and not to be changed.
func (l *SubstanceLibrary) All() []*Substance { return slices.Clone(l.all) }

// Nearest returns the names of at most n substances whose name, slug, synonym
// or formula is nearest to text, nearest first.
func (l *SubstanceLibrary) Nearest(text string, n int) []string {
	type candidate struct {
		name     string
		distance int
	}
	n = min(max(n, 0), len(l.all))
	key := fold(text)
	found := make([]candidate, 0, len(l.all))
	for _, s := range l.all {
		best := editDistance(key, fold(s.Name))
		for _, other := range append([]string{s.Slug, s.Formula.Text}, s.Synonyms...) {
			best = min(best, editDistance(key, fold(other)))
		}
		found = append(found, candidate{s.Name, best})
	}
	slices.SortStableFunc(found, func(a, b candidate) int { return cmp.Compare(a.distance, b.distance) })
	out := make([]string, 0, n)
	for _, c := range found[:n] {
		out = append(out, c.name)
	}
	return out
}

// editDistance counts the letters to insert, remove or change to turn a into b.
func editDistance(a, b string) int {
	row := make([]int, utf8.RuneCountInString(b)+1)
	for j := range row {
		row[j] = j
	}
	i := 0
	for _, ca := range a {
		i++
		diagonal := row[0]
		row[0] = i
		j := 0
		for _, cb := range b {
			j++
			change := diagonal
			if ca != cb {
				change++
			}
			diagonal, row[j] = row[j], min(change, row[j]+1, row[j-1]+1)
		}
	}
	return row[len(row)-1]
}
