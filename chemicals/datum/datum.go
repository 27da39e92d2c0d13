// Package datum knows what a number of the data is called: its kind and what it is of. It
// must not know any value, nor which substances and materials there are.
//
// In tables, in the files people write and in what is printed an id is text: the kind, what
// it is of and, where there are several numbers of one, which of them, with points between.
// Kinds that are of something are rows of kinds.csv. Code makes an id with Of and takes it
// apart with Key, and nowhere else.
package datum

import (
	_ "embed"
	"path"
	"strings"
	"sync"

	"etchbound/schemas/columns"
)

//go:embed kinds.csv
var table string

// ID names a row of the data.
type ID string

// stated begins the id of a quantity that a file states with a range, before its place in
// the file. No kind can be called so: a colon stands in no id of a table.
const stated = "given:"

// Stated is the id under which the range of a stated quantity is kept beside the data, by
// the place in its file, so that it moves as a datum does.
func Stated(at string) ID { return ID(stated + at) }

// Stated is the place in a file of a quantity that was stated with a range; false of a row
// of the data.
func (id ID) Stated() (at string, ok bool) { return strings.CutPrefix(string(id), stated) }

// Of is the id of a kind of number of a subject.
func Of(kind, subject string) ID { return ID(kind + "." + subject) }

// Field is the id of one of several numbers of a kind and a subject.
func (id ID) Field(name string) ID { return id + "." + ID(name) }

// Sort is what the subject of a kind of number is.
type Sort string

// The sorts.
const (
	Formula   Sort = "formula"   // with its state in brackets where it has one
	Element   Sort = "element"   // its symbol
	Substance Sort = "substance" // its slug
	Material  Sort = "material"  // its slug
	Solution  Sort = "solution"  // its model, with what of its law it is behind a line: hf_slope
)

var sorts = []string{"", string(Formula), string(Element), string(Substance), string(Material), string(Solution)}

// Thing is what of a route a number may be of, and so a column of the table of kinds.
type Thing string

// The things.
const (
	Phase      Thing = "phase"     // the layered phase
	Leaving    Thing = "leaving"   // an element of it that leaves
	Staying    Thing = "staying"   // a metal of it that stays
	Impurity   Thing = "impurity"  // a solid beside it
	Dissolving Thing = "substance" // what is put in
)

var things = [...]Thing{Phase, Leaving, Staying, Impurity, Dissolving}

// Kind is a row of the table: what its numbers are of and, where a file may add a row,
// the symbol and unit of it.
type Kind struct {
	Name         string
	Of           Sort // blank: an id of its own
	Symbol, Unit string
	Etched       bool   // of a layered phase as it is etched
	About        string // slug of the substance that an id of its own is about, blank where of none
	fields       []string
	states       map[Thing]string // what stands behind the name of a thing it may be added for
}

var kinds = sync.OnceValue(func() []Kind {
	return columns.Must("chemicals/datum/kinds.csv", table, func(r columns.Row) Kind {
		k := Kind{Name: r.Named("kind"), Symbol: r.Text("symbol"), Unit: r.Text("unit"), fields: r.List("fields"),
			Of:     Sort(r.Choice("of", sorts...)),
			Etched: r.Yes("etched"), About: r.Text("about"), states: map[Thing]string{}}
		r.Choice("status", "definition")
		for _, t := range things {
			if s := r.Choice(string(t), "", "bare", "solid"); s != "" {
				k.states[t] = map[string]string{"bare": "", "solid": "(s)"}[s]
			}
		}
		return k
	})
})

var byName = sync.OnceValue(func() map[string]*Kind {
	out := map[string]*Kind{}
	for i := range kinds() {
		out[kinds()[i].Name] = &kinds()[i]
	}
	return out
})

// Named is the kind of a name, nil where there is none.
func Named(kind string) *Kind { return byName()[kind] }

// Opens reports whether a file may add a row of the kind.
func (k *Kind) Opens() bool { return k != nil && len(k.states) > 0 }

// For are the ids of every number that may be added for a thing of this name, in the order
// of the table.
func For(t Thing, name string) []ID {
	var out []ID
	for i := range kinds() {
		k := &kinds()[i]
		if state, there := k.states[t]; there {
			out = append(out, Of(k.Name, name+state))
		}
	}
	return out
}

// Key is an id taken apart. An id of its own has no subject, and no kind where it has no row.
type Key struct {
	Kind    *Kind
	Subject string // as its sort says; of a formula with its state
	Field   string // which of several numbers
}

// Key takes an id apart, by the longest kind that it begins with.
func (id ID) Key() Key {
	text := string(id)
	for end := len(text); end > 0; end = strings.LastIndexByte(text[:end], '.') {
		k := byName()[text[:end]]
		switch {
		case k == nil:
		case end == len(text):
			return Key{Kind: k}
		case k.Of == "":
			return Key{}
		default:
			return k.key(text[end+1:])
		}
	}
	return Key{}
}

func (k *Kind) key(subject string) Key {
	for _, f := range k.fields {
		if s, ok := strings.CutSuffix(subject, "."+f); ok && s != "" {
			return Key{k, s, f}
		}
	}
	return Key{Kind: k, Subject: subject}
}

// Is reports whether an id is of a kind.
func (k Key) Is(kind string) bool { return k.Kind != nil && k.Kind.Name == kind }

// Etched reports whether it is of a layered phase as it is etched, and so of no use to a
// route with another.
func (k Key) Etched() bool { return k.Kind != nil && k.Kind.Etched }

// Holds is the name of what a route would have to hold to look the number up, and false
// where no route does for what it holds.
func (k Key) Holds() (name string, ok bool) {
	if k.Kind == nil || k.Field != "" {
		return "", false
	}
	name = k.Bare()
	for _, state := range k.Kind.states {
		if name+state == k.Subject {
			return name, true
		}
	}
	return "", false
}

// Bare is the subject without its state: the formula of a formula.
func (k Key) Bare() string {
	open := strings.LastIndexByte(k.Subject, '(')
	if open <= 0 || k.Kind.Of != Formula {
		return k.Subject
	}
	state, _, _ := strings.Cut(strings.TrimSuffix(k.Subject[open+1:], ")"), ",")
	switch state {
	case "s", "l", "g", "aq":
		return k.Subject[:open]
	}
	return k.Subject
}

// Begins reports whether an id begins with what somebody typed, whatever the case.
func (id ID) Begins(typed string) bool {
	return len(typed) <= len(id) && strings.EqualFold(string(id[:len(typed)]), typed)
}

// Head is an id as far as so many letters, in small ones, to be held against what somebody
// typed.
func (id ID) Head(n int) string { return strings.ToLower(string(id[:min(len(id), n)])) }

// Pattern stands for ids in a table of rules: an id, or one with a star for anything.
type Pattern string

// Valid is the error of a pattern that cannot be read.
func (p Pattern) Valid() error {
	_, err := path.Match(string(p), "")
	return err
}

// Fits reports whether a pattern stands for an id.
func (p Pattern) Fits(id ID) bool {
	if string(p) == string(id) {
		return true
	}
	if begins, _, _ := strings.Cut(string(p), "*"); !strings.HasPrefix(string(id), begins) {
		return false
	}
	fits, _ := path.Match(string(p), string(id))
	return fits
}

// Best is the rule that counts for an id, nil where none does: the one that names it, else
// the longest that fits it.
func Best[T any](rules []T, pattern func(*T) Pattern, id ID) *T {
	var best *T
	for i := range rules {
		switch p := pattern(&rules[i]); {
		case string(p) == string(id):
			return &rules[i]
		case (best == nil || len(p) > len(pattern(best))) && p.Fits(id):
			best = &rules[i]
		}
	}
	return best
}
