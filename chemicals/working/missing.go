package working

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"etchbound/chemicals/datum"
)

// Missing names a thing that would have to be known: what kind of thing it is, what
// it is of, and in which step. It is a value: compare it, and key maps by it. The
// words for each kind stand in one table, where reviews are written.
type Missing struct {
	Kind    string // a row of that table
	Subject Subject
	Step    int // counted from 1; 0: none
}

// Subject is what a missing thing is of: the id of a datum, a path in a file, a substance, a
// place, a quantity; empty where the kind says it all.
type Subject string

// String is the subject as files and reviews write it.
func (s Subject) String() string { return string(s) }

// Of reports whether a subject is a name, an id or a path that begins or ends with it.
func (s Subject) Of(name string) bool {
	text := s.String()
	return text == name || strings.HasPrefix(text, name+".") || strings.HasSuffix(text, "."+name)
}

// The kinds that this package makes itself.
const (
	NoDatum   = "datum"         // a row of the data store has no value; the subject is its id
	NotGiven  = "given"         // a file does not state it; the subject is its path
	NoNumber  = "result"        // arithmetic on known numbers gave none; the subject is the symbol of the line
	NothingIn = "nothing"       // a number nobody put anything into: a fault of the program
	NoHold    = "hold"          // a route does not say how long powder stays in its liquor
	NotHeld   = "not_held"      // the data do not hold a substance; the subject is its name
	GasUnheld = "gas_of_unheld" // what gas such a substance gives in a place; the subject is that
)

// Lacks is a missing thing of a kind.
func Lacks[S ~string](kind string, subject S) Missing {
	return Missing{Kind: kind, Subject: Subject(subject)}
}

// LeftOut reports whether it is a fact that a file leaves out, and nothing that is not held.
func (m Missing) LeftOut() bool { return m.Kind == NotGiven || m.Kind == NoHold }

// OfUnheld reports whether it is what a substance is or does that the data do not hold.
func (m Missing) OfUnheld() bool { return m.Kind == NotHeld || m.Kind == GasUnheld }

// LacksDatum is a missing row of the data.
func LacksDatum(id datum.ID) Missing { return Lacks(NoDatum, id) }

// Datum is the id of a missing row of the data; false of what is missing otherwise.
func (m Missing) Datum() (datum.ID, bool) { return datum.ID(m.Subject), m.Kind == NoDatum }

// IsZero reports whether it names nothing.
func (m Missing) IsZero() bool { return m == Missing{} }

// In is the missing thing in a step.
func (m Missing) In(step int) Missing { m.Step = step; return m }

// Compare orders missing things by kind, subject and step.
func (m Missing) Compare(other Missing) int {
	return cmp.Or(cmp.Compare(m.Kind, other.Kind), cmp.Compare(m.Subject, other.Subject), cmp.Compare(m.Step, other.Step))
}

// String is for a debugger; reviews have words for it.
func (m Missing) String() string {
	s := m.Kind
	if m.Subject != "" {
		s += " " + m.Subject.String()
	}
	if m.Step != 0 {
		s += " in step " + strconv.Itoa(m.Step)
	}
	return s
}

// Joined are some lists of missing things, sorted and each once.
func Joined(lists ...[]Missing) []Missing {
	out := slices.Concat(lists...)
	slices.SortFunc(out, Missing.Compare)
	return slices.Compact(out)
}

// lackedBy is what unknown numbers lack together, sorted and each once; that there was
// no result for a symbol where they lack nothing.
func lackedBy(symbol string, in []Num) *[]Missing {
	var one *[]Missing // the only one that lacks something
	n := 0
	for i := range in {
		if x := in[i].missing; in[i].Status == Unknown && (x == nil || len(*x) > 0) {
			one, n = x, n+1
		}
	}
	if n == 1 && one != nil && len(*one) == 1 {
		return one
	}
	var out []Missing
	for i := range in {
		if in[i].Status == Unknown {
			out = append(out, in[i].Missing()...)
		}
	}
	if len(out) == 0 {
		out = append(out, Lacks(NoNumber, symbol))
	}
	out = Joined(out)
	return &out
}
