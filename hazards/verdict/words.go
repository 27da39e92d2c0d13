package verdict

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/phrase"
)

// needed is a quantity that would be necessary, never sufficient.
type needed struct {
	quantity string
	value    amount
	unit     string
}

// words says what a finding means and what would be necessary, never
// sufficient, to meet its limit.
func words(figs *figure.Set, f *figure.Figure, l *limit.Limit, v figure.Verdict) (phrase.Phrase, []figure.Need) {
	switch v {
	case figure.Within:
		return phrase.Of("finding.within"), nil
	case figure.UnknownVerdict:
		return phrase.Of("finding.unknown"), nil
	}
	key := l.ID
	n, ok := byLimit[key]
	if !ok || l.Origin == limit.Local { // whatever it is called, its words are not those of one of ours
		key = f.Quantity
		n, ok = byQuantity[key]
	}
	if !ok {
		key, n = "site", needed{f.Quantity, atLimit, l.Unit}
	}
	return phrase.Of("finding." + key), []figure.Need{{Quantity: n.quantity, Value: n.value(figs, f, l), Unit: n.unit,
		Says: phrase.Of("need", phrase.Of("need."+key))}}
}

// amount is how much of what is necessary.
type amount func(figs *figure.Set, f *figure.Figure, l *limit.Limit) float64

func zero(*figure.Set, *figure.Figure, *limit.Limit) float64     { return 0 }
func one(*figure.Set, *figure.Figure, *limit.Limit) float64      { return 1 }
func notKnown(*figure.Set, *figure.Figure, *limit.Limit) float64 { return math.NaN() }

func highEnd(_ *figure.Set, f *figure.Figure, _ *limit.Limit) float64      { return f.High().V }
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
			return g.High().V
		}
	}
	return math.NaN()
}

// dilution is the water that goes with an agent that neutralises, L.
func dilution(figs *figure.Set, f *figure.Figure, _ *limit.Limit) float64 {
	for g := range figs.At("neutralise.dilution_water", f.Place) {
		if g.Agent == f.Agent {
			return g.High().V
		}
	}
	return math.NaN()
}
