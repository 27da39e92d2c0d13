package thermal

import (
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
)

// quench is the water that brings the liquor of a step at its highest
// temperature down:
//
//	m = C (T - T_q)/(c_w (T_q - T_w))    [kg: J/K, K, kJ/kg/K]
//
// C is the low end, as everywhere, which errs toward more water while the step
// is set colder than what it is quenched to; where it is set warmer, everything
// counts as water, which takes up more than any of it. Water on to a melt makes steam and
// acid at once: of what is dry none is told.
func (r *reader) quench(d *process.Done, mtsr working.Num) {
	st := r.c.Store
	c, t, to := d.Contents().HeatCapacity(r.w).As("C"), mtsr.As("T"), st.Num("quench.target").As("T_q")
	from, cw := st.Num("quench.water").As("T_w"), st.Num("water.heat_capacity").As("c_w")
	if h := r.hottest(d); h.V > d.Hot.V {
		set, x := d.Hot.As("T_set"), t
		t = r.w.Line("T", "degC", "T+T_h-T_set", x.V+h.V-set.V, x, h, set)
	}
	if d.Hot.V > to.V {
		m := r.mass(d.Contents()).As("m_c")
		c = r.w.Line("C", "J/K", "m_c*c_w", m.V*cw.V, m, cw)
	}
	v := r.w.Line("m", "kg", "max(C*(T-T_q)/(1000*c_w*(T_q-T_w)),0)", max(c.V*(t.V-to.V)/(1000*cw.V*(to.V-from.V)), 0),
		c, t, to, cw, from)
	if !slices.ContainsFunc(d.Contents().Liquid, func(q process.Pool) bool { return q.Wet() }) {
		v = working.Absent("m", "kg", working.Lacks("water_on_melt", "").In(d.Number))
	}
	if more := d.Contents().Unsaid(); more != nil {
		v = working.Absent("m", "kg", more...)
	}
	r.dump(d, r.put("heat.quench_water", figure.Step(d.Number), v, phrase.Of("thermal.quench")))
}

// quenched reports what a liquor comes to that is poured into another place.
func (r *reader) quenched(d *process.Done) {
	q := d.Quenched
	if q == nil {
		return
	}
	how := "thermal.quenched"
	if !q.Ice.None() {
		how = "thermal.quenched_ice"
	}
	r.put("heat.quench.temperature", figure.Step(d.Number), q.Comes, phrase.Of(how))
}

// hottest is the highest temperature that the route sets in a place of which it does
// not say what cools or warms it, degC: what warms it then may stand there before.
func (r *reader) hottest(d *process.Done) working.Num {
	out := d.Hot.As("T_h")
	p := r.c.Route.Place(d.Place)
	if p == nil || p.Cooling != nil {
		return out
	}
	for i := range r.k.Steps {
		if x := &r.k.Steps[i]; x.Place == d.Place && x.Hot.V > out.V {
			out = x.Hot.As("T_h")
		}
	}
	return out
}

// mass is that of everything in a place, in g.
func (r *reader) mass(s *process.State) working.Num {
	var terms []working.Num
	for i := range s.Liquid {
		terms = append(terms, process.PartOf(r.w, &s.Liquid[i], s.Liquid[i].Mass))
	}
	for i := range s.Solids {
		if m := s.Solids[i].Mass; !m.None() { // what the etch left is counted with the product
			terms = append(terms, m)
		}
	}
	return r.w.Sum("m_c", "g", terms...)
}
