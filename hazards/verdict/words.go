package verdict

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/order"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// needed is a quantity that would be necessary, never sufficient.
type needed struct {
	quantity string
	value    amount
	unit     string
}

// words says what a finding means and what would be necessary, never
// sufficient, to meet its limit.
func words(h *subject, l *limit.Limit, v figure.Verdict) (phrase.Phrase, []figure.Need) {
	figs, f := h.figs, h.f
	switch {
	case v == figure.Within:
		return phrase.Of("finding.within"), nil
	case v == figure.UnknownVerdict && l.Role == limit.Met:
		return f.Conditions, nil
	case v == figure.UnknownVerdict:
		return phrase.Of("finding.unknown"), nil
	}
	key := l.ID
	n, ok := byLimit[key]
	if !ok || l.Origin == limit.Local { // whatever it is called, its words are not those of one of ours
		key = f.Quantity
		n, ok = byQuantity[key]
	}
	if l.Role == limit.Unrated && heatedShut(f.ID) {
		key = heatedKey
	}
	if !ok {
		key, n = "site", needed{f.Quantity, atLimit, l.Unit}
	}
	says, need := phrase.Of("finding."+key), phrase.Of("need."+key)
	switch l.Role {
	case limit.Met, limit.Stands:
		says = f.Conditions
	case limit.Mixing:
		_, need = mixing(h.c.Route, h.walk, f.Place)
	}
	return says, []figure.Need{{Quantity: n.quantity, Value: n.value(figs, f, l), Unit: n.unit,
		Says: phrase.Of("need", need)}}
}

// mixing is what is told of the pair that meets in a step.
func mixing(r *route.Route, k *process.Walk, place figure.Place) (order.Pair, phrase.Phrase) {
	step, _ := place.Step()
	p, ok := order.Mixed(r, k, step)
	if !ok {
		p.ID = "other"
	}
	if p.ID == listed {
		return p, phrase.Of("mix."+listed, p.Result)
	}
	return p, phrase.Of("mix." + p.ID)
}

// listed is what is told of two that must not meet and that no way of mixing makes milder.
const listed = "listed"

// heatedKey is the key of the words for what is heated closed in a container without a
// rating: it cannot be kept vented.
const heatedKey = "no_rated_container_heated"

// heatedShut reports whether a figure is of a container that a step heats closed.
func heatedShut(id figure.ID) bool {
	return id.Case.State == figure.Heated || id.Case.State == figure.Cold
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
		if g.Agent == f.Agent && (g.Case == f.Case || !boilsOff(f) && !boilsOff(g)) {
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
