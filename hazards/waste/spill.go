package waste

import (
	"math"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/neutralising"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
)

// spilt is the liquor of the route that takes most base, in one place after one step.
type spilt struct {
	step  int
	state *process.State
	base  float64 // mol, central
}

// worstSpill finds it. A liquor of which nobody knows how much base it takes counts as
// the worst; nil is a route without acid.
func (r *reader) worstSpill(k *process.Walk) *spilt {
	var worst *spilt
	look := func(step int, s *process.State) {
		if s == nil {
			return
		}
		b := baseOf(nil, s).V
		if s.Unsaid() != nil {
			b = math.NaN()
		}
		if !(b <= 0) && (worst == nil || !(b <= worst.base) && worst.base == worst.base) {
			worst = &spilt{step, s, b}
		}
	}
	for i := range k.Steps {
		d := &k.Steps[i]
		look(d.Number, d.Contents())
		look(d.Number, &d.After)
		look(d.Number, d.Filled)
	}
	return worst
}

// baseOf is the base that all liquid of a place takes, mol.
func baseOf(w *working.Sheet, s *process.State) working.Num {
	terms := make([]working.Num, len(s.Liquid))
	for i := range s.Liquid {
		terms[i] = process.Total(w, &s.Liquid[i], "B", func(e *process.Entry) float64 { return e.Base })
	}
	return w.Sum("B", "mol", terms...)
}

// spill reports what trained responders have at hand for the worst liquor of the
// route: the agents that bind fluoride, with the excess that a floor takes, and of
// calcium hydroxide the slurry it is put on as.
//
//	m = k B/x M/1000,  V = m (1/rho_s + (1/w - 1)/rho_w)
func (r *reader) spill(k *process.Walk) {
	worst := r.worstSpill(k)
	if worst == nil {
		return
	}
	b := baseOf(r.w, worst.state)
	if more := worst.state.Unsaid(); more != nil {
		b = working.Absent("B", "mol", more...)
	}
	cond := phrase.Of("spill.worst_liquor", worst.step)
	for _, g := range offered() {
		if g.any(neutralising.Brings.Binds) {
			r.put("spill.neutraliser", figure.Spill, g.slug, r.excess(b.As("B"), &g), cond)
			r.slurry(&g, b.As("B"), cond)
		}
	}
}

// excess is the agent with the excess that a floor takes, kg.
func (r *reader) excess(b working.Num, g *agent) working.Num {
	m, f := r.needed(b, g).As("m"), r.c.Store.Num("spill.factor").As("k")
	return r.w.Line("m", "kg", "k*m", f.V*m.V, f, m)
}

// slurry is the volume of an agent without carbonate in water, L: carbonate goes on as
// it is, slowly.
func (r *reader) slurry(g *agent, b working.Num, cond phrase.Phrase) {
	sub := g.parts[0].sub
	if g.any(carbon) || sub.State != "s" {
		return
	}
	m, st := r.excess(b, g).As("m"), r.c.Store
	x, rho := st.Num("spill.slurry").As("w"), st.Num("water.density").As("rho_w")
	solid := st.Num(datum.Of("density", neutralising.Row(sub))).As("rho_s")
	v := r.w.Line("V", "L", "m*(1/rho_s+(1/w-1)/rho_w)", m.V*(1/solid.V+(1/x.V-1)/rho.V), m, solid, x, rho)
	r.put("spill.slurry", figure.Spill, g.slug, v, cond)
}
