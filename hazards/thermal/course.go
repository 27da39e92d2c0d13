package thermal

import (
	"math"
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/vessel"
)

// course reports heat in time: the bound of instantaneous reaction for every
// addition, then each law that was integrated. Neither replaces the other: the
// first sizes the addition, the others what waits when it is over.
func (r *reader) course(n *course.Course) {
	for i := range n.Stages {
		if s := &n.Stages[i]; s.Etches != nil {
			r.addition(n, s)
		}
	}
	r.reaches(n)
	for i := range n.Runs {
		r.law(n, &n.Runs[i])
	}
}

// addition is what heat the addition of a stage gives if everything reacts as
// it goes in:
//
//	power = heat/over               [W: kJ, s]
//	time required = heat/(UA * allowed rise)    [min]
//
// Liquor poured on to powder gives all of the heat with its first share, so that the
// whole of it takes 1/share of the time required.
func (r *reader) addition(n *course.Course, s *course.Stage) {
	place, law := figure.Step(s.Step.Number), figure.By(string(vessel.Instantaneous))
	how := s.AsItGoesIn()
	q, t, ua := s.Heat.As("Q"), s.Reacts().As("t"), s.Passes(r.w)
	p := r.w.Line("P", "W", "Q*1000/t", q.V*1000/t.V, q, t).Worse(working.Bound)
	r.add("heat.peak_power.during_addition", place, law, p, how)
	r.add("heat.cooling.required", place, figure.Case{}, p, phrase.On(r.w, "thermal.cooling", how))
	if !s.Charged() {
		r.required(s, q, ua)
	}
	end := r.end(s, p, t)
	set := s.Set
	r.add("heat.temperature_peak", place, law, r.w.Line("T_max", "degC", "max(T,T_end)", max(set.V, end.V), set, end),
		phrase.On(r.w, "thermal.peak", how, s.Around(r.w)))
	r.ice(n, s)
}

// required is the shortest addition that the cooling can follow, the wall and the chiller
// of a jacket alike.
func (r *reader) required(s *course.Stage, q, ua working.Num) {
	x := r.allowed(s)
	need := r.w.Line("t_req", "min", "Q*1000/(UA*dT)/60", q.V*1000/(ua.V*x.V)/60, q, ua, x)
	if s.Jacket != nil {
		y, most := need.As("t_w"), s.Jacket.Power
		need = r.w.Line("t_req", "min", "max(t_w,Q*1000/P_c/60)", max(y.V, q.V*1000/most.V/60), y, q, most)
	}
	if s.Onto != nil {
		y, part := need.As("t_1"), s.Onto.Share
		need = r.w.Line("t_req", "min", "t_1/s", y.V/part.V, y, part)
	}
	r.add("heat.addition_time.required", figure.Step(s.Step.Number), figure.Case{}, need, r.slowly(s, x))
}

// ice is what it takes of ice to keep a stage cold, and all that follows until the
// next addition: for the heat of the etch, and in a bath of ice for the air of the
// room and the water of the bath.
func (r *reader) ice(n *course.Course, s *course.Stage) {
	q, f := s.Heat.As("Q"), r.c.Store.Num("ice.fusion").As("h_f")
	m, cond := r.w.Line("m", "kg", "Q/h_f", q.V/f.V, q, f), phrase.Of("thermal.ice")
	if s.Ice != nil {
		at := slices.IndexFunc(n.Stages, func(x course.Stage) bool { return x.Step == s.Step })
		melted, room := m.As("m_q"), s.Ice.Spent(r.w, n.InIce(r.w, at))
		m = r.w.Line("m", "kg", "m_q+m_r", melted.V+room.V, melted, room)
		cond = phrase.Of("thermal.ice_in_room")
	}
	r.add("heat.ice", figure.Step(s.Step.Number), figure.Case{}, m, cond)
}

// end is the temperature once all has reacted, degC, with a constant heat input p
// over t in a constant heat capacity, or in one that grows with the liquor poured on
// to the powder (a linear equation in both cases):
//
//	T_end = Tc + P/UA + (T - Tc - P/UA) exp(-UA t/C)
//	T_end = S + (T - S) (C0/C)^(1 + UA t/(C - C0)),  S = (P t + UA t Tc + (C - C0) T)/(UA t + C - C0)
func (r *reader) end(s *course.Stage, p, t working.Num) working.Num {
	if s.Jacket != nil && !s.Coolant.Unknown() {
		return r.endInJacket(s, p)
	}
	ua, tc, set := s.UA, s.Coolant, s.Set
	if n := s.Portions(); s.Onto == nil && n > 1 {
		return r.endOfPortions(s, p)
	}
	if s.Onto == nil {
		c := s.Filled.As("C")
		return r.w.Line("T_end", "degC", "T_c+P/UA+(T-T_c-P/UA)*exp(-UA*t/C)",
			tc.V+p.V/ua.V+(set.V-tc.V-p.V/ua.V)*math.Exp(-ua.V*t.V/c.V), tc, p, ua, set, t, c)
	}
	c0, c := s.Onto.There.As("C_0"), s.Onto.Capacity
	in := r.w.Line("C_in", "J/K", "C-C_0", c.V-c0.V, c, c0)
	still := r.w.Line("S", "degC", "(P*t+UA*t*T_c+C_in*T)/(UA*t+C_in)",
		(p.V*t.V+ua.V*t.V*tc.V+in.V*set.V)/(ua.V*t.V+in.V), p, t, ua, tc, in, set)
	return r.w.Line("T_end", "degC", "S+(T-S)*pow(C_0/C,1+UA*t/C_in)",
		still.V+(set.V-still.V)*math.Pow(c0.V/c.V, 1+ua.V*t.V/in.V), still, set, c0, c, ua, t, in)
}

// endOfPortions is the highest temperature at the end of a portion, degC: with the heat
// input p while one goes in, and none in the pause behind it.
//
//	T_k = A + (T - A) exp(-UA t/C), A = Tc + P/UA, and from there T = Tc + (T_k - Tc) exp(-UA pause/C)
func (r *reader) endOfPortions(s *course.Stage, p working.Num) working.Num {
	ua, tc, set, c := s.UA, s.Coolant, s.Set, s.Filled.As("C")
	n := float64(s.Portions())
	each, pause := s.GoesIn.V/n, (s.Over.V-s.GoesIn.V)/n
	warm, cool := math.Exp(-ua.V*each/c.V), math.Exp(-ua.V*pause/c.V)
	to, t, most := tc.V+p.V/ua.V, set.V, math.Inf(-1)
	for range s.Portions() {
		t = to + (t-to)*warm
		most = max(most, t)
		t = tc.V + (t-tc.V)*cool
	}
	return r.w.Model("T_end", "degC", "heat balance, portion by portion", most, tc, p, ua, set, c, s.Over, s.GoesIn)
}

// allowed is how far above the coolant the addition may warm the liquor: to
// where the route stops it, or the usual rise.
func (r *reader) allowed(s *course.Stage) working.Num {
	if !s.Step.NotAbove.Set {
		return r.c.Store.Num("addition.allowed_rise").As("dT")
	}
	top, tc := r.c.Given("T_stop", "degC", s.Step.NotAbove), s.Coolant
	d := r.w.Line("dT", "K", "T_stop-T_c", top.V-tc.V, top, tc)
	if d.V <= 0 {
		return working.Absent("dT", "K", working.Lacks("no_room_above_coolant", "").In(s.Step.Number))
	}
	return d
}

// add reports a figure, and returns it as it is kept.
func (r *reader) add(quantity string, place figure.Place, kase figure.Case, v working.Num,
	conditions phrase.Phrase) working.Num {
	v = r.w.Keep(v)
	r.out = append(r.out, figure.Figure{ID: figure.ID{Quantity: quantity, Place: place, Case: kase}, Value: v,
		Conditions: conditions})
	return v
}

// law reports one integrated law: what has not reacted at the end of the
// addition, and the peaks during and after it.
func (r *reader) law(n *course.Course, x *course.Run) {
	kase := figure.By(string(x.Law))
	cond := x.Conditions()
	r.jackets(n, x)
	for i := range n.Stages {
		s := &n.Stages[i]
		place, lacks := figure.Step(s.Step.Number), x.Lacks(s.Step.Number)
		at := r.byRun(x, lacks)
		during, after := x.Window(s.Step.Number)
		if s.Etches != nil {
			r.add("heat.peak_power.during_addition", place, kase, at("P", "W", during.Heat.Value), cond)
			r.add("heat.accumulation", place, kase, at("X_ac", "1", x.Waiting(during)), cond)
		}
		if after.Step != 0 || lacks != nil && s.MayStand() {
			r.add("heat.peak_power.after_addition", place, kase, at("P", "W", after.Heat.Value), cond)
		}
		if s.Etches == nil && s.Hold.V == 0 {
			continue
		}
		r.add("heat.temperature_peak", place, kase, at("T_max", "degC", max(during.Peak.Value, after.Peak.Value)-kelvin),
			phrase.On(r.w, "thermal.peak_by_law", cond, s.Around(r.w)))
		to := r.at(place)
		if lacks != nil {
			top := r.add("heat.mtsr", place, kase, r.mostByLaw(n, i), phrase.Of("thermal.mtsr_without_run"))
			to.byLaw = append(to.byLaw, byLaw{kase, top})
			continue
		}
		top := r.add("heat.mtsr", place, kase, at("T_m", "degC", max(during.MTSR.Value, after.MTSR.Value)-kelvin),
			phrase.On(r.w, "thermal.mtsr_by_law", cond))
		to.byLaw = append(to.byLaw, byLaw{kase, top})
	}
}

// byRun makes a number of a run, unknown where that lacks something.
func (r *reader) byRun(x *course.Run, lacks []working.Missing) func(symbol, unit string, v float64) working.Num {
	return func(symbol, unit string, v float64) working.Num {
		if lacks != nil {
			return working.Absent(symbol, unit, lacks...)
		}
		return r.w.Model(symbol, unit, x.Balance(), v, x.Inputs...)
	}
}

// mostByLaw is what no law can pass in stage last of a course: the warmest that
// the liquor or what is around it has been set to, and all the heat of the
// powder on top.
//
//	T = max(T_set, T_c, ...) + heat/C    [degC; kJ, J/K]
func (r *reader) mostByLaw(n *course.Course, last int) working.Num {
	warm := n.Stages[0].Set
	for i := 0; i <= last; i++ {
		a, b, c := warm.As("T_w"), n.Stages[i].Set, n.Stages[i].Coolant
		warm = r.w.Line("T_w", "degC", "max(T_w,T,T_c)", max(a.V, b.V, c.V), a, b, c)
	}
	q, c := n.Heat.As("Q"), n.Capacity.As("C")
	return r.w.Line("T_m", "degC", "T_w+Q*1000/C", warm.V+q.V*1000/c.V, warm, q, c).Worse(working.Bound)
}

const kelvin = 273.15

// slowly says what the shortest addition holds for, that lets the liquor get x K warmer
// than its coolant.
func (r *reader) slowly(s *course.Stage, x working.Num) phrase.Phrase {
	if r.w == nil {
		return phrase.Phrase{}
	}
	if x.Unknown() {
		return phrase.Of("thermal.addition_unbounded", s.Around(r.w))
	}
	return phrase.Of("thermal.addition", x.V, s.Around(r.w))
}
