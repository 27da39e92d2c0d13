package air

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// evolved reports what reaches people of each poisonous gas that a step can form: all of
// it within the time in which it forms, unless the place is shut. Where the vapour over a
// liquor is of the same agent, that figure stands.
func (r *reader) evolved() {
	for i := range r.k.Evolved {
		x := &r.k.Evolved[i]
		p := r.place(x.Place)
		if !r.asks(x.Step) || x.Moved || x.Gas == nil || p == nil || p.Closure == route.Closed && p.ClosureStated {
			continue
		}
		in := vapourIn{x.Step, x.Gas.Slug}
		if _, there := r.emitted[in]; there {
			continue
		}
		a := agent{slug: x.Gas.Slug, formula: x.Gas.Formula.Text, acid: true}
		n, t, M := x.N.As("n"), r.forms(x).As("t"), x.Gas.Formula.MolarMass(r.c.Store, r.w).As("M")
		f := r.w.Line("F_n", "mol/s", "n/t", n.V/t.V, n, t).Worse(working.Bound)
		y := f.As("n")
		m := r.w.Line("m", "mg/min", "n*M*60000", y.V*M.V*60000, y, M)
		r.emitted[in] = m
		r.put("air.emission", figure.Step(x.Step), a.slug, figure.Case{}, m, phrase.Of("air.evolved"))
		r.exposure(in, &vapour{agent: a}, f, "air.evolved")
		r.formed = append(r.formed, a)
	}
}

// forms is the time within which a gas forms, s: that of the current, of a melt, of what
// goes in, or that of a pour.
func (r *reader) forms(x *process.Evolved) working.Num {
	s := &r.c.Route.Steps[x.Step-1]
	switch does := s.Verb().Does; {
	case does == route.Conducts && x.Place == s.In:
		return r.c.Given("t", "s", s.Time)
	case r.k.Steps[x.Step-1].Melts && x.Place == s.In:
		return r.c.Store.Num("air.melt")
	case s.Over.Set && r.c.Given("t", "s", s.Over).V > 0:
		return r.c.Given("t", "s", s.Over)
	}
	return r.c.Store.Num("air.pour")
}
