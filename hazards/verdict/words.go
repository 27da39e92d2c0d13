package verdict

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
)

// meaning is what a finding means where a figure is near its limit or beyond it,
// and what would be necessary to meet the limit.
type meaning struct {
	text string
	need needed
}

// needed is a quantity that would be necessary, never sufficient.
type needed struct {
	quantity string
	value    amount
	unit     string
	text     string
}

// words says what a finding means and what would be necessary, never
// sufficient, to meet its limit.
func words(figs *figure.Set, f *figure.Figure, l *limit.Limit, v figure.Verdict) (string, []figure.Need) {
	switch v {
	case figure.Within:
		return "Within the stated limit under the stated assumptions.", nil
	case figure.UnknownVerdict:
		return "It cannot be judged: what is missing is listed.", nil
	}
	m, ok := byLimit[l.ID]
	if !ok || l.Origin == limit.Local { // whatever it is called, its words are not those of one of ours
		m, ok = byQuantity[f.Quantity]
	}
	if !ok {
		m = meaning{"Held against a limit of the site.",
			needed{f.Quantity, atLimit, l.Unit, "bring the figure to the limit."}}
	}
	n := &m.need
	return m.text, []figure.Need{{Quantity: n.quantity, Value: n.value(figs, f, l), Unit: n.unit,
		Text: "Necessary, not sufficient: " + n.text}}
}

// amount is how much of what is necessary.
type amount func(figs *figure.Set, f *figure.Figure, l *limit.Limit) float64

func zero(*figure.Set, *figure.Figure, *limit.Limit) float64     { return 0 }
func one(*figure.Set, *figure.Figure, *limit.Limit) float64      { return 1 }
func notKnown(*figure.Set, *figure.Figure, *limit.Limit) float64 { return math.NaN() }

func highEnd(_ *figure.Set, f *figure.Figure, _ *limit.Limit) float64      { return f.High.V }
func atLimit(_ *figure.Set, _ *figure.Figure, l *limit.Limit) float64      { return l.Value }
func halfTheLimit(_ *figure.Set, _ *figure.Figure, l *limit.Limit) float64 { return l.Value / 2 }
func fifthOfLimit(_ *figure.Set, _ *figure.Figure, l *limit.Limit) float64 { return l.Value * 0.2 }

func whereNearBegins(_ *figure.Set, _ *figure.Figure, l *limit.Limit) float64 {
	return l.Value * l.Near
}

// belowLimit is a temperature that is not near its limit.
func belowLimit(_ *figure.Set, _ *figure.Figure, l *limit.Limit) float64 {
	return l.Value - limit.NearKelvin
}

// exhaust is the extract that goes with a figure of the air of a step, m3/h.
func exhaust(figs *figure.Set, f *figure.Figure, _ *limit.Limit) float64 {
	for g := range figs.At("air.exhaust_required", f.Place) {
		if g.Agent == f.Agent {
			return g.High.V
		}
	}
	return math.NaN()
}

// dilution is the water that goes with an agent that neutralises, L.
func dilution(figs *figure.Set, f *figure.Figure, _ *limit.Limit) float64 {
	for g := range figs.At("neutralise.dilution_water", f.Place) {
		if g.Agent == f.Agent {
			return g.High.V
		}
	}
	return math.NaN()
}
