// Package figure knows what a figure and a finding are and what each catalogued
// quantity is called, measured in and endangered by. It must not know which
// hazard computes one.
package figure

import (
	"strconv"
	"strings"

	"etchbound/chemicals/working"
)

// Figure is one reported number. Low and High are set by the review; in an
// assessment they are zero.
type Figure struct {
	Quantity   string // name in the catalogue
	Place      string // step number, key of a place, or waste, spill, room, site; may be empty
	Agent      string // slug of a substance, or two joined by _and_
	Case       string // law, failure or branch
	Value      working.Num
	Low, High  working.Num
	Of         string // id of the member a bare figure repeats
	Conditions string // what the number holds for, in words
	Failure    string // what has gone wrong, as the case begins; empty where all goes as written
	Searched   bool   // it comes of a search that a brief assessment leaves out
}

// ID is quantity[@place][/agent][:case].
func (f *Figure) ID() string { return ID(f.Quantity, f.Place, f.Agent, f.Case) }

// End is one end of the range of f, unknown where v is NaN.
func (f *Figure) End(symbol string, v float64) working.Num {
	if f.Value.Unknown() {
		return f.Value
	}
	if v != v {
		return working.Absent(symbol, f.Value.Unit, "what "+f.Quantity+" is at its "+symbol+" end")
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

// ID joins the parts of a figure's identifier.
func ID(quantity, place, agent, kase string) string {
	var b strings.Builder
	b.Grow(len(quantity) + len(place) + len(agent) + len(kase) + 3)
	b.WriteString(quantity)
	if place != "" {
		b.WriteByte('@')
		b.WriteString(place)
	}
	if agent != "" {
		b.WriteByte('/')
		b.WriteString(agent)
	}
	if kase != "" {
		b.WriteByte(':')
		b.WriteString(kase)
	}
	return b.String()
}

// Step is the place of a step.
func Step(n int) string { return strconv.Itoa(n) }

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

// Need is one thing that would meet a limit: necessary, not sufficient.
type Need struct {
	Quantity string // name in the catalogue
	Value    float64
	Unit     string
	Text     string
}

// LimitRef is the limit a finding was judged by, as it stands in the review.
// Value is NaN where the limit itself is unknown.
type LimitRef struct {
	ID       string
	Label    string
	Value    float64
	Unit     string
	Document string
	Section  string
	Edition  string
	Status   string // status of the limit's source
}

// Finding is a figure held against a limit.
type Finding struct {
	Figure  string // id of the figure
	Limit   LimitRef
	Verdict Verdict
	Margin  float64 // share of the limit left (temperatures: K left), from the dangerous end; NaN if unknown
	Needs   []Need
	Text    string // what the finding says in words
}

// ID is figure id "+" limit id.
func (f *Finding) ID() string { return f.Figure + "+" + f.Limit.ID }
