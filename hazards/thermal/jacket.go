package thermal

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/vessel"
)

// endInJacket is the highest temperature while the heat of an addition goes in evenly, p W,
// and the jacket takes what its flow and its chiller allow, degC.
func (r *reader) endInJacket(s *course.Stage, p working.Num) working.Num {
	in := []working.Num{p, s.UA, s.Coolant, s.Set, s.Filled.As("C"), s.Over, s.GoesIn, s.Jacket.Flow, s.Jacket.Holds,
		s.Jacket.Power}
	if s.Onto != nil {
		in = append(in, s.Onto.There.As("C_0"), s.Onto.Capacity.As("C_1"), s.Onto.Feeding)
	}
	hot, ok := s.Hottest(p.V)
	if !ok {
		return working.Absent("T_end", "degC", working.Joined(lacking(in), []working.Missing{working.Lacks("run", "")})...)
	}
	return r.w.Model("T_end", "degC", "heat balance of batch and jacket", hot, in...)
}

// lacking is what some numbers lack.
func lacking(in []working.Num) []working.Missing {
	var out []working.Missing
	for i := range in {
		out = append(out, in[i].Missing()...)
	}
	return out
}

// jackets reports what the jackets of a course come to by one law: the most heat that goes
// into one, and how warm the liquid in it gets. Of a vessel of which nobody says what cools
// it, nobody knows either.
func (r *reader) jackets(n *course.Course, x *course.Run, at func(symbol, unit string, v float64) working.Num) {
	kase := figure.By(string(x.Law))
	for i := range n.Stages {
		s := &n.Stages[i]
		place, how := figure.Step(s.Step.Number), phrase.Of("thermal.jacket_load")
		lacks := s.Unsaid
		if p := r.c.Route.Place(s.Done.Place); p != nil && p.Cooling == nil {
			lacks = []working.Missing{working.Lacks(working.NotGiven, p.At+".cooling")}
		}
		switch {
		case s.Etches == nil && s.Hold.V == 0:
			continue
		case lacks != nil:
			r.add("heat.jacket.load", place, kase, working.Absent("P_j", "W", lacks...), how)
			continue
		case s.Jacket == nil:
			continue
		}
		var warm, load vessel.Moment
		if x.Missing == nil {
			during, after := x.Window(s.Step.Number)
			for _, w := range [...]vessel.Window{during, after} {
				if w.Step != 0 {
					warm, load = later(warm, load, &x.Vessel, &w)
				}
			}
		}
		r.add("heat.jacket.load", place, kase, at("P_j", "W", load.Value), how)
		r.add("heat.jacket.warmest", place, kase, at("T_j", "degC", warm.Value-kelvin), phrase.Of("thermal.jacket_warmest"))
	}
}

// later are the greater of two moments and those of another window.
func later(warm, load vessel.Moment, x *vessel.Run, w *vessel.Window) (vessel.Moment, vessel.Moment) {
	a, b := x.Jacketed(w)
	if a.Value > warm.Value {
		warm = a
	}
	if b.Value > load.Value {
		load = b
	}
	return warm, load
}
