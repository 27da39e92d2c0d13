package gas

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

// outlet is the vent of a place: the bore, the line and the bubbler, with what
// the lines of the sheet say of them. A line or bubbler that is not stated is
// not there.
type outlet struct {
	vessel.Outlet
	allowed working.Num // Pa, what the bore and its line may take
	inputs  []working.Num
}

func (r *reader) outlet(p *route.Place) outlet {
	st := r.c.Store
	cd, rho, mu, pv := st.Num("vent.discharge").As("C_d"), st.Num("vent.gas_density").As("rho"),
		st.Num("vent.gas_viscosity").As("mu"), st.Num("vent.back_pressure").As("p_v")
	o := outlet{Outlet: vessel.Outlet{Discharge: cd.V, Density: rho.V, Viscosity: mu.V},
		inputs: []working.Num{cd, rho, mu}}
	o.allowed = r.w.Line("dp", "Pa", "p_v*1000", pv.V*1000, pv)
	if p.Bubbler.Set {
		h, g, rw := r.c.Given("h", "mm", p.Bubbler),
			working.Exact("g", "m/s2", vessel.Gravity, "standard acceleration of free fall"), st.Num("water.density").As("rho_w")
		o.allowed = r.w.Line("dp", "Pa", "p_v*1000-rho_w*1000*g*h/1000", pv.V*1000-rw.V*1000*g.V*h.V/1000, pv, rw, g, h)
		if o.allowed.V <= 0 {
			o.allowed = working.Absent("dp", "Pa", working.Lacks("bubbler_too_deep", p.Key))
		}
	}
	l := r.c.Given("L", "m", p.VentLine)
	if !p.VentLine.Set {
		l = st.Num("vent.line_unstated").As("L")
	}
	o.Line = l.V
	o.inputs = append(o.inputs, l)
	return o
}

// bore is the bore in mm that lets q L/min out at what is allowed:
//
//	without a line  d = sqrt(4 Q/(Cd pi) sqrt(rho/(2 dp)))
//	with one        orifice and line together, the line as laminar or turbulent
func (r *reader) bore(o *outlet, q working.Num) working.Num {
	x, dp := q.As("F"), o.allowed
	cd, rho := o.inputs[0], o.inputs[1]
	const perMinute, pi = 60000, 3.141592653589793
	d := r.w.Line("d", "mm", "1000*sqrt(4*F/60000/(C_d*3.141592653589793)*sqrt(rho/(2*dp)))",
		1000*math.Sqrt(4*x.V/perMinute/(cd.V*pi)*math.Sqrt(rho.V/(2*dp.V))), x, cd, rho, dp)
	if o.Line == 0 {
		return d
	}
	v := 1000 * o.Bore(x.V/perMinute, dp.V)
	return r.w.Model("d", "mm", "orifice and line together", v, append([]working.Num{x, dp, d.As("d_0")}, o.inputs...)...)
}

// vent reports the bore that lets twice the largest flow of a step out.
func (r *reader) vent(x *flowing) {
	p := r.c.Route.Place(x.stage.Done.Place)
	if p == nil || p.Closure == route.Open {
		return
	}
	o, f, m, least := r.outlet(p), x.flow.As("F"), r.c.Store.Num("vent.margin").As("f"),
		r.c.Store.Num("vent.least").As("d_m")
	d := r.bore(&o, r.w.Line("F", "L/min", "F*f", f.V*m.V, f, m)).As("d")
	v := r.w.Line("d", "mm", "max(d,d_m)", max(d.V, least.V), d, least)
	if d.Unknown() {
		v = working.Absent("d", "mm", d.Missing()...)
	}
	r.put("gas.vent.bore_required", figure.Step(x.stage.Step.Number), "", x.kase, v,
		phrase.Of("gas.bore"))
}

// swell reports how fast gas leaves through the surface of the liquor, and the
// volume that its bubbles and foam take over it:
//
//	D = (4 V/pi)^(1/3), as high as it is wide
//	j = F/(pi D^2/4)
//	V_free = V (a/(1 - a) + foam min(1, j/j_f)), a the mean share of bubbles
//
// Foam is counted whole from j_f on, and in proportion below it.
func (r *reader) swell(x *flowing) {
	const pi = 3.141592653589793
	place, st := figure.Step(x.stage.Step.Number), r.c.Store
	v, f := x.course.Liquid.As("V"), x.flow.As("F")
	if d := x.stage.Done; d.Quenched != nil {
		v = d.After.Volume(r.w).As("V")
	}
	d := r.w.Line("D", "m", "pow(4*V/1e6/3.141592653589793,1/3.0)", math.Pow(4*v.V/1e6/pi, 1/3.0), v)
	j := r.w.Line("j", "mm/s", "F/60/(3.141592653589793*D*D/4)", f.V/60/(pi*d.V*d.V/4), f, d)
	r.put("gas.superficial_velocity", place, "", x.kase, j, phrase.Of("gas.velocity"))
	c0, sigma, rho, foam := st.Num("swell.distribution").As("C_0"), st.Num("swell.tension").As("sigma"),
		st.Num("swell.density").As("rho"), st.Num("foam.share").As("f_f")
	a := working.Absent("a", "1", j.Missing()...)
	if !j.Unknown() {
		a = r.w.Model("a", "1", "drift flux, bubbly", vessel.Void(j.V/1000, vessel.RiseVelocity(sigma.V, rho.V), c0.V),
			j.As("j"), c0, sigma, rho)
	}
	full := st.Num("foam.velocity").As("j_f")
	free := r.w.Line("V_f", "mL", "V*(a/(1-a)+f_f*min(1,j/j_f))", v.V*(a.V/(1-a.V)+foam.V*min(1, j.V/full.V)), v, a,
		foam, j.As("j"), full)
	r.put("gas.free_volume.required", place, "", x.kase, free, phrase.Of("gas.swell"))
}

// additions reports how long an addition has to be for the hood and for the
// vent, each on its own, if everything reacts as it goes in:
//
//	hood   t = V (1 - y)/(y Q)
//	vent   t = V f/F,  F what the stated bore lets out at 1 kPa
func (r *reader) additions(n *course.Course) {
	for i := range n.Stages {
		s := &n.Stages[i]
		if s.Etches == nil || s.Charged() {
			continue
		}
		place, v := figure.Step(s.Step.Number), r.litres(s.Gas).As("V")
		q, y := r.c.HoodFlow("Q"), process.Flammable(r.c.Store, r.w)
		t := r.w.Line("t", "min", "V*(1-y)/y*60/1000/Q", v.V*(1-y.V)/y.V*60/1000/q.V, v, y, q)
		r.put("gas.addition_time.hood", place, "", figure.Case{}, t.Worse(working.Bound), phrase.Of("gas.addition_hood"))
		if p := r.c.Route.Place(s.Done.Place); p != nil && p.Closure != route.Open {
			o, d, m := r.outlet(p), working.Absent("d", "mm", working.Lacks(working.NotGiven, p.At+".vent")),
				r.c.Store.Num("vent.margin").As("f")
			if p.VentBore.Set {
				d = r.c.Given("d", "mm", p.VentBore)
			}
			f := working.Absent("F", "L/min", working.Joined(o.allowed.Missing(), d.Missing())...)
			if !o.allowed.Unknown() && !d.Unknown() {
				f = r.w.Model("F", "L/min", "flow through bore and line at the pressure allowed",
					o.Flow(d.V/1000, o.allowed.V)*60000, append([]working.Num{d, o.allowed}, o.inputs...)...)
			}
			t := r.w.Line("t", "min", "V*f/F", v.V*m.V/f.V, v, m, f)
			r.put("gas.addition_time.vent", place, "", figure.Case{}, t.Worse(working.Bound), phrase.Of("gas.addition_vent"))
		}
	}
}
