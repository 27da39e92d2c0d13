package thermal

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
)

// overheated is an open liquor with all the heat of its powder in it: where it starts,
// degC, how far it would rise, K, where it boils, degC, and its heat capacity, J/K.
type overheated struct{ t, rise, boils, c working.Num }

// boiledOff is the vapour that the heat left over at boiling drives out of an open
// liquor, with the latent heat of water and no more than that:
//
//	m = max(0, T + dT - T_b) C/1000/L M    [g: K, J/K, kJ/mol, g/mol]
//	V = m/M R (T_b + 273.15)/P             [L: J/mol/K, kPa]
//	F = (V + n_H2 R (T_b + 273.15)/P)/t_w  [L/min: while the powder is wetted]
//	x = m/m_l                              of the liquor; from 1 on it boils dry
func (r *reader) boiledOff(d *process.Done, place figure.Place, h overheated) {
	st := r.c.Store
	t, rise, b, c := h.t, h.rise, h.boils.As("T_b"), h.c
	l, w := st.Num("water.vaporisation").As("L"), process.MolarMass(st, r.w, "H2O")
	m := r.w.Line("m", "g", "max(0,T+dT-T_b)*C/1000/L*M", max(0, t.V+rise.V-b.V)*c.V/1000/l.V*w.V, t, rise, b, c, l, w).
		Worse(working.Bound)
	m = r.put("heat.boiled_off", place, m, phrase.Of("thermal.boiled_off")).As("m")

	R, atm, wets := st.Num("constant.R").As("R"), st.Num("gas.pressure").As("P"), st.Num("kinetics.wetting").As("t_w")
	v := r.w.Line("V", "L", "m/M*R*(T_b+273.15)/P", m.V/w.V*R.V*(b.V+kelvin)/atm.V, m, w, R, b, atm)
	v = r.put("heat.boiled_off.volume", place, v, phrase.Of("thermal.boiled_off")).As("V")
	var hydrogen []working.Num
	for _, e := range d.Etches {
		hydrogen = append(hydrogen, course.GasOf(&r.k.Etches[e])...)
	}
	g := r.w.Sum("n_H2", "mol", hydrogen...)
	f := r.w.Line("F", "L/min", "(V+n_H2*R*(T_b+273.15)/P)/(t_w/60)",
		(v.V+g.V*R.V*(b.V+kelvin)/atm.V)/(wets.V/60), v, g, R, b, atm, wets)
	r.put("heat.boiled_off.flow", place, f.Worse(working.Bound), phrase.Of("thermal.boiled_while_wetted"))

	all := r.liquor(d).As("m_l")
	x := r.w.Line("x", "1", "m/m_l", m.V/all.V, m, all)
	r.put("heat.boiled_off.share", place, x, phrase.Of("thermal.boiled_off"))
}

// liquor is the mass of what is liquid in a step, g: where it is poured onto powder, of
// what is there once all of that can react.
func (r *reader) liquor(d *process.Done) working.Num {
	all := r.liquid(d.Contents())
	s := r.stage(d.Number)
	if s == nil || s.Onto == nil {
		return all
	}
	there, share, most := r.liquid(&d.Before), s.Onto.Share.As("s"), all.As("m_2")
	there = there.As("m_1")
	return r.w.Line("m_l", "g", "m_1+s*(m_2-m_1)", there.V+share.V*(most.V-there.V), there, share, most)
}

func (r *reader) liquid(s *process.State) working.Num {
	var masses []working.Num
	for i := range s.Liquid {
		masses = append(masses, s.Liquid[i].Mass)
	}
	return r.w.Sum("m_l", "g", masses...)
}
