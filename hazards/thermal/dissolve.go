package thermal

import (
	"etchbound/chemicals/datum"
	"etchbound/chemicals/etching"
	"etchbound/chemicals/working"
	"etchbound/hazards/process"
)

// dissolution is the greatest heat over the product states listed for titanium
// phases, each as far as the acid offered allows, and never less than the etch
// itself, with the heat of the impurities on top:
//
//	TiF3(s):   phase + (3 Ti + 3 Al) HF -> Ti TiF3 + Al AlF3(aq) + C + H2
//	TiF6(2-):  phase + (6 Ti + 3 Al) HF -> Ti (TiF6(2-) + 2 H+) + Al AlF3(aq) + C + H2
func (r *reader) dissolution(e *process.Etch) working.Num {
	l, st := r.k.Layered, r.c.Store
	var ti, al float64
	for _, p := range append(append([]etching.Part(nil), l.M...), l.A...) {
		switch p.Symbol {
		case "Ti":
			ti = p.Count
		case "Al":
			al = p.Count
		default:
			return working.Absent("Q", "kJ", working.Lacks("dissolved_fluorides", p.Symbol))
		}
	}
	for _, p := range l.X {
		if p.Symbol != "C" {
			return working.Absent("Q", "kJ", working.Lacks("light_element", p.Symbol+" of "+l.Formula.Text))
		}
	}
	phase := st.Num(datum.Of("enthalpy", l.Formula.Text+"(s)")).As("H_ph")
	hf, alf := st.Num("enthalpy.HF(aq)").As("H_HF"), st.Num("enthalpy.AlF3(aq)").As("H_Al")
	a, b := working.Exact("a", "mol/mol", ti, "Ti per formula unit"),
		working.Exact("b", "mol/mol", al, "Al per formula unit")
	n, A := e.N.As("n"), e.AcidBefore.As("A")
	state := func(id datum.ID, perTi float64, why string) working.Num {
		s, y := st.Num(id).As("H_s"), working.Exact("y", "mol/mol", perTi, why)
		q := r.w.Line("q", "kJ/mol", "H_ph+(y*a+3*b)*H_HF-a*H_s-b*H_Al",
			phase.V+(y.V*a.V+3*b.V)*hf.V-a.V*s.V-b.V*alf.V, phase, hf, s, alf, a, b, y)
		return r.w.Line("Q", "kJ", "q*min(n,A/(y*a+3*b))", q.V*min(n.V, A.V/(y.V*a.V+3*b.V)), q, n, A, y, a, b)
	}
	solid := state("enthalpy.TiF3(s)", 3, "HF per Ti to TiF3").As("Q_s")
	ion := state("enthalpy.TiF6(2-)(aq)", 6, "HF per Ti to TiF6(2-)").As("Q_i")
	own, rest := e.Heat.As("Q_e"), r.impurities(e).As("Q_f")
	return r.w.Line("Q", "kJ", "max(Q_s,Q_i,Q_e)+Q_f", max(solid.V, ion.V, own.V)+rest.V, solid, ion, own,
		rest).Worse(working.Bound)
}

// impurities is the heat of the foreign solids alone, in kJ.
func (r *reader) impurities(e *process.Etch) working.Num {
	terms := make([]working.Num, len(e.Dissolved))
	for i := range e.Dissolved {
		terms[i] = e.Dissolved[i].Heat
	}
	return r.w.Sum("Q", "kJ", terms...)
}
