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

// near is how close to a temperature counts as there, K: it is never quite reached.
const near = 1.0

// reaches reports how long a vessel in a jacket takes from the temperature of the step before
// to its own, within a kelvin, or to within a kelvin of its coolant: batch and liquid of the
// jacket begin alike, and the chiller takes no more than its power. Nobody states that of a
// heater: without it the time is the least there is.
//
//	g_1 = |T_1 - T_c|, g_2 = |T_2 - T_c|, each at least 1 K
//	a   = U/C + (U + J)/C_j, l_2 = (a + sqrt(a^2 - 4 U J/(C C_j)))/2, l_1 = U J/(C C_j l_2)
//	t_e = ln(f g/g_2)/l_1                       from a gap g, the chiller no longer at its power
//	f   = l_2/(l_2 - l_1) where both begin at g, (l_2 - U/C (1 - P_c/(J g)))/(l_2 - l_1) after it was
//	t_p = (C + C_j) (g_1 - g)/P_c + C C_j/((C + C_j) U)     to it, at its power
//	g   = P_c/J + P_c C/((C + C_j) U)           no less than g_2, no more than g_1
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

// within is that time, min.
func (r *reader) within(s *course.Stage, before working.Num) (working.Num, phrase.Phrase) {
	to, cold, u, j := s.Set.As("T_2"), s.Coolant.As("T_c"), s.UA.As("U_w"), s.Jacket.Flow.As("J")
	c, cj, p := s.Filled.As("C"), s.Jacket.Holds.As("C_j"), s.Jacket.Power.As("P_c")
	gap := func(symbol string, t working.Num) working.Num {
		return r.w.Line(symbol, "K", "max("+t.Symbol+"-T_c,T_c-"+t.Symbol+",1)", max(t.V-cold.V, cold.V-t.V, near), t, cold)
	}
	far, close := gap("g_1", before), gap("g_2", to)
	if far.V < close.V { // the coolant as stated draws it away from there
		return working.Absent("t_h", "min", working.Lacks("brought_by", "")), phrase.Of("thermal.jacket_heats")
	}
	slow, fast := r.eigen(u, j, c, cj)
	if to.V > before.V {
		f := r.w.Line("f", "1", "l_2/(l_2-l_1)", fast.V/(fast.V-slow.V), fast, slow)
		return r.w.Line("t_h", "min", "2.302585093*log10(g_1/g_2*f)/l_1/60",
				ln10*math.Log10(far.V/close.V*f.V)/slow.V/60, far, close, f, slow).Worse(working.Bound),
			phrase.Of("thermal.jacket_heats")
	}
	most := r.w.Line("g_p", "K", "P_c/J+P_c*C/((C+C_j)*U_w)", p.V/j.V+p.V*c.V/((c.V+cj.V)*u.V), p, j, c, cj, u)
	g := r.w.Line("g", "K", "max(min(g_1,g_p),g_2)", max(min(far.V, most.V), close.V), far, most, close)
	ramp := r.w.Line("t_p", "s", "above(g_1,g)*((C+C_j)*(g_1-g)/P_c+C*C_j/((C+C_j)*U_w))",
		above(far.V, g.V)*((c.V+cj.V)*(far.V-g.V)/p.V+c.V*cj.V/((c.V+cj.V)*u.V)), far, g, c, cj, p, u)
	f := r.w.Line("f", "1", "(l_2-above(g_1,g)*U_w/C*(1-P_c/(J*g)))/(l_2-l_1)",
		(fast.V-above(far.V, g.V)*u.V/c.V*(1-p.V/(j.V*g.V)))/(fast.V-slow.V), fast, far, g, u, c, p, j, slow)
	e := r.w.Line("t_e", "s", "max(0,2.302585093*log10(g/g_2*f)/l_1)",
		max(0, ln10*math.Log10(g.V/close.V*f.V)/slow.V), g, close, f, slow)
	return r.w.Line("t_h", "min", "(t_p+t_e)/60", (ramp.V+e.V)/60, ramp, e), phrase.Of("thermal.jacket_cools")
}

// eigen are the two rates at which batch and liquid of a jacket come to its coolant, 1/s.
func (r *reader) eigen(u, j, c, cj working.Num) (slow, fast working.Num) {
	a := r.w.Line("a", "1/s", "U_w/C+(U_w+J)/C_j", u.V/c.V+(u.V+j.V)/cj.V, u, c, j, cj)
	b := r.w.Line("b", "1/s2", "U_w*J/(C*C_j)", u.V*j.V/(c.V*cj.V), u, j, c, cj)
	fast = r.w.Line("l_2", "1/s", "(a+sqrt(a*a-4*b))/2", (a.V+math.Sqrt(a.V*a.V-4*b.V))/2, a, b)
	return r.w.Line("l_1", "1/s", "b/l_2", b.V/fast.V, b, fast), fast
}

func above(x, y float64) float64 {
	if x > y {
		return 1
	}
	return 0
}

const ln10 = 2.302585093
