package verdict

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
)

// How full a container of waste may be, %, by waste pages of three institutions: three
// quarters, and half where what it holds can
// still give gas or nobody knows whether it can.
const fullWaste, gassingWaste = 75, 50

// wasteFill is how full a container of waste may be by the gas that it could still give.
func wasteFill(figs *figure.Set, f *figure.Figure) []limit.Limit {
	l := limit.Limit{Key: limit.Named(limit.Review, "waste_fill"), Quantity: f.Quantity, Unit: "%", Value: fullWaste,
		Near: 0.9, Status: "two-sources"}
	known := false
	for g := range figs.At("gas.closed.pressure", f.Place) {
		known = true
		if !(g.High().V <= 0) {
			l.Key, l.Value = limit.Named(limit.Review, "gassing_waste_fill"), gassingWaste
		}
	}
	if !known {
		l.Key, l.Value = limit.Named(limit.Review, "gassing_waste_fill"), gassingWaste
	}
	return []limit.Limit{l}
}

// writtenStore is how long a place is stored as written, d: so long its gas has to stay
// below what can burn. A time that is not stated is not known.
func writtenStore(c route.Case, f *figure.Figure) []limit.Limit {
	days := 0.0
	for i := range c.Route.Steps {
		s := &c.Route.Steps[i]
		switch {
		case s.Verb().Does != route.Stores || figure.At(s.In) != f.Place:
		case !s.Time.Set:
			days = math.NaN()
		default:
			days += s.Time.In("d")
		}
	}
	return []limit.Limit{{Key: limit.Named(limit.Route, "written_store"), Quantity: f.Quantity, Value: days, Unit: "d",
		Status: "given", Near: 1}}
}
