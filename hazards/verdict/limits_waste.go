package verdict

import (
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

// sewerBase is the highest pH that local sewers of the US commonly take, 5 to 11 or 6 to 10,
// from memory: no law of the land, so that what lies above is near and has to be asked about.
func sewerBase(c route.Case, f *figure.Figure) []limit.Limit {
	l := limit.Limit{Key: limit.Named(limit.Review, "us_sewer_base"), Quantity: f.Quantity, Value: 11, Unit: "1",
		Jurisdiction: "us", Near: 0.9, Report: true, Status: "memory"}
	if !holdsAt(c, &l) {
		return nil
	}
	return []limit.Limit{l}
}
