package handling

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// grain is one solid of a place that has not met acid.
type grain struct {
	formula chemicals.Formula
	n, m    working.Num // mol, g
}

// grains are the solids of a place, of the powder and of what was put in as a solid. What the
// data do not hold counts as one of which nothing is known.
func (r *reader) grains(s *process.State) []grain {
	var out []grain
	for i := range s.Liquid {
		q := &s.Liquid[i]
		for j := range q.Entries {
			e := &q.Entries[j]
			switch {
			case e.Sub == nil || !e.Sub.NotHeld && e.Sub.State != "s":
			case e.Sub.NotHeld:
				lacks := e.Sub.Lacks()
				out = append(out, grain{n: working.Absent("n", "mol", lacks), m: working.Absent("m", "g", lacks)})
			default:
				n, M := process.PartOf(r.w, q, e.N).As("n"), e.Sub.Formula.MolarMass(r.c.Store, r.w).As("M")
				out = append(out, grain{e.Sub.Formula, n, r.w.Line("m", "g", "n*M", n.V*M.V, n, M)})
			}
		}
	}
	for i := range s.Solids {
		if x := &s.Solids[i]; !x.Mass.None() {
			f, _ := chemicals.ParseFormula(x.Formula)
			out = append(out, grain{f, x.N.As("n"), x.Mass.As("m")})
		}
	}
	return out
}

// before tells of the steps that make the powder: what dust there is, and the heat of what
// is sintered.
func (r *reader) before(d *process.Done, s *route.Step) {
	tag := s.Verb().Tag
	if tag != "sinter" && tag != "mill" && tag != "sieve" {
		return
	}
	at, all := figure.Step(d.Number), r.grains(&d.After)
	var mass, heat []working.Num
	for _, g := range all {
		mass, heat = append(mass, g.m), append(heat, r.burns(r.num(datum.Of("burn.powder", g.formula.Text), "q"), g.m))
	}
	if len(all) == 0 {
		return
	}
	r.dry(at, r.w.Sum("m", "g", mass...), r.w.Sum("Q", "kJ", heat...), phrase.Of("handling.grains"))
	if tag == "sinter" {
		q := r.sintered(all)
		r.put("sinter.heat", at, "", q, phrase.Of("handling.sintered"))
		C := d.After.HeatCapacity(r.w).As("C")
		r.put("sinter.rise", at, "", r.w.Line("y", "K", "Q*1000/C", q.V*1000/C.V, q.As("Q"), C).Worse(working.Bound),
			phrase.Of("handling.sintered_rise"))
	}
}

// sintered is what is released as all of the phase of the route that the charge has the
// elements for forms at once. Of a compound no more is taken apart than the phase takes.
func (r *reader) sintered(all []grain) working.Num {
	l := r.k.Layered
	if l == nil {
		return working.Absent("Q", "kJ", working.Lacks("storage_phase", ""))
	}
	made := r.most(all, l.Formula)
	H := r.num(datum.Of("enthalpy", l.Formula.Text+"(s)"), "H")
	terms := []working.Num{r.w.Line("Q", "kJ", "-n*H", -made.V*H.V, made.As("n"), H)}
	for _, g := range all {
		h := r.num(datum.Of("enthalpy", g.formula.Text+"(s)"), "H")
		n := g.n
		for _, symbol := range g.formula.Order {
			x := working.Exact("x", "1", l.Formula.Count(symbol)/g.formula.Count(symbol), "mol that one of the phase takes")
			if x.V*made.V < n.V || made.Unknown() {
				n = r.w.Line("n", "mol", "n*x", made.V*x.V, made.As("n"), x)
			}
		}
		terms = append(terms, r.w.Line("Q", "kJ", "n*H", n.V*h.V, n.As("n"), h))
	}
	return r.w.Sum("Q", "kJ", terms...)
}

// most is the phase that a charge has the elements for, mol.
func (r *reader) most(all []grain, of chemicals.Formula) working.Num {
	least := working.Num{}
	for _, symbol := range of.Order {
		var terms []working.Num
		for _, g := range all {
			x := working.Exact("x", "1", g.formula.Count(symbol), symbol+" per formula unit")
			if x.V > 0 || g.n.Unknown() {
				terms = append(terms, r.w.Line("n", "mol", "n*x", g.n.V*x.V, g.n.As("n"), x))
			}
		}
		sum, x := r.w.Sum("n", "mol", terms...), working.Exact("x", "1", of.Count(symbol), symbol+" per formula unit")
		n := r.w.Line("n", "mol", "n/x", sum.V/x.V, sum.As("n"), x)
		if least.None() || n.Unknown() || !least.Unknown() && n.V < least.V && !math.IsNaN(n.V) {
			least = n
		}
	}
	return least
}
