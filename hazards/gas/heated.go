package gas

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// heated reports a container that is heated while it is closed: how full it is,
// and what it comes to hot:
//
//	space   = capacity - liquid x - powder, x how far the liquid swells
//	gas     = n R T/space
//	air     = P T/298.15
//	p       = gas + air + vapour - P
func (r *reader) heated(p *route.Place, step int, s *process.State, n working.Num) {
	d := r.done(step)
	if d == nil {
		return
	}
	room := process.RoomIn(r.c, r.w, r.k, p, s)
	cap, l, solid, st := room.Capacity.As("cap"), room.Liquid.As("V_l"), room.Solid.As("V_s"), r.c.Store
	r.put("vessel.filling", figure.At(p.Key), "", figure.Case{},
		r.w.Line("f", "%", "100*V_l/cap", 100*l.V/cap.V, l, cap),
		phrase.Of("gas.filling"))
	t, x := d.Hot.As("T"), r.swells(d.Hot)
	space := r.w.Line("V_g", "mL", "cap-V_l*x-V_s", cap.V-l.V*x.V-solid.V, cap, l, x, solid)
	if space.V <= 0 {
		space = working.Absent("V_g", "mL", working.Lacks("no_space_hot", p.Key))
	}
	R, P, fill, m, v := st.Num("constant.R").As("R"), st.Num("gas.pressure").As("P"),
		st.Num("gas.temperature").As("T_f"), n.As("n"), r.vapour(d)
	hot := r.w.Line("p", "kPa gauge", "n*R*(T+273.15)/V_g*1000+P*(T+273.15)/T_f+p_v-P",
		m.V*R.V*(t.V+kelvin)/space.V*1000+P.V*(t.V+kelvin)/fill.V+v.V-P.V, m, R, t, space, P, fill, v)
	r.pressed(p, figure.Case{State: figure.Heated}, hot, phrase.Of("gas.heated"))
}

const kelvin = 273.15

func (r *reader) done(step int) *process.Done {
	for i := range r.k.Steps {
		if r.k.Steps[i].Number == step {
			return &r.k.Steps[i]
		}
	}
	return nil
}

// swells is the volume of water at a temperature over that at 25 degC.
func (r *reader) swells(celsius working.Num) working.Num {
	t, ok := r.c.Store.Table("expansion.water")
	switch {
	case celsius.Unknown() || !ok:
		return working.Absent("x", "1", celsius.Missing()...)
	case celsius.V <= t.X[0]:
		return working.Exact("x", "1", 1, "not warmer than it was filled")
	}
	v, in := t.At(0, celsius.V)
	if !in {
		return working.Absent("x", "1", working.Lacks("expansion", ""))
	}
	return r.w.Table("x", "1", "expansion.water", v, celsius).Worse(working.Estimated)
}

// vapour is the pressure over the liquor of a step at its temperature: from its
// boiling point on by the heat of vaporisation of water, which is more than that
// of an acid in it; over a liquor with nothing volatile in it, that of water:
//
//	p = 101.325 exp(-L/R (1/T - 1/T_b))
func (r *reader) vapour(d *process.Done) working.Num {
	t, st := d.Hot.As("T"), r.c.Store
	boils, _ := course.Boiling(r.c, r.w, d)
	if !boils.Unknown() {
		b, l, R, P := boils.As("T_b"), st.Num("water.vaporisation").As("L"), st.Num("constant.R").As("R"),
			st.Num("gas.pressure").As("P")
		v := P.V * math.Exp(-l.V*1000/R.V*(1/(t.V+kelvin)-1/(b.V+kelvin)))
		return r.w.Line("p_v", "kPa", "P*exp(-L*1000/R*(1/(T+273.15)-1/(T_b+273.15)))", v, P, l, R, t,
			b).Worse(working.Estimated)
	}
	for i := range d.Contents().Liquid {
		for j := range d.Contents().Liquid[i].Entries {
			e := &d.Contents().Liquid[i].Entries[j]
			if e.Sub != nil && volatile(e.Sub) {
				return working.Absent("p_v", "kPa", working.Lacks("vapour_of_liquor", e.Sub.Name))
			}
		}
	}
	if t.Unknown() || t.V > mostWater {
		return working.Absent("p_v", "kPa", working.Joined(t.Missing(),
			[]working.Missing{working.Lacks("water_vapour", "")})...)
	}
	return r.w.Model("p_v", "kPa", "saturation pressure of water", solution.Saturation(t.V+kelvin), t).Worse(working.Bound)
}

// mostWater is below the critical temperature of water, degC.
const mostWater = 370

// volatile reports whether a substance can add to the vapour of water.
func volatile(s *chemicals.Substance) bool {
	switch {
	case s.Solution == "water" || s.Vapour == "none":
		return false
	case s.Ammonium > 0 || s.Vapour == "gives":
		return true
	}
	return s.State != "s" && s.State != "aq"
}
