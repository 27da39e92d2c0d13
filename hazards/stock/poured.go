package stock

import (
	"etchbound/chemicals"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Poured is one material of one step. Mol is all of it over all cycles; PerPhase is mol
// per mol of layered phase. WT in wt% and Molar in mol/L are the strength of a solution as
// it is poured; without a symbol where what goes in is no solution.
type Poured struct {
	Step          int
	Of            *route.Material
	Mol, PerPhase working.Num
	WT, Molar     working.Num
}

// PouredIn is every material of a step, water among them.
func PouredIn(c *route.Case, k *process.Walk, figs *figure.Set, s *route.Step) []Poured {
	var out []Poured
	var w *working.Sheet
	n := cycles(s, figs)
	t := taker{c, k, figs, s, nil, map[*chemicals.Substance]int{}}
	for j := range s.What {
		m := &s.What[j]
		p := Poured{Step: s.Number, Of: m}
		switch {
		case m.Precursor && k.Powder != nil:
			p.Mol = k.Powder.N
		case m.Substance == nil || m.Substance.NotHeld:
			p.Mol = working.Absent("n", "mol", working.Lacks("formula", nameOf(m)))
		default:
			t.m = m
			mid := t.weigh().mid
			one := molOf(c, m, mid)
			p.Mol = w.Line("n", "mol", "n*N", one.V*n.V, one.As("n"), n.As("N"))
			p.WT, p.Molar = bothOf(c, m)
		}
		if q := k.Powder; q != nil {
			p.PerPhase = w.Line("x", "mol/mol", "n/p", p.Mol.V/q.N.V, p.Mol.As("n"), q.N.As("p"))
		}
		out = append(out, p)
	}
	return out
}

func nameOf(m *route.Material) string {
	if m.Substance == nil {
		return "precursor"
	}
	return m.Substance.Name
}

func molOf(c *route.Case, m *route.Material, x weighed) working.Num {
	var w *working.Sheet
	kg, molar := x.pure, m.Substance.Formula.MolarMass(c.Store, nil)
	if m.Substance.Solution == "water" {
		kg = x.whole
	}
	return w.Line("n", "mol", "1000*m/M", 1000*kg.V/molar.V, kg.As("m"), molar.As("M"))
}

// bothOf is the strength of a solution in both units, of one litre of it.
func bothOf(c *route.Case, m *route.Material) (wt, molar working.Num) {
	dissolved := m.Substance.State == "s" && !m.Volume.Set && !m.Mass.Set
	if !m.Strength.Set || dissolved || m.Substance.Solution == "water" {
		return
	}
	var w *working.Sheet
	litre := working.Exact("V", "mL", 1000, "one litre")
	ch := solution.Charged(c.Store, nil, m.Substance, m.Strength, litre, working.Num{})
	wt = w.Line("w", "wt%", "100*w", 100*ch.Fraction.V, ch.Fraction.As("w"))
	return wt, w.Line("c", "mol/L", "n", ch.Solute.V, ch.Solute.As("n"))
}
