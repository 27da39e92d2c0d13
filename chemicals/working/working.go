package working

import (
	"fmt"
	"math"

	"etchbound/chemicals/datum"
)

// Status says how far a number can be trusted. A line stands no better than its worst
// input: Unknown < Bound < Estimated < Known. The zero Status is the worst, so that
// nothing is known that nobody said.
type Status uint8

// The four statuses, worst first.
const (
	Unknown Status = iota
	Bound
	Estimated
	Known
)

var statusNames = [...]string{"unknown", "bound", "estimated", "known"}

// String returns the word printed for the status.
func (s Status) String() string { return statusNames[s] }

// Num is a number that remembers where it came from. V is NaN exactly when
// Status is Unknown; Missing then names what would have to be known. The zero Num is
// none at all: it is Unknown, and whatever is made of it lacks it.
type Num struct {
	Symbol  string
	Unit    string
	V       float64
	Status  Status
	kind    Kind
	made    made
	line    int32
	ref     string     // datum id, or the place in the route of a given
	missing *[]Missing // nil unless unknown: a number is copied far more often than it lacks anything
}

// made says what the ref of a number leaves to be said.
type made uint8

const (
	asSaid made = iota
	exact       // ref stands behind ExactPrefix
	absent      // nothing was read: its missing things say why
)

// Given is a value the writer of a route or site file stated. at names the
// place in the file, such as "steps[2].what[0].volume".
func Given(symbol, unit string, v float64, at string) Num {
	n := Num{Symbol: symbol, Unit: unit, V: v, Status: Known, kind: KindGiven, ref: at}
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return Absent(symbol, unit, Lacks(NotGiven, at))
	}
	return n
}

// Datum is a row of the data store.
func Datum(symbol, unit string, v float64, st Status, of datum.ID) Num {
	id := string(of)
	if math.IsNaN(v) {
		n := Absent(symbol, unit, LacksDatum(of))
		n.kind, n.ref, n.made = KindDatum, id, asSaid
		return n
	}
	return Num{Symbol: symbol, Unit: unit, V: v, Status: st, kind: KindDatum, ref: id}
}

// Exact is a number of the calculation itself, such as a count or a ratio of
// whole numbers; why says what it is.
func Exact(symbol, unit string, v float64, why string) Num {
	return Num{Symbol: symbol, Unit: unit, V: v, Status: Known, kind: KindGiven, made: exact, ref: why}
}

// ExactPrefix begins the Ref of an exact number, before the words that say
// what it is.
const ExactPrefix = "exact: "

// Absent is an unknown number; missing is what would have to be known.
func Absent(symbol, unit string, missing ...Missing) Num {
	return Num{Symbol: symbol, Unit: unit, V: math.NaN(), Status: Unknown, kind: KindGiven, missing: &missing,
		made: absent}
}

// As returns the number under another symbol, so that two inputs of one line
// can be told apart.
func (n Num) As(symbol string) Num { n.Symbol = symbol; return n }

// Worse returns the number with a status at least as bad as st.
func (n Num) Worse(st Status) Num { n.Status = min(n.Status, st); return n }

// None reports whether nobody put a number here: not even one that is unknown.
func (n Num) None() bool { return n.Status == Unknown && n.missing == nil }

// Unknown reports whether the number has no value.
func (n Num) Unknown() bool { return n.Status == Unknown }

// Missing lists, sorted and without repeats, what an unknown number lacks.
func (n Num) Missing() []Missing {
	if n.None() {
		return []Missing{Lacks(NothingIn, n.Symbol)}
	}
	if n.missing == nil {
		return nil
	}
	return *n.missing
}

// Line is the number of the sheet line that made n, counted from 1, or 0
// where no sheet was kept or n has not been used on one yet.
func (n Num) Line() int { return int(n.line) }

// Ref is the datum id, or the place in the file, that n was read from.
func (n Num) Ref() string {
	switch n.made {
	case exact:
		return ExactPrefix + n.ref
	case absent:
		return ""
	}
	return n.ref
}

// Kind says what a line of the sheet does.
type Kind uint8

// The kinds of line.
const (
	KindFormula Kind = iota
	KindTable
	KindModel
	KindGiven
	KindDatum
	KindSum
)

var kindNames = [...]string{"formula", "table", "model", "given", "datum", "sum"}

// String returns the word printed for the kind.
func (k Kind) String() string { return kindNames[k] }

// Input is one number a line was made from, as it stood when it was used.
type Input struct {
	Symbol string
	V      float64
	Unit   string
	Line   int
}

// Line is one line of working. For KindFormula, Formula is Go arithmetic over
// the symbols of In and evaluates to V; for KindTable and KindModel it names
// the table or the model; for KindDatum and KindGiven Ref says what was read.
type Line struct {
	N       int
	Kind    Kind
	Symbol  string
	Unit    string
	Formula string
	V       float64
	Status  Status
	In      []Input
	Ref     string
	Missing []Missing
}

// Datum is the row of the data that a line reads; false of a line that reads none.
func (l *Line) Datum() (datum.ID, bool) { return datum.ID(l.Ref), l.Kind == KindDatum }

// Sheet keeps the lines of one traced calculation. A nil Sheet keeps nothing
// and costs nothing; every method works on it.
type Sheet struct {
	Lines []Line
	read  map[source]int32 // its line
}

// source is what a number was read from: a datum, a place in a file, or nothing that
// anybody stated, by what is missing.
type source struct {
	kind Kind
	unit string
	ref  string
}

// NewSheet returns an empty sheet that keeps lines.
func NewSheet() *Sheet { return &Sheet{read: map[source]int32{}} }

// Line records v, made by formula from in, and returns it as a number. The
// formula is Go arithmetic over the symbols of in; a test evaluates it again.
func (s *Sheet) Line(symbol, unit, formula string, v float64, in ...Num) Num {
	return s.add(KindFormula, symbol, unit, formula, v, in)
}

// Table records v as read from the table or correlation named by id.
func (s *Sheet) Table(symbol, unit, id string, v float64, in ...Num) Num {
	return s.add(KindTable, symbol, unit, id, v, in)
}

// Model records v as the outcome of an integration, a root search or another
// procedure that no single formula states.
func (s *Sheet) Model(symbol, unit, name string, v float64, in ...Num) Num {
	return s.add(KindModel, symbol, unit, name, v, in)
}

// Sum records the sum of in; an empty sum is zero and known.
func (s *Sheet) Sum(symbol, unit string, in ...Num) Num {
	v := 0.0
	for i := range in {
		v += in[i].V
	}
	return s.add(KindSum, symbol, unit, "sum", v, in)
}

func (s *Sheet) add(kind Kind, symbol, unit, formula string, v float64, in []Num) Num {
	n := Num{Symbol: symbol, Unit: unit, V: v, Status: Known, kind: kind}
	for i := range in {
		n.Status = min(n.Status, in[i].Status)
	}
	if n.Status == Unknown || math.IsNaN(v) || math.IsInf(v, 0) {
		n.V, n.Status = math.NaN(), Unknown
		n.missing = lackedBy(symbol, in)
	}
	if s == nil {
		return n
	}
	ins := make([]Input, len(in))
	for i := range in {
		ins[i] = Input{in[i].Symbol, in[i].V, in[i].Unit, int(s.place(in[i]))}
	}
	s.Lines = append(s.Lines, Line{N: len(s.Lines) + 1, Kind: kind, Symbol: symbol, Unit: unit,
		Formula: formula, V: n.V, Status: n.Status, In: ins, Missing: n.Missing()})
	n.line = int32(len(s.Lines))
	return n
}

// Keep returns n with a line on the sheet, adding one if n is a datum or a
// given that no line has used yet. Figures are kept before they are reported.
func (s *Sheet) Keep(n Num) Num {
	if s != nil {
		n.line = s.place(n)
	}
	return n
}

// place returns the line of n, recording a datum or given on first use.
func (s *Sheet) place(n Num) int32 {
	if n.line != 0 {
		return n.line
	}
	ref := n.Ref()
	key := source{n.kind, n.Unit, ref}
	if n.made == absent {
		key.ref = fmt.Sprint(n.Missing())
	}
	if key.ref != "" {
		if l, ok := s.read[key]; ok && same(s.Lines[l-1].V, n.V) {
			return l
		}
	}
	s.Lines = append(s.Lines, Line{N: len(s.Lines) + 1, Kind: n.kind, Symbol: n.Symbol, Unit: n.Unit,
		V: n.V, Status: n.Status, Ref: ref, Missing: n.Missing()})
	l := int32(len(s.Lines))
	if key.ref != "" {
		s.read[key] = l
	}
	return l
}

// same compares values, counting two unknowns as equal.
func same(a, b float64) bool { return a == b || (a != a && b != b) }

// String prints the number for a debugger; reports format figures themselves.
func (n Num) String() string {
	if n.Unknown() {
		return fmt.Sprintf("%s = unknown %v", n.Symbol, n.Missing())
	}
	return fmt.Sprintf("%s = %.9g %s (%s)", n.Symbol, n.V, n.Unit, n.Status)
}
