package thermal

import (
	"math"
	"slices"

	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// mix reports the heat of dissolving and diluting in a step. It is never taken
// off the heat of the etch; the heat of a neutralisation is another figure.
func (r *reader) mix(d *process.Done) {
	m := d.Mixed
	if m != nil && r.met(d) {
		return
	}
	if m == nil || !r.c.Route.Steps[d.Number-1].Verb().Mixes || !m.Mixes() {
		return
	}
	if more := mixedIn(d).Unsaid(); more != nil {
		if r.c.Route.Steps[d.Number-1].Verb().Waste != "" && !slices.ContainsFunc(more, func(x working.Missing) bool {
			return x.Kind != process.CyclesOpen
		}) {
			return // as many rinses as it takes leave less to mix than was told of the liquor before them
		}
		r.notMixed(d, phrase.Of("thermal.mix_amount_unknown"), more...)
		return
	}
	if strange := m.StrangeMol * mostMixing * 1000 / mixedIn(d).HeatCapacity(nil).V; m.Strange != "" &&
		!(strange <= process.NoRise) {
		r.notMixed(d, phrase.On(r.w, "thermal.mix_unheld", m.Strange), working.Lacks("heat_of_mixing", m.Strange))
		return
	}
	var terms []working.Num
	for i := range m.After {
		terms = append(terms, r.integral(&m.After[i], "a", 1))
	}
	for i := range m.Before {
		terms = append(terms, r.integral(&m.Before[i], "b", -1))
	}
	for i := range m.Salts {
		if m.Salts[i].Sub.Solution != "" {
			continue // its heat is in the integral of the solution it makes
		}
		terms = append(terms, r.salt(&m.Salts[i], m))
	}
	q := r.w.Sum("Q_mix", "kJ", terms...).Worse(working.Estimated)
	size := 0.0
	for i := range terms {
		size += math.Abs(terms[i].V)
	}
	place := figure.Step(d.Number)
	r.put("heat.mix.total", place, q, phrase.Of("thermal.mix"))
	c := mixedIn(d).HeatCapacity(r.w).As("C")
	if q.V < -1e-9*size && c.Status == working.Bound {
		// A heat capacity left out overstates the cooling, which is no bound.
		r.put("heat.mix.rise", place, working.Absent("dT", "K", working.Lacks("heat_capacity_mixed", "")),
			phrase.Of("thermal.mix_cools"))
		return
	}
	lo := working.Exact("lo", "K", -25, "from 25 degC to freezing")
	r.put("heat.mix.rise", place, r.w.Line("dT", "K", "max(Q_mix*1000/C,lo)", max(q.V*1000/c.V, lo.V), q, c, lo),
		phrase.Of("thermal.mix_rise"))
}

// notMixed reports that nothing can be said of what a step mixes, and why.
func (r *reader) notMixed(d *process.Done, conditions phrase.Phrase, missing ...working.Missing) {
	r.put("heat.mix.total", figure.Step(d.Number), working.Absent("Q_mix", "kJ", missing...), conditions)
	r.put("heat.mix.rise", figure.Step(d.Number), working.Absent("dT", "K", missing...), conditions)
}

// mixedIn is where the liquids of a step came together.
func mixedIn(d *process.Done) *process.State {
	if d.Mixed.There != nil {
		return d.Mixed.There
	}
	return d.Contents()
}

// No liquid that goes into another gives more heat of mixing than this, sulfuric acid in
// much water included.
const mostMixing = 100.0 // kJ per mol of it; memory

// met reports the mixing figures of a step in which acid meets base as unknown, unless
// so little does that it cannot matter: that heat is modelled where the step neutralises
// alone.
func (r *reader) met(d *process.Done) bool {
	if d.Mixed.Met == 0 {
		return false
	}
	if r.c.Route.Steps[d.Number-1].Verb().Does == route.Neutralises ||
		mixedIn(d).MostRise(d.Mixed.Met) <= process.NoRise {
		return false
	}
	r.notMixed(d, phrase.Of("thermal.acid_meets_base"),
		working.Lacks("acid_meets_base", "").In(d.Number))
	return true
}

// integral is the heat of making a portion from its pure solute, in kJ, with
// its sign.
func (r *reader) integral(p *process.Portion, symbol string, sign float64) working.Num {
	q := solution.IntegralHeat(r.c.Store, r.w, p.Model, p.Acid, p.Water).As("q")
	if sign > 0 {
		return q.As("q_" + symbol)
	}
	return r.w.Line("q_"+symbol, "kJ", "-q", -q.V, q)
}

// salt is the heat of n mol of a salt going into solution: into acid as far as
// there is acid for a fluoride, else into water. Bifluoride brings its own
// acid; beside a strong one it gives more HF and takes up more heat.
func (r *reader) salt(e *process.Entry, m *process.Mixing) working.Num {
	st, f := r.c.Store, e.Sub.Formula.Text
	n, a := e.N.As("n"), m.AcidBefore.As("A")
	if e.Sub.Kind == "fluoride_salt" && !(a.V <= 0) {
		q := st.Num("dissolution_acid." + f + "(s)").As("q")
		if q.Unknown() || !strong(m) {
			q = st.Num("dissolution." + f + "(s)").As("q")
		}
		return r.w.Line("Q", "kJ", "q*min(n,A)", q.V*min(n.V, a.V), q, n, a)
	}
	q := st.Num("dissolution_water." + f + "(s)").As("q")
	if q.Unknown() && e.Sub.Acid > 0 { // bifluoride in water makes its own acid
		q = st.Num("dissolution." + f + "(s)").As("q")
	}
	return r.w.Line("Q", "kJ", "q*n", q.V*n.V, q, n)
}

// strong reports whether a strong acid is in the mixture.
func strong(m *process.Mixing) bool {
	return slices.ContainsFunc(m.After, func(p process.Portion) bool {
		return p.Model == "hcl" || p.Model == "h2so4" ||
			p.Model == "hno3"
	})
}
