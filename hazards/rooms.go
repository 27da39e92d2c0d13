package hazards

import (
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/assess"
	"etchbound/hazards/doubt"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/ranges"
	"etchbound/hazards/route"
	"etchbound/hazards/verdict"
	"etchbound/hazards/workers"
)

// What the rooms of this package make, under the names that those above it use.
type (
	Assessment  = assess.Assessment
	Assumption  = doubt.Assumption
	Move        = doubt.Move
	UnknownItem = doubt.UnknownItem
	Hold        = verdict.Hold
	Drawing     = ranges.Drawing
	Drawn       = ranges.Drawn
	Told        = verdict.Told
	Sized       = ranges.Sized
	Stand       = ranges.Stand
	Trail       = ranges.Trail
)

// Assess works out one case on its central values: see package assess.
func Assess(c route.Case, w *working.Sheet) Assessment { return assess.Case(c, w) }

// Size assesses a case for the dangerous ends of the figures wanted: see package
// ranges.
func Size(c route.Case, wanted func(*figure.Figure) bool) (Sized, error) {
	return ranges.Size(c, wanted)
}

// Stored is Size of what stored product does, and of nothing else. Common is that of StoredOnly.
func Stored(c route.Case, common *process.Common) (Sized, error) {
	return ranges.Lot(c, assess.Of(assess.Storage), func(*figure.Figure) bool { return true }, common)
}

// StoredOnly works out what stored product does on central values, and nothing else. Common is
// what the route begins with as others do, nil where that is not known.
func StoredOnly(c route.Case, common *process.Common) Assessment {
	return assess.Keep(c, nil).From(common).Assessment(c.Store, assess.Of(assess.Storage), figure.Everywhere)
}

// StoredWith is StoredOnly with other data, once for each value of a datum.
func StoredWith(c route.Case, common *process.Common, id datum.ID, values ...float64) []Assessment {
	out, kept := make([]Assessment, len(values)), assess.Keep(c, nil).From(common)
	d, held := c.Store.Row(id)
	for i, v := range values {
		st := c.Store
		if held {
			st = st.With(map[int]float64{d.Index: v})
		}
		out[i] = kept.Assessment(st, assess.Of(assess.Storage), figure.Everywhere)
	}
	return out
}

// Judge holds figures against the limits of a case: see package verdict.
func Judge(c route.Case, figs []figure.Figure, k *process.Walk) []figure.Finding {
	return verdict.Judge(c, figs, k)
}

// Nearby is Size for a case between others.
func Nearby(c route.Case, wanted func(*figure.Figure) bool, others ...*Sized) (Sized, error) {
	return ranges.Nearby(c, wanted, others...)
}

// Between is a trail for sizes between two.
func Between(a, b *Sized) *Trail { return ranges.Between(a, b) }

// SameLead reports whether the dangerous end of a figure stands on the same corner
// in two sizes.
func SameLead(a, b *Sized, id figure.ID) bool { return ranges.SameLead(a, b, id) }

// Breaks reports whether the dangerous end of a figure is a bound in one of two sizes and none in
// the other.
func Breaks(a, b *Sized, id figure.ID) bool { return ranges.Breaks(a, b, id) }

// Watch picks the figures that a finding of a figure stands on.
func Watch(id figure.ID) func(*figure.Figure) bool { return ranges.Watch(id) }

// Wanted reports whether a figure has, or may have, a verdict, or is a limit of one
// that has.
func Wanted(f *figure.Figure) bool { return ranges.Wanted(f) }

// NewDrawing finds the data of a case that are drawn.
func NewDrawing(c route.Case) (*Drawing, error) { return ranges.NewDrawing(c) }

// Each calls f for 0 to n-1 on every processor: see package workers.
func Each(n int, f func(i int)) { workers.Each(n, f) }

// EachOn is Each on so many workers.
func EachOn(n, count int, f func(i int)) { workers.EachOn(n, count, f) }
