package scaling

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// Load is what one route asks of the air of a hood, central values, as the
// route means it and by its worst law: the largest flow of hydrogen in L/min,
// the air that dilutes it and the air that its vapour needs, both m3/h.
type Load struct {
	Route                       int
	Hydrogen, Dilution, Exhaust working.Num
}

// HoodLoad is the air all routes need, m3/h, in the hood of the site. On the
// same day everything is added up, as if all peaks came at once; else it is
// the route that needs most. Hydrogen is in L/min. The shares are of the
// smallest flow the hood is stated to have.
type HoodLoad struct {
	Routes                      []Load
	Hydrogen, Dilution, Exhaust working.Num
	Flow                        working.Num
	DilutionShare, ExhaustShare working.Num
}

func loadOf(i int, c *route.Case, figs *figure.Set) Load {
	during := worst(c, figs, "gas.hydrogen.peak_rate.during_addition", "L/min")
	after := worst(c, figs, "gas.hydrogen.peak_rate.after_addition", "L/min")
	l := Load{Route: i, Hydrogen: during, Dilution: worst(c, figs, "gas.hydrogen.dilution_air", "m3/h"),
		Exhaust: worst(c, figs, "air.exhaust_required", "m3/h")}
	if greater(after, during) {
		l.Hydrogen = after
	}
	return l
}

// worst is the worst member of a quantity over a route as it is meant. A route
// without any is unknown, unless it has no powder to give off hydrogen.
func worst(c *route.Case, figs *figure.Set, name, unit string) working.Num {
	found := false
	var out working.Num
	for f := range figs.Of(name) {
		if f.Case.Supposed() {
			continue
		}
		if !found || greater(f.Value, out) {
			out, found = f.Value, true
		}
	}
	switch {
	case found:
		return out
	case c.Route.Precursor == nil && name != "air.exhaust_required":
		return working.Exact("q", unit, 0, "the route has no powder")
	}
	return working.Absent("q", unit, working.Lacks("figure_of_route", name+" of "+c.Route.Name))
}

func greater(a, than working.Num) bool {
	return !than.Unknown() && (a.Unknown() || a.V > than.V)
}

func hood(site *route.Site, rows []read, sameDay bool) HoodLoad {
	var h HoodLoad
	for i := range rows {
		h.Routes = append(h.Routes, rows[i].load)
	}
	h.Hydrogen = together(h.Routes, sameDay, "L/min", func(l *Load) working.Num { return l.Hydrogen })
	h.Dilution = together(h.Routes, sameDay, "m3/h", func(l *Load) working.Num { return l.Dilution })
	h.Exhaust = together(h.Routes, sameDay, "m3/h", func(l *Load) working.Num { return l.Exhaust })
	h.Flow = working.Absent("Q", "m3/h", working.Lacks("site_file_hood", ""))
	if site != nil && site.Hood != nil && site.Hood.Flow.Set {
		h.Flow = working.Given("Q", "m3/h", lower(site.Hood.Flow).In("m3/h"), site.Hood.Flow.At)
	}
	h.DilutionShare, h.ExhaustShare = shareOf(h.Dilution, h.Flow), shareOf(h.Exhaust, h.Flow)
	return h
}

// together adds up, or takes the largest.
func together(all []Load, sum bool, unit string, of func(*Load) working.Num) working.Num {
	var w *working.Sheet
	terms := make([]working.Num, len(all))
	most := 0
	for i := range all {
		terms[i] = of(&all[i])
		if greater(terms[i], terms[most]) {
			most = i
		}
	}
	if sum {
		return w.Sum("q", unit, terms...)
	}
	return terms[most]
}

// shareOf is need over flow; a hood that moves nothing is infinitely short of
// any need and unknown is kept.
func shareOf(need, flow working.Num) working.Num {
	var w *working.Sheet
	x := need.V / flow.V
	if flow.V == 0 && need.V == 0 {
		x = math.NaN()
	}
	return w.Line("x", "1", "q/Q", x, need.As("q"), flow.As("Q"))
}

func lower(q quantity.Value) quantity.Value {
	if q.HasRange() {
		q.SI = min(q.SI, q.Low)
	}
	return q
}
