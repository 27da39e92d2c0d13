package figure

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/limit"
	"etchbound/hazards/phrase"
)

// Figure is one reported number. Low and High are set by the review; in an
// assessment they are zero.
type Figure struct {
	ID
	Value      working.Num
	Low, High  working.Num
	Of         ID            // the member that a bare figure repeats; zero: none
	Conditions phrase.Phrase // what the number holds for
	Searched   bool          // it comes of a search that a brief assessment leaves out
}

// End is one end of the range of f, unknown where v is NaN.
func (f *Figure) End(symbol string, v float64) working.Num {
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
		return f.Low
	}
	return f.High
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
