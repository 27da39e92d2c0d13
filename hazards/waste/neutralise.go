package waste

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/neutralising"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
)

// agent reports an agent on one liquor.
func (r *reader) agent(place figure.Place, a acids, g *agent) {
	if len(g.parts) == 0 {
		r.noBase(place, g)
		return
	}
	b := a.base.As("B")
	r.put("neutralise.mass", place, g.slug, r.needed(b, g),
		phrase.Of("neutralise.stoichiometric").And(bound(a, g)).And(slow(a)))
	q := r.heat(a, g)
	r.put("neutralise.heat", place, g.slug, q, phrase.Of("neutralise.as_it_stands"))
	r.rise(place, a, g, q)
	if g.any(carbon) {
		r.carbonDioxide(place, b, g)
	}
	if g.any(neutralising.Brings.Binds) {
		r.sludge(place, a, g)
	}
}

// needed is the mass of agent that takes B mol of base equivalents, kg.
func (r *reader) needed(b working.Num, g *agent) working.Num {
	w := r.w
	if len(g.parts) == 1 {
		x, M := r.base(&g.parts[0]), r.molar(g.parts[0].sub)
		return w.Line("m", "kg", "B/x*M/1000", b.V/x.V*M.V/1000, b, x, M)
	}
	M := r.per(g, "M_e", "g/mol", "g", func(p *part) working.Num { return r.molar(p.sub) })
	return w.Line("m", "kg", "B*M_e/1000", b.V*M.V/1000, b, M)
}

func (r *reader) molar(s *chemicals.Substance) working.Num {
	return s.Formula.MolarMass(r.c.Store, r.w).As("M")
}

// noBase reports a step in which nothing is written that neutralises: what it
// needs cannot be said in an agent it does not have.
func (r *reader) noBase(place figure.Place, g *agent) {
	missing, cond := working.Lacks("agent", ""), phrase.Of("neutralise.nothing_written")
	if len(g.names) > 0 {
		cond = phrase.Of("neutralise.no_base", g.names)
	}
	for i := range g.beside {
		cond = cond.And(phrase.Of("neutralise.binds_and_leaves_acid", g.beside[i].sub.Name))
	}
	r.put("neutralise.mass", place, g.slug, working.Absent("m", "kg", missing), cond)
	r.put("neutralise.temperature_rise", place, g.slug, working.Absent("dT", "K", missing), cond)
}

// spent reports a step whose liquor holds no acid that base is needed for. What is not held
// may meet what it does hold, and how warm that gets is not known.
func (r *reader) spent(place figure.Place, g *agent) {
	r.put("neutralise.mass", place, g.slug, working.Exact("m", "kg", 0, "the liquor holds no acid that base is "+
		"needed for"),
		phrase.Of("neutralise.no_acid"))
	for i := range g.parts {
		if sub := g.parts[i].sub; sub.NotHeld {
			r.put("neutralise.temperature_rise", place, g.slug, working.Absent("dT", "K", sub.Lacks()),
				phrase.Of("neutralise.no_acid"))
			return
		}
	}
}

// carbonDioxide is what carbonate gives off with the acid, L.
func (r *reader) carbonDioxide(place figure.Place, b working.Num, g *agent) {
	w := r.w
	cond := phrase.Of("neutralise.all_carbon_dioxide")
	if len(g.parts) == 1 {
		x, y := r.base(&g.parts[0]), carbonOf(&g.parts[0])
		r.put("neutralise.carbon_dioxide", place, g.slug, w.Line("V", "L", "B/x*y*Vm", b.V/x.V*y.V*r.vm.V, b, x, y, r.vm),
			cond)
		return
	}
	y := r.per(g, "y", "mol/mol", "mol", carbonOf)
	r.put("neutralise.carbon_dioxide", place, g.slug, w.Line("V", "L", "B*y*Vm", b.V*y.V*r.vm.V, b, y, r.vm), cond)
}

// bound says how far the fluoride is.
func bound(a acids, g *agent) phrase.Phrase {
	switch {
	case len(g.beside) > 0:
		return phrase.Of("neutralise.binds_beside", g.beside[0].sub.Name)
	case g.any(func(b neutralising.Brings) float64 { return b.Magnesium }):
		return phrase.Of("neutralise.binds_by_magnesium")
	case !g.any(func(b neutralising.Brings) float64 { return b.Calcium }):
		return phrase.Of("neutralise.leaves_fluoride")
	case a.fluorine.V > a.base.V:
		return phrase.Of("neutralise.too_little_calcium")
	}
	return phrase.Phrase{}
}

// slow says of a complex that cold base binds none of what it holds.
func slow(a acids) phrase.Phrase {
	if a.held.None() {
		return phrase.Phrase{}
	}
	return phrase.Of("neutralise.held")
}

// heat sums what HF, strong acid and dissolved aluminium fluoride give:
//
//	AlF3 = min(Al, F/3), HF = min(F - 3 AlF3, B - 3 AlF3), strong = B - 3 AlF3 - HF
func (r *reader) heat(a acids, g *agent) working.Num {
	w := r.w
	b, n, al := a.base.As("B"), a.fluorine.As("F"), a.aluminium.As("Al")
	y := w.Line("AlF3", "mol", "max(min(Al,F/3,B/3),0)", max(min(al.V, n.V/3, b.V/3), 0), al, n, b)
	h := w.Line("HF", "mol", "max(min(F,B)-3*AlF3,0)", max(min(n.V, b.V)-3*y.V, 0), n, b, y)
	s := w.Line("S", "mol", "B-3*AlF3-HF", b.V-3*y.V-h.V, b, y, h)
	qh, qs := r.reaction("q_h", g, neutralising.HF), r.reaction("q_s", g, neutralising.Strong)
	qy := r.reaction("q_y", g, neutralising.AluminiumFluoride)
	q := w.Line("Q", "kJ", "HF*q_h+S*q_s+AlF3*q_y", h.V*qh.V+s.V*qs.V+y.V*qy.V, h, qh, s, qs, y, qy)
	if len(g.beside) == 0 {
		return q
	}
	terms := []working.Num{q}
	for i := range g.beside {
		terms = append(terms, r.binding(&g.beside[i], false))
	}
	return w.Sum("Q", "kJ", terms...)
}

// binding is the heat of dissolving all of what binds fluoride, and of all of it
// binding some, out of HF where no base is there: at least what it gives here.
func (r *reader) binding(p *part, acid bool) working.Num {
	q := r.c.Store.Num(datum.Of("dissolution_water", neutralising.Row(p.sub))).As("q_d")
	b := r.hess("q_b", neutralising.Binding(p.sub, acid))
	n := p.n.As("n")
	return r.w.Line("Q_b", "kJ", "n*max(q_d+q_b,0)", n.V*max(q.V+b.V, 0), n, q, b).Worse(working.Bound)
}

// The water is counted from 25 degC, to no more than boiling at 100 degC and
// no less than freezing at 0 degC; dilution keeps 40 degC and 10 wt% HF.
const (
	startsAt    = 25.0 // degC
	boilsAt     = 100.0
	keptBelow   = 40.0
	dilutedToHF = 0.10 // g/g
)

func (r *reader) rise(place figure.Place, a acids, g *agent, q working.Num) {
	w, st := r.w, r.c.Store
	m, cp := a.water.As("m"), st.Num("water.cp").As("cp")
	hi := working.Exact("hi", "K", boilsAt-startsAt, "from 25 degC to boiling")
	lo := working.Exact("lo", "K", -startsAt, "from 25 degC to freezing")
	Q := q.As("Q")
	dT := w.Line("dT", "K", "max(min(Q*1000/(m*cp),hi),lo)", max(min(Q.V*1000/(m.V*cp.V), hi.V), lo.V), Q, m, cp, hi, lo)
	need := r.water(a, q)
	cond := phrase.Of("neutralise.own_water")
	if a.first {
		cond = phrase.Of("neutralise.first_water")
	}
	if a.later {
		cond = cond.And(phrase.Of("neutralise.later_water"))
	}
	if dT.V >= hi.V {
		cond = phrase.Of("neutralise.would_boil").And(cond)
	}
	r.put("neutralise.temperature_rise", place, g.slug, dT, cond)
	r.put("neutralise.dilution_water", place, g.slug, need, phrase.Of("neutralise.more_first"))
}

// water is the dilution water, in L: what is dilute already takes what is wanting of
// the water that holds the heat, and what is not all of it.
func (r *reader) water(a acids, q working.Num) working.Num {
	w, st := r.w, r.c.Store
	M, rho := process.MolarMass(st, w, "HF"), st.Num("water.density").As("rho")
	n, m, cp, Q := a.fluorine.As("n"), a.mass.As("m"), st.Num("water.cp").As("cp"), q.As("Q")
	d := working.Exact("d", "1", dilutedToHF, "10 wt% HF")
	weak := w.Line("m_1", "g", "max(n*M/d-m,0)", max(n.V*M.V/d.V-m.V, 0), n, M, d, m)
	k := working.Exact("k", "K", keptBelow-startsAt, "from 25 degC to 40 degC")
	hold := w.Line("m_h", "g", "max(Q*1000/(cp*k),0)", max(Q.V*1000/(cp.V*k.V), 0), Q, cp, k)
	own := a.water.As("m_w") // a liquor whose own water holds the heat needs none for cooling
	cool := w.Line("m_2", "g", "(m_h-m_w*(1-above(m_1,0)))*above(m_h,m_w)",
		(hold.V-own.V*(1-above(weak.V, 0)))*above(hold.V, own.V), hold, own, weak)
	return w.Line("V", "L", "max(m_1,m_2)/(1000*rho)", max(weak.V, cool.V)/(1000*rho.V), weak, cool, rho)
}

// sludge is the fluoride of calcium, or of magnesium where there is no calcium,
// and aluminium hydroxide, dry.
func (r *reader) sludge(place figure.Place, a acids, g *agent) {
	w, st := r.w, r.c.Store
	salt, solid := "calcium fluoride", "CaF2"
	if !g.any(func(b neutralising.Brings) float64 { return b.Calcium }) {
		salt, solid = "magnesium fluoride", "MgF2"
	}
	if a.unknown {
		r.put("neutralise.sludge_dry", place, g.slug, working.Absent("m", "kg", working.Lacks("metal_not_followed", "")),
			phrase.Of("neutralise.sludge_metal_unknown", salt))
		return
	}
	if a.base.Unknown() { // nobody knows whether it is acid enough to be limed
		r.put("neutralise.sludge_dry", place, g.slug, working.Absent("m", "kg", a.base.Missing()...),
			phrase.Of("neutralise.sludge_if_acid", salt))
		return
	}
	M1, M2 := process.MolarMass(st, w, solid).As("M_1"), process.MolarMass(st, w, "Al(OH)3").As("M_2")
	n, al := a.fluorine.As("F"), a.aluminium.As("Al")
	v := w.Line("m", "kg", "(F/2*M_1+Al*M_2)/1000", (n.V/2*M1.V+al.V*M2.V)/1000, n, M1, al, M2)
	r.put("neutralise.sludge_dry", place, g.slug, v, phrase.Of("neutralise.sludge", salt))
}

// above is 1 where x is more than y, else 0; NaN where either is unknown.
func above(x, y float64) float64 {
	switch {
	case x > y:
		return 1
	case x <= y:
		return 0
	}
	return math.NaN()
}
