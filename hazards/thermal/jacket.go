package thermal

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/vessel"
)

// endInJacket is the highest temperature while the heat of an addition goes in evenly, p W,
// and the jacket takes what its flow and its chiller allow, degC.
func (r *reader) endInJacket(s *course.Stage, p working.Num) working.Num {
	in := []working.Num{p, s.UA, s.Coolant, s.Set, s.Filled.As("C"), s.Over, s.GoesIn, s.Jacket.UA, s.Jacket.Holds,
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
func (r *reader) jackets(n *course.Course, x *course.Run) {
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
		if x.Lacks(s.Step.Number) == nil {
			during, after := x.Window(s.Step.Number)
			for _, w := range [...]vessel.Window{during, after} {
				if w.Step != 0 {
					warm, load = later(warm, load, &x.Vessel, &w)
				}
			}
		}
		at := r.byRun(x, x.Lacks(s.Step.Number))
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

// near is how close to a temperature counts as there, K: it is never quite reached.
const near = 1.0

// reaches reports how long a vessel in a jacket takes from the temperature of the step before
// to its own, within a kelvin, or to within a kelvin of its coolant: batch and liquid of the
// jacket begin alike, and the chiller takes no more than its power (vessel.Settling). Nobody
// states that of a heater: without it the time is the least there is.
//
//	g_1 = |T_1 - T_c|, g_2 = |T_2 - T_c|, each at least 1 K
func (r *reader) reaches(n *course.Course) {
	for i := range n.Stages {
		s := &n.Stages[i]
		if s.Jacket == nil && s.Unsaid == nil {
			continue
		}
		before, there := r.before(s)
		if !there || !s.Set.Unknown() && !before.Unknown() && math.Abs(s.Set.V-before.V) < near {
			continue
		}
		t, says := working.Absent("t_h", "min", s.Unsaid...), phrase.Of("thermal.jacket_cools")
		if s.Jacket != nil {
			t, says = r.within(s, before)
		}
		r.add("heat.jacket.time", figure.Step(s.Step.Number), figure.Case{}, t, says)
	}
}

// before is what the step before in the same place was set to, degC; false where none was.
func (r *reader) before(s *course.Stage) (working.Num, bool) {
	out, there := working.Num{}, false
	for i := range r.k.Steps {
		d := &r.k.Steps[i]
		if d.Number >= s.Step.Number {
			break
		}
		if d.Place == s.Done.Place {
			out, there = d.Hot, true
		}
	}
	return out.As("T_1"), there
}

// within is that time, min. Where the coolant draws the batch away from the temperature of the
// step it is the time in which it would be as cold as the coolant, did nothing react.
func (r *reader) within(s *course.Stage, before working.Num) (working.Num, phrase.Phrase) {
	to, cold, u, j := s.Set.As("T_2"), s.Coolant.As("T_c"), s.UA.As("U_w"), s.Jacket.UA.As("J")
	c, cj, p := s.Filled.As("C"), s.Jacket.Holds.As("C_j"), s.Jacket.Power.As("P_c")
	gap := func(symbol string, t working.Num) working.Num {
		return r.w.Line(symbol, "K", "max("+t.Symbol+"-T_c,T_c-"+t.Symbol+",1)", max(t.V-cold.V, cold.V-t.V, near), t, cold)
	}
	far, close := gap("g_1", before), gap("g_2", to)
	says := phrase.Of("thermal.jacket_cools")
	if far.V < close.V { // it is not the jacket that brings it there: how long until it is cold
		far, close = close.As("g_1"), working.Exact("g_2", "K", near, "as near as counts as there")
		before, to, says = to, cold, phrase.Of("thermal.jacket_colds")
	}
	x := vessel.Settling{Batch: c.V, Jacket: cj.V, Wall: u.V, Flow: j.V, Power: p.V}
	if to.V > before.V {
		x.Power = math.Inf(1)
		return r.w.Model("t_h", "min", "heat balance of batch and jacket", x.Within(far.V, close.V)/60, far, close, c, cj,
			u, j).Worse(working.Bound), phrase.Of("thermal.jacket_heats")
	}
	return r.w.Model("t_h", "min", "heat balance of batch and jacket", x.Within(far.V, close.V)/60, far, close, c, cj, u,
		j, p), says
}
