package thermal

import (
	"math"
	"slices"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// mix reports the heat of dissolving and diluting in a step, of what a wash does in its place
// and where its first decant goes the greater. It is never taken off the heat of the etch; the
// heat of a neutralisation is another figure.
func (r *reader) mix(d *process.Done) {
	mixed := r.heatOf(d, d.Mixed)
	if parted := r.heatOf(d, d.Parted); parted.tells && !mixed.met && (!mixed.tells || parted.over(&mixed)) {
		mixed = parted
		mixed.conditions, mixed.risen = phrase.Of("thermal.first_decant", mixed.conditions),
			phrase.Of("thermal.first_decant", mixed.says())
	}
	if mixed.tells {
		r.put("heat.mix.total", figure.Step(d.Number), mixed.total, mixed.conditions)
		r.put("heat.mix.rise", figure.Step(d.Number), mixed.rise, mixed.says())
	}
}

// mixed is the heat of one mixing.
type mixed struct {
	total, rise working.Num // kJ, K
	conditions  phrase.Phrase
	risen       phrase.Phrase // of the rise, where it has other ones
	met         bool          // acid meets base in it
	tells       bool
}

// over reports whether a mixing warms more than another; what is not known warms more than any.
func (m *mixed) over(o *mixed) bool {
	return !o.rise.Unknown() && (m.rise.Unknown() || m.rise.V > o.rise.V)
}

// says is what the rise holds for.
func (m *mixed) says() phrase.Phrase {
	if m.risen.Key == "" {
		return m.conditions
	}
	return m.risen
}

// heatOf is the heat of a mixing of a step; it tells nothing where nothing mixes.
func (r *reader) heatOf(d *process.Done, m *process.Mixing) mixed {
	verb := r.c.Route.Steps[d.Number-1].Verb()
	if m == nil {
		return mixed{}
	}
	if r.met(d, m) {
		out := notMixed(phrase.Of("thermal.acid_meets_base"), working.Lacks("acid_meets_base", "").In(d.Number))
		out.met = true
		return out
	}
	if !verb.Mixes || !m.Mixes() {
		return mixed{}
	}
	if more := mixedIn(d, m).Unsaid(); more != nil {
		if verb.Waste != "" && !slices.ContainsFunc(more, func(x working.Missing) bool {
			return x.Kind != process.CyclesOpen
		}) {
			return mixed{} // as many rinses as it takes leave less to mix than was told of the liquor before them
		}
		return notMixed(phrase.Of("thermal.mix_amount_unknown"), more...)
	}
	if strange := m.StrangeMol * mostMixing * 1000 / mixedIn(d, m).HeatCapacity(nil).V; m.Strange != "" &&
		!(strange <= process.NoRise) {
		return notMixed(phrase.On(r.w, "thermal.mix_unheld", m.Strange), working.Lacks("heat_of_mixing", m.Strange))
	}
	return r.mixing(d, m)
}

// mixing is the heat of all that a mixing dissolves and dilutes.
func (r *reader) mixing(d *process.Done, m *process.Mixing) mixed {
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
	out := mixed{total: q, conditions: phrase.Of("thermal.mix"), risen: phrase.Of("thermal.mix_rise"), tells: true}
	c := mixedIn(d, m).HeatCapacity(r.w).As("C")
	if q.V < -1e-9*size && c.Status == working.Bound {
		// A heat capacity left out overstates the cooling, which is no bound.
		out.rise = working.Absent("dT", "K", working.Lacks("heat_capacity_mixed", ""))
		out.risen = phrase.Of("thermal.mix_cools")
		return out
	}
	lo := working.Exact("lo", "K", -25, "from 25 degC to freezing")
	out.rise = r.w.Line("dT", "K", "max(Q_mix*1000/C,lo)", max(q.V*1000/c.V, lo.V), q, c, lo)
	return out
}

// notMixed is a mixing of which nothing can be said, and why.
func notMixed(conditions phrase.Phrase, missing ...working.Missing) mixed {
	return mixed{total: working.Absent("Q_mix", "kJ", missing...), rise: working.Absent("dT", "K", missing...),
		conditions: conditions, tells: true}
}

// mixedIn is where the liquids of a step came together.
func mixedIn(d *process.Done, m *process.Mixing) *process.State {
	if m.There != nil {
		return m.There
	}
	return d.Contents()
}

// No liquid that goes into another gives more heat of mixing than this, sulfuric acid in
// much water included.
const mostMixing = 100.0 // kJ per mol of it; memory

// met reports whether acid meets base in a mixing, unless so little does that it cannot matter:
// that heat is not known, since it is modelled where a step neutralises alone.
func (r *reader) met(d *process.Done, m *process.Mixing) bool {
	return m.Met != 0 && r.c.Route.Steps[d.Number-1].Verb().Does != route.Neutralises &&
		!(mixedIn(d, m).MostRise(m.Met) <= process.NoRise)
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
		q := st.Num(datum.Of("dissolution_acid", f+"(s)")).As("q")
		if q.Unknown() || !strong(m) {
			q = st.Num(datum.Of("dissolution", f+"(s)")).As("q")
		}
		return r.w.Line("Q", "kJ", "q*min(n,A)", q.V*min(n.V, a.V), q, n, a)
	}
	q := st.Num(datum.Of("dissolution_water", f+"(s)")).As("q")
	if q.Unknown() && e.Sub.Acid > 0 { // bifluoride in water makes its own acid
		q = st.Num(datum.Of("dissolution", f+"(s)")).As("q")
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
