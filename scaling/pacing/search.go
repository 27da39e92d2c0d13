package pacing

import (
	"math"

	"etchbound/hazards"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/schemas/quantity"
)

// minutes are the times of addition that are tried, min: up to two days.
var minutes = []float64{1, 2, 5, 10, 20, 40, 60, 90, 120, 180, 240, 360, 480, 720, 1440, 2880}

// closer is how often the time between two that were tried is halved, by its logarithm.
const closer = 3

// lots are the numbers of portions that are tried.
var lots = []int{5, 10, 20}

// search finds the shortest constant addition from which on every longer one that is tried
// stays below the limit, at the dangerous end too, and what it is in portions.
func (a *Addition) search(all []data, n *course.Course) {
	a.Ways = append(a.Ways, a.assessed(all, n, Way{Kind: Written, Takes: a.Over}))
	worst := all[len(all)-1:]
	below := func(over float64) bool {
		return a.assessed(worst, n, Way{Kind: Constant, Takes: over}).Stays.Below(a.Limit)
	}
	least, short := math.NaN(), math.NaN()
	for i := len(minutes) - 1; i >= 0; i-- {
		if short = 60 * minutes[i]; !below(short) {
			break
		}
		least = short
	}
	if math.IsNaN(least) {
		a.Ways = append(a.Ways, a.assessed(all, n, Way{Kind: Constant, Takes: 60 * minutes[len(minutes)-1]}))
		return
	}
	for range closer {
		mid := math.Sqrt(short * least)
		if !(short < least) {
			break
		}
		if below(mid) {
			least = mid
		} else {
			short = mid
		}
	}
	least = 60 * math.Ceil(least/60)
	a.Ways = append(a.Ways, a.assessed(all, n, Way{Kind: Constant, Takes: least}))
	if !a.Onto { // liquor is not poured in portions
		a.inPortions(all, n, least)
	}
}

// inPortions finds the fewest portions that stay below the limit, in the time of the constant
// addition or in some times as long.
func (a *Addition) inPortions(all []data, n *course.Course, least float64) {
	for _, longer := range []float64{1, 2, 4} {
		for _, k := range lots {
			w := Way{Kind: Portions, Of: float64(k), Takes: math.Max(longer*least, float64(k)*eachTakes)}
			if !a.assessed(all[len(all)-1:], n, w).Stays.Below(a.Limit) {
				continue
			}
			if w = a.assessed(all, n, w); w.Stays.Below(a.Limit) {
				a.Ways = append(a.Ways, w)
				return
			}
		}
	}
}

// eachTakes is how long a portion and what is seen of it take at least, s.
const eachTakes = 60

// assessed is the route with this addition made in another way, from the first of the data
// to the last; the highest of it and of all steps of its liquor that follow.
func (a *Addition) assessed(all []data, n *course.Course, w Way) Way {
	w.In = 1
	var stays, could []float64
	for _, d := range all {
		c := d.c
		c.Brief, c.Route = true, c.Route.Copy()
		if w.Kind != Written {
			s := &c.Route.Steps[a.Step-1]
			s.Over, s.Portions, s.PortionTime = quantity.Of(w.Takes, "s", quantity.Time), int(w.Of), quantity.Value{}
		}
		t, m := math.NaN(), math.NaN()
		if got := hazards.Assess(c, nil); got.Err == nil {
			figs := figure.NewSet(got.Figures)
			t, m = a.highest(figs, "heat.temperature_peak", n), a.highest(figs, "heat.mtsr", n)
		}
		stays, could = append(stays, t), append(could, m)
	}
	w.Stays, w.Could = hot(stays), hot(could)
	return w
}

// hot is a temperature at the best estimate and at the worst of the data.
func hot(t []float64) Hot {
	h := Hot{t[0], t[0]}
	for _, x := range t {
		h.Most = math.Max(h.Most, x)
	}
	return h
}

// highest is the highest by any law of a temperature in the step and in all that follow in
// its liquor, degC; not a number where one is not known. Nothing having reacted is no law.
func (a *Addition) highest(figs *figure.Set, quantity string, n *course.Course) float64 {
	top := math.Inf(-1)
	for i := range n.Stages {
		if n.Stages[i].Step.Number < a.Step {
			continue
		}
		for f := range figs.At(quantity, figure.Step(n.Stages[i].Step.Number)) {
			if f.Case.IsZero() || f.Case.Failure != "" {
				continue
			}
			top = math.Max(top, f.Value.V)
		}
	}
	if math.IsInf(top, -1) {
		return math.NaN()
	}
	return top
}
