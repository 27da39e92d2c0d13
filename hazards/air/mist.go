package air

import (
	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// mist reports the acid that gas throws up as drops where it bubbles out of a liquor, and
// what of it a person breathes: so much liquor a litre of gas, at the largest flow.
//
//	n = e F Vm N/V         [mol/s: mL/L, mol/s, L/mol, mol, mL]
//
// What is shut keeps it, and what base has neutralised is no acid. What a sonicator throws up
// is not known, unless it is said to be a bath.
func (r *reader) mist() {
	for i := range r.k.Steps {
		d := &r.k.Steps[i]
		p, s := r.place(d.Place), d.Contents()
		if !r.asks(d.Number) || p == nil || p.Closure == route.Closed && p.ClosureStated || len(s.Liquid) == 0 {
			continue
		}
		gas := r.bubbles(d.Number)
		if r.c.Route.Throws(&r.c.Route.Steps[i]) {
			gas = working.Absent("F_n", "mol/s", working.Lacks("sonicator_drops", "").In(d.Number))
		}
		if !gas.None() {
			r.spray(d.Number, s, gas)
		}
	}
}

// bubbles is the largest flow of hydrogen and carbon dioxide out of a liquor in a step,
// mol/s; nothing where there is none.
func (r *reader) bubbles(step int) working.Num {
	var parts []working.Num
	if g := r.rising(step, bothElectrodes); !g.None() {
		parts = append(parts, g)
	}
	for i := range r.k.Releases {
		x := &r.k.Releases[i]
		if x.Step != step || x.Gas != "CO2" {
			continue
		}
		n, t := x.N.As("n"), r.c.Store.Num("air.pour").As("t")
		if s := &r.c.Route.Steps[step-1]; s.Over.Set && r.c.Given("t", "s", s.Over).V > 0 {
			t = r.c.Given("t", "s", s.Over)
		}
		parts = append(parts, r.w.Line("F_n", "mol/s", "n/t", n.V/t.V, n, t))
	}
	if parts == nil {
		return working.Num{}
	}
	return r.w.Sum("F_n", "mol/s", parts...)
}

// droplets are an acid in the drops of a step, mol/s, the gas that throws them up, mol/s, and
// what a person near breathes, ppm.
type droplets struct{ leaves, gas, breathed working.Num }

// spray reports each acid of a liquor out of which so much gas bubbles. It counts with its
// vapour in what a person breathes on average, with what acts like it, and in a scrubber.
func (r *reader) spray(step int, s *process.State, gas working.Num) {
	l := process.AcidsIn(r.w, s)
	if l.Neutral {
		return
	}
	for _, a := range r.acidsOf(s, &l) {
		e, f, v, n := r.c.Store.Num("air.mist").As("e"), gas.As("F_n"), s.Volume(r.w).As("V"), a.n.As("N")
		if more := s.Unsaid(); more != nil {
			n = working.Absent("N", "mol", more...)
		}
		x := r.w.Line("n_d", "mol/s", "e*F_n*Vm*N/V", e.V*f.V*r.vm.V*n.V/v.V, e, f, r.vm, n, v)
		M := a.mass.As("M")
		kase := figure.By(figure.Mist)
		r.put("air.mist", figure.Step(step), a.slug, figure.Case{}, r.w.Line("m", "mg/min", "n_d*M*60000",
			x.V*M.V*60000, x, M), phrase.Of("air.mist"))
		c, near := r.near(x)
		r.put("air.breathing_zone", figure.Step(step), a.slug, kase, c, phrase.Of(near, phrase.Of("air.mist")))
		m := droplets{x, gas, c.As("C_m")}
		r.drops[vapourIn{step, a.slug}] = m
		for _, kase.Over = range r.windows(a.slug) {
			r.put("air.breathing_zone", figure.Step(step), a.slug, kase, r.meanOf(step, &m, kase.Over),
				phrase.Of(near, phrase.Of("air.mist_mean")))
		}
		r.formed = append(r.formed, agent{slug: a.slug, acid: true})
		if l, e := r.strictest(a.slug); e != nil {
			y := c.As("C")
			r.parts[step] = append(r.parts[step], r.w.Line("C_L", "1", "C/L", y.V/l.V, y, l))
		}
	}
}

// meanOf is the most that the drops of a step come to on average over a time in min, ppm: at
// their most for as long as all its gas would take at its largest flow.
//
//	C_t = C min(1, t f/t_w)     [ppm: min, 1, min]
func (r *reader) meanOf(step int, m *droplets, window float64) working.Num {
	s := &r.c.Route.Steps[step-1]
	t, c, w := r.c.Lasts(r.w, s).As("t"), m.breathed.As("C"), working.Exact("t_w", "min", window,
		"time the limit is averaged over")
	if t.Unknown() {
		return c
	}
	f := r.bubbling(step, m, r.lasts(s)).As("f")
	return r.w.Line("C_t", "ppm", "C*min(1,t*f/t_w)", c.V*min(1, t.V*f.V/w.V), c, t, f, w)
}

// sour is an acid of a liquor, mol.
type sour struct {
	slug string
	n    working.Num
	mass working.Num // g/mol
}

// acidsOf are the acids of a liquor: all fluoride as HF, and each other one.
func (r *reader) acidsOf(s *process.State, l *process.Acids) []sour {
	var out []sour
	if l.Fluorine {
		out = append(out, sour{"hf", l.Fluoride, r.molar("HF")})
	}
	if l.Chloride {
		out = append(out, sour{"hcl", l.HCl, r.molar("HCl")})
	}
	for i := range s.Liquid {
		q := &s.Liquid[i]
		for j := range q.Entries {
			e := &q.Entries[j]
			if e.Sub != nil && e.Sub.NotHeld {
				out = r.mayBe(out, e.Sub)
				continue
			}
			if e.Sub == nil || !(e.Sub.Acid > 0) || e.Sub.Kind != "acid" ||
				e.Sub.Formula.Count("F") > 0 || e.Sub.Slug == "hcl" {
				continue
			}
			n := process.PartOf(r.w, q, e.N)
			at := indexOf(out, e.Sub.Slug)
			if at < 0 {
				out = append(out, sour{e.Sub.Slug, n, e.Sub.Formula.MolarMass(r.c.Store, r.w)})
				continue
			}
			out[at].n = r.w.Sum("N", "mol", out[at].n, n)
		}
	}
	return out
}

// mayBe adds the acids that something that is not held may be, of which limits are held.
func (r *reader) mayBe(out []sour, x *chemicals.Substance) []sour {
	for _, s := range chemicals.Library().All() {
		if s.Kind != "acid" || !(s.Acid > 0) || indexOf(out, s.Slug) >= 0 || limit.ExposureAt(s.Slug, "") == nil {
			continue
		}
		may := true
		for _, e := range s.Formula.Order {
			may = may && x.May(e)
		}
		if may {
			out = append(out, sour{s.Slug, working.Absent("N", "mol", x.Lacks()), s.Formula.MolarMass(r.c.Store, r.w)})
		}
	}
	return out
}

func indexOf(all []sour, slug string) int {
	for i := range all {
		if all[i].slug == slug {
			return i
		}
	}
	return -1
}

// near is what a person breathes of n mol/s near their source, ppm, and the key of what is
// said of it.
func (r *reader) near(n working.Num) (working.Num, string) {
	share, says := r.leak()
	q, b, s, x := r.exchange(), r.c.Store.Num("air.near").As("B"), share.As("s"), n.As("n")
	return r.w.Line("C", "ppm", "1e6*s*n*Vm/1000*(3600/Q+60/B)", 1e6*s.V*x.V*r.vm.V/1000*(3600/q.V+60/b.V), s, x,
		r.vm, q, b), says
}
