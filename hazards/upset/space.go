package upset

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// spaces reports what goes wrong in the gas over the liquor: a lid that closes,
// liquid that is sucked back, and fire.
func (r *reader) spaces(n *course.Course) {
	p := r.c.Route.Place(n.Stages[0].Done.Place)
	if p == nil {
		return
	}
	for i := range n.Runs {
		x := &n.Runs[i]
		if p.Closure != route.Closed {
			r.lid(n, x)
		}
		if p.Bubbler.Set {
			r.suckBack(n, x)
		}
	}
	r.ignition(n)
}

// lid is a vent that is blocked, or a lid that is put on, in the moment of the
// largest flow: what the review has of the place if it were shut.
func (r *reader) lid(n *course.Course, x *course.Run) {
	place, kase := figure.Step(n.Stages[0].Step.Number), figure.If("lid_closed").By(string(x.Law))
	cond := phrase.On(r.w, "upset.lid_closed", x.Conditions())
	r.asMeant(x, place, kase, cond)
	shut := figure.ID{Quantity: "gas.closed.time_to_10_kpa", Place: figure.At(n.Stages[0].Done.Place),
		Case: figure.Case{State: figure.Closed, Branch: string(x.Law)}}
	t := working.Absent("t", "min", working.Lacks("gas_if_shut", ""))
	if f := r.b.Gas.Get(shut); f != nil {
		t = f.Value
	}
	r.put("gas.closed.time_to_10_kpa", place, kase, t, cond)
}

// asMeant reports temperature and flow of a failure that leaves the run itself as
// it is: the highest and the largest of the run.
func (r *reader) asMeant(x *course.Run, place figure.Place, kase figure.Case, cond phrase.Phrase) working.Num {
	r.put("heat.temperature_peak", place, kase, r.hottest(x).As("T_max"),
		phrase.On(r.w, "upset.as_meant", cond))
	flow := r.flow(r.largest(x)).As("F")
	r.put("gas.hydrogen.peak_rate", place, kase, flow, cond)
	return flow
}

// hottest is the highest temperature of a run as it is meant to go, degC.
func (r *reader) hottest(x *course.Run) working.Num {
	if x.Missing != nil {
		return working.Absent("T", "degC", x.Missing...)
	}
	return r.w.Model("T", "degC", x.Balance(), x.Vessel.Peak.Value-kelvin, x.Inputs...)
}

// largest is the largest flow of a run as it is meant to go, mol/s.
func (r *reader) largest(x *course.Run) working.Num {
	if x.Missing != nil {
		return working.Absent("F_n", "mol/s", x.Missing...)
	}
	return r.w.Model("F_n", "mol/s", x.Balance(), x.Vessel.Gas.Value, x.Inputs...)
}

// suckBack bounds the liquid a bubbler gives back when the vessel cools from its highest
// temperature to the coldest that it stands in, and all vapour in the gas space condenses:
//
//	V = V_g (1 - (1 - x) T_c/T),  x = exp(-L/R (1/T - 1/T_b))
func (r *reader) suckBack(n *course.Course, x *course.Run) {
	place, kase := figure.Step(n.Stages[0].Step.Number), figure.If("suck_back").By(string(x.Law))
	cond := phrase.On(r.w, "upset.suck_back", x.Conditions())
	r.asMeant(x, place, kase, cond)
	top := r.hottest(x)
	boils, latent, R := r.boils(n), r.c.Store.Num("water.vaporisation").As("L"), r.c.Store.Num("constant.R").As("R")
	cold, space := r.coldest(n), n.Space.As("V_g")
	share := working.Exact("x", "1", 1, "no boiling point is known: all of the gas counts as vapour").Worse(working.Bound)
	if !boils.Unknown() {
		share = r.w.Line("x", "1", "min(1,exp(-L*1000/R*(1/(T+273.15)-1/(T_b+273.15))))",
			math.Min(1, math.Exp(-latent.V*1000/R.V*(1/(top.V+kelvin)-1/(boils.V+kelvin)))), latent, R, top, boils)
	}
	v := r.w.Line("V", "mL", "V_g*(1-(1-x)*(T_c+273.15)/(T+273.15))",
		space.V*(1-(1-share.V)*(cold.V+kelvin)/(top.V+kelvin)), space, share, cold, top)
	r.put("gas.suck_back", place, kase, v.Worse(working.Bound), cond)
}

// coldest is the temperature that a vessel comes to when nothing heats it, degC: that of the
// room, or of the coldest that it stands in before or after.
func (r *reader) coldest(n *course.Course) working.Num {
	cold := r.c.Store.Num("room.temperature").As("T_r")
	for i := range n.Stages {
		bath := n.Stages[i].Coolant.As("T_b")
		if i > 0 && bath.V == n.Stages[i-1].Coolant.V {
			continue
		}
		cold = r.w.Line("T_r", "degC", "min(T_r,T_b)", math.Min(cold.V, bath.V), cold, bath)
	}
	return cold.As("T_c")
}

// ignition bounds the heat of the gas space if it burns where hydrogen and the
// oxygen of the air are in proportion, and what that does to the liquor:
//
//	Q = V_g/Vm x q      [kJ: L, L/mol, kJ/mol of hydrogen]
//	T_max = T + Q/C
func (r *reader) ignition(n *course.Course) {
	kase := figure.If("ignition")
	place, st := figure.Step(n.Stages[0].Step.Number), r.c.Store
	v, x, h := n.Space.As("V_g"), st.Num("hydrogen.stoichiometric").As("x"), st.Num("enthalpy.H2O(g)").As("h_f")
	q := r.w.Line("Q", "kJ", "V_g/1000/Vm*x/100*(-h_f)", v.V/1000/r.vm.V*x.V/100*(-h.V), v, r.vm, x, h)
	r.put("gas.headspace.energy", place, kase, q.Worse(working.Bound), phrase.Of("upset.ignition"))
	for i := range n.Runs {
		r.lit(n, &n.Runs[i], q.As("Q"))
	}
}

// lit is what fire in the gas space does by one law, and how soon it can burn.
func (r *reader) lit(n *course.Course, x *course.Run, q working.Num) {
	place, kase := figure.Step(n.Stages[0].Step.Number), figure.If("ignition").By(string(x.Law))
	cond := phrase.On(r.w, "upset.ignition_by_law", x.Conditions())
	t, c := r.hottest(x), n.Capacity.As("C")
	top := r.w.Line("T_max", "degC", "T+Q*1000/C", t.V+q.V*1000/c.V, t, q, c)
	r.put("heat.temperature_peak", place, kase, top.Worse(working.Bound),
		phrase.On(r.w, "upset.flame_heat", cond))
	r.put("gas.hydrogen.peak_rate", place, kase, r.flow(r.largest(x)),
		phrase.On(r.w, "upset.flame_fed", cond))
	y, space := process.Flammable(r.c.Store, r.w), n.Space.As("V_g")
	from := working.Absent("t", "min", working.Joined(x.Missing, space.Missing())...)
	if x.Missing == nil && !space.Unknown() {
		at := float64(Followed)
		if s, ok := x.Vessel.Path.Given(vessel.VolumeFor(y.V, space.V/1000) / r.vm.V); ok {
			at = min(s/60, Followed)
		}
		from = r.w.Model("t", "min", "hydrogen in the headspace, "+x.Balance(), at,
			append([]working.Num{y, space, r.vm}, x.Inputs...)...)
	}
	r.put("gas.headspace.flammable_from", place, kase, from, phrase.On(r.w, "upset.flammable_from", cond))
}
