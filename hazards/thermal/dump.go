package thermal

import (
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
)

// dump reports what the liquor of a step is emptied into where its own vessel cannot be
// cooled: the quench water m and what takes up the heat of diluting the liquor in twice as
// much, which errs toward more, and the vessel that holds both.
//
//	m_d = m + max(0,Q_d)/(c_w (T_q - T_w))     [kg: kJ, kJ/kg/K]
//	V   = (V_l/1000 + m_d/rho)/f               [L: mL, g/mL]
func (r *reader) dump(d *process.Done, m working.Num) {
	st, place := r.c.Store, figure.Step(d.Number)
	m, to, from, cw := m.As("m"), st.Num("quench.target").As("T_q"), st.Num("quench.water").As("T_w"),
		st.Num("water.heat_capacity").As("c_w")
	q := r.diluted(d.Contents(), m).As("Q_d")
	water := r.w.Line("m_d", "kg", "m+max(0,Q_d)/(c_w*(T_q-T_w))", m.V+max(0, q.V)/(cw.V*(to.V-from.V)),
		m, q, cw, to, from)
	water = r.put("heat.dump.water", place, water, phrase.Of("thermal.dump_water")).As("m_d")
	l, rho, f := d.Contents().Volume(r.w).As("V_l"), st.Num("water.density").As("rho"), st.Num("dump.filling").As("f")
	r.put("heat.dump.volume", place, r.w.Line("V", "L", "(V_l/1000+m_d/rho)/f",
		(l.V/1000+water.V/rho.V)/f.V, l, water, rho, f), phrase.Of("thermal.dump_volume"))
}

// diluted is the heat of bringing what is dissolved in a place into twice m kg of water
// more, kJ: unknown where a liquid is among it of which no model gives the heat of mixing.
func (r *reader) diluted(s *process.State, m working.Num) working.Num {
	molar := process.MolarMass(r.c.Store, r.w, "H2O").As("M")
	more := r.w.Line("n_m", "mol", "2000*m/M", 2000*m.V/molar.V, m, molar)
	var terms []working.Num
	for i := range s.Liquid {
		q := &s.Liquid[i]
		for j := range q.Entries {
			if e := &q.Entries[j]; e.Poured {
				return working.Absent("Q_d", "kJ", working.Lacks("heat_of_mixing", e.Name))
			}
		}
		for _, p := range q.Portions(r.w) {
			n, w := process.PartOf(r.w, q, p.Acid).As("n"), process.PartOf(r.w, q, p.Water).As("n_w")
			all := r.w.Line("n_w", "mol", "n_w+n_m", w.V+more.V, w, more)
			a := solution.IntegralHeat(r.c.Store, r.w, p.Model, n, all).As("a")
			b := solution.IntegralHeat(r.c.Store, r.w, p.Model, n, w).As("b")
			terms = append(terms, r.w.Line("Q_d", "kJ", "a-b", a.V-b.V, a, b))
		}
	}
	return r.w.Sum("Q_d", "kJ", terms...).Worse(working.Estimated)
}
