package selection

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// voice says what a review holds as its other pages do, in the fewest words.
type voice struct{ *draft.Draft }

// Place is a place in words.
func (v voice) Place(p figure.Place) string { return v.PlaceName(p) }

// Value is a figure with its range.
func (v voice) Value(f *figure.Figure) string { return v.ValueAndRange(f) }

// Amount is a number of a unit.
func (v voice) Amount(x float64, unit string) string { return number.Thing{Unit: unit}.Bound(x, 0) }

// Limit is a limit on what a figure says in few words: the whole of it stands in the sections.
func (v voice) Limit(l *limit.Limit, of figure.ID) string {
	key := "short." + l.ID
	if l.Role == limit.Escapes {
		key = "short.idlh"
	}
	if dark := "unknown." + l.ID; math.IsNaN(l.Value) && words.HasFirstPage(dark) {
		return words.FirstPage(dark)
	}
	if math.IsNaN(l.Value) || l.Origin != limit.Local && !words.HasFirstPage(key) {
		return v.LimitText(l, of)
	}
	if l.Origin == limit.Local {
		key = "short.local"
	}
	q, _ := figure.Lookup(l.Quantity)
	told := number.Thing{Unit: q.Unit, Digits: 4, Units: v.Options.Units}.Beside(l.Value, v.DangerOf(of))
	return v.Boiling(l, of, words.FirstPage(key, told))
}

// Danger is the end of a figure at which danger lies, rounded towards it.
func (v voice) Danger(f *figure.Figure) string {
	if t, ok := v.BoilsAt(f); ok && f.Danger().V >= t {
		return v.Boils(f, t)
	}
	return v.Options.Units.Danger(f)
}
