package figure

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/limit"
	"etchbound/hazards/phrase"
)

// Figure is one reported number. Its range is set by the review; in an assessment it
// has none. A review makes many thousands of figures, so that what few of them have, or
// what follows from the rest, takes no room in each.
type Figure struct {
	ID
	Value      working.Num
	Conditions phrase.Phrase // what the number holds for
	low, high  float64       // NaN: that end is not known
	of         *ID
	open       *[]working.Missing
	ranged     bool
	Searched   bool // it comes of a search that a brief assessment leaves out
	Widened    bool // what is worked out beside the runs set its dangerous end: none of them stands there
	Bounded    bool // its dangerous end is a bound that no run exceeds, beyond all that were tried
	// Worst is what an unknown value comes to with each fact of the site that nobody states as bad
	// as a bench has it, and each flow of inert gas: work stops where that is beyond a limit. No
	// symbol elsewhere.
	Worst working.Num
}

// SetRange sets both ends of the range of f, in its unit; NaN where one is not known.
func (f *Figure) SetRange(low, high float64) { f.low, f.high, f.ranged = low, high, true }

// LeaveOpen says that the range of f bounds nothing where danger lies, and for want of what:
// what it exceeds it exceeds, and of what else it is held against nothing is known.
func (f *Figure) LeaveOpen(missing []working.Missing) { f.open = &missing }

// Open is what is missing of a figure that was left open; nil of any other.
func (f *Figure) Open() []working.Missing {
	if f.open == nil {
		return nil
	}
	return *f.open
}

// Low is the low end of the range of f; the zero Num before it is set.
func (f *Figure) Low() working.Num { return f.end("low", f.low) }

// High is the high end of the range of f; the zero Num before it is set.
func (f *Figure) High() working.Num { return f.end("high", f.high) }

// RepeatedAs is f under another id, with the same range.
func (f *Figure) RepeatedAs(id ID) Figure {
	of := f.ID
	return Figure{ID: id, Value: f.Value, Conditions: f.Conditions, low: f.low, high: f.high, ranged: f.ranged, of: &of,
		open: f.open}
}

// Covers takes another member into a sum that stands for both: the value of m if its
// value is the worse one by the catalogue, and a range that holds those of both, so
// that a sum is ranked and printed by the same members. What is unknown of one of them
// is unknown of the sum.
func (f *Figure) Covers(m *Figure) {
	if m.ranged {
		f.low, f.high = math.Min(f.low, m.low), math.Max(f.high, m.high)
	}
	if m.open != nil {
		f.open = m.open
	}
	q, _ := Lookup(f.Quantity)
	x, y := m.Value.V, f.Value.V
	if y == y && (x != x || x > y && q.Danger != Low || x < y && q.Danger == Low) {
		f.Value = m.Value
	}
}

// Of is the member that a bare figure repeats; zero: none. Of a sum over the laws of a
// failure it is the one whose dangerous end is worst.
func (f *Figure) Of() ID {
	if f.of == nil {
		return ID{}
	}
	return *f.of
}

// end is one end of the range of f, unknown where v is NaN.
func (f *Figure) end(symbol string, v float64) working.Num {
	if !f.ranged {
		return working.Num{}
	}
	if f.Value.Unknown() {
		return f.Value
	}
	if v != v {
		return working.Absent(symbol, f.Value.Unit, working.Lacks("end_"+symbol, f.Quantity))
	}
	return working.Exact(symbol, f.Value.Unit, v, symbol).Worse(f.Value.Status)
}

// Danger is the end of the range at which danger lies, by the catalogue.
func (f *Figure) Danger() working.Num {
	q, _ := Lookup(f.Quantity)
	if q.Danger == Low {
		return f.Low()
	}
	return f.High()
}

// Verdict is the outcome of comparing a figure with a limit.
type Verdict uint8

// The verdicts. Unknown ranks with Exceeds: Rank gives the order.
const (
	Within Verdict = iota
	Near
	UnknownVerdict
	Exceeds
)

var verdictNames = [...]string{"within", "near", "unknown", "exceeds"}

// String returns the word printed for the verdict.
func (v Verdict) String() string { return verdictNames[v] }

// Rank orders verdicts: within 0, near 1, unknown and exceeds 2.
func (v Verdict) Rank() int { return min(int(v), 2) }

// Surety is how much of the range of a figure has the verdict of its finding.
type Surety uint8

// The sureties, from the least that is said to the most.
const (
	NotSaid      Surety = iota // no number, or no best estimate, stands behind the verdict
	DangerousEnd               // only the dangerous end
	BestEstimate               // the central value too
	WholeRange                 // all of it
)

var suretyNames = [...]string{"none", "end", "best", "range"}

// String returns the word for the surety.
func (s Surety) String() string { return suretyNames[s] }

// Need is one thing that would meet a limit: necessary, not sufficient.
type Need struct {
	Quantity string // name in the catalogue
	Value    float64
	Unit     string
	Says     phrase.Phrase
}

// Finding is a figure held against a limit.
type Finding struct {
	Figure  ID
	Of      ID // the figure it was judged by, where that is another; else zero
	Limit   limit.Limit
	Verdict Verdict
	Surely  Surety
	Margin  float64 // share of the limit left (temperatures: K left), from the dangerous end; NaN if unknown
	Needs   []Need
	Says    phrase.Phrase // what the finding means
}

// ID names the finding.
func (f *Finding) ID() FindingID { return FindingID{f.Figure, f.Limit.Key} }

// FindingID names a finding: its figure and its limit. Compare it, and key maps by it.
type FindingID struct {
	Figure ID
	Limit  limit.Key
}

// String is figure id "+" limit id.
func (id FindingID) String() string { return id.Figure.String() + "+" + id.Limit.String() }
