package verdict

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/thermal"
)

// Highest is the dangerous end of the highest temperature of a step, by full
// accumulation or by a law where that is higher, and what it is of.
func Highest(figs *figure.Set, place figure.Place) (float64, figure.ID) {
	v, of := math.Inf(-1), figure.ID{}
	for f := range figs.At("heat.mtsr", place) {
		if !f.Of().IsZero() {
			continue
		}
		if x := f.Danger().V; math.IsNaN(x) {
			return x, f.ID
		} else if x > v {
			v, of = x, f.ID
		}
	}
	return v, of
}

// technicalLimit is the technical limit of the step of f, where it lies below
// the boiling point: else the boiling point says it all. Where the service
// temperature itself is missing the limit is unknown.
func technicalLimit(figs *figure.Set, f *figure.Figure) []limit.Limit {
	boils := boilingLimit(figs, f)
	for t := range figs.At("heat.technical_limit", f.Place) {
		if t.Low().V >= boils.Value {
			continue // where no boiling point is known, the vessel may still stand less
		}
		return []limit.Limit{{Key: limit.Named(limit.Review, "technical_limit"), Quantity: f.Quantity,
			Value: t.Low().V, Unit: "degC", Section: t.ID.String(), Status: "computed"}}
	}
	return nil
}

// hoodLimit is the temperature from which the hood stands no more of the vapour
// of a step; none where no volatile acid or ammonia is in it.
func hoodLimit(figs *figure.Set, f *figure.Figure) []limit.Limit {
	for h := range figs.At("air.hood_limit", f.Place) {
		return []limit.Limit{{Key: limit.Named(limit.Review, "hood_limit"), Quantity: f.Quantity,
			Value: h.Low().V, Unit: "degC", Section: h.ID.String(), Status: "computed"}}
	}
	return nil
}

// vesselRoom is the water that the vessel of a step still has room for.
func vesselRoom(c route.Case, k *process.Walk, f *figure.Figure) []limit.Limit {
	out := roomLeft(c, k, f)
	for i := range out {
		l := &out[i]
		l.Key, l.Unit, l.Near = limit.Named(limit.Route, "vessel_room"), "kg", 1
		l.Value = max(l.Value, 0) * c.Store.Num("water.density").V / 1000
	}
	return out
}

// WidenClasses sets the high end of every class from the dangerous ends of the
// temperatures it stands on: single swings that leave a class as it is may
// still change it together.
func WidenClasses(c route.Case, k *process.Walk, list []figure.Figure) {
	figs := figure.NewSet(list)
	for f := range figs.Of("heat.criticality_class") {
		if f.Value.Unknown() {
			continue
		}
		top, _ := Highest(figs, f.Place)
		low, high := math.NaN(), math.NaN()
		for g := range figs.At("heat.mtsr", f.Place) {
			if !f.Case.IsZero() && g.Case == f.Case {
				top = g.High().V
			}
		}
		for g := range figs.At("heat.technical_limit", f.Place) {
			low, high = g.Low().V, g.High().V
		}
		worst := f.High().V
		for _, limit := range []float64{low, high} {
			worst = max(worst, thermal.Class(highestSet(k, f.Place), top, limit, decomposes(c)))
		}
		f.SetRange(f.Low().V, worst)
	}
}

// highestSet is the highest temperature set in a step, degC.
func highestSet(k *process.Walk, place figure.Place) float64 {
	for i := range k.Steps {
		if d := &k.Steps[i]; figure.Step(d.Number) == place {
			return d.Hot.V
		}
	}
	return math.NaN()
}

// decomposes is the low end of the stated decomposition temperature, degC.
func decomposes(c route.Case) float64 { return least(c.Route.TD24).In("degC") }

// countedBy says which figure a highest temperature was judged by, where that
// is not the one the finding is of.
func countedBy(figs *figure.Set, f *figure.Figure) []phrase.Phrase {
	switch v, of := Highest(figs, f.Place); {
	case of == f.ID || of.IsZero():
	case math.IsNaN(v):
		return []phrase.Phrase{phrase.Of("finding.judged_by_unknown", of)}
	default:
		return []phrase.Phrase{phrase.Of("finding.judged_by", of)}
	}
	return nil
}
