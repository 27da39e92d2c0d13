package course

import (
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Boiling is the boiling point of the liquor of a step at 101.325 kPa. A single
// acid follows its own table. Of a mixture the most volatile acid counts, at
// its strength as charged; at best the salt has taken its part of the strong
// acid. Sulfuric acid and potassium or ammonium liquors are unknown.
func Boiling(c route.Case, w *working.Sheet, d *process.Done) (working.Num, phrase.Phrase) {
	if more := d.Contents().Unsaid(); more != nil {
		return working.Absent("T_b", "degC", more...), phrase.Of("course.received_unknown")
	}
	l := process.AcidsIn(w, d.Contents())
	st := c.Store
	if l.Other != "" || l.Acids == 0 {
		missing := working.Lacks("boiling_with", l.Other)
		if l.Other == "" {
			missing = working.Lacks("boiling_without_acid", "")
		}
		return working.Absent("T_b", "degC", missing), phrase.Of("course.measure_boiling")
	}
	if l.Acids == 1 && !l.Salted {
		model, n, slug := "hf", l.HF, "HF"
		if l.HCl.V != 0 || l.HCl.Unknown() {
			model, n, slug = "hcl", l.HCl, "HCl"
		}
		return solution.BoilingPoint(st, w, model, strength(c, w, slug, n, l.Water)),
			phrase.Of("course.boils_as_charged")
	}
	cond := phrase.Of("course.boils_mixed")
	var t []working.Num
	if l.HCl.V != 0 || l.HCl.Unknown() {
		x := st.Num("boiling.salt_conversion").As("c")
		left := w.Line("n_HCl", "mol", "max(n-c*n_s,0)", max(l.HCl.V-x.V*l.Salt.V, 0), l.HCl.As("n"), x, l.Salt)
		t = append(t, solution.BoilingPoint(st, w, "hcl", strength(c, w, "HCl", left, l.Water)).As("T_1"))
	}
	if l.HF.V != 0 || l.HF.Unknown() {
		t = append(t, solution.BoilingPoint(st, w, "hf", strength(c, w, "HF", l.HF, l.Water)).As("T_2"))
	}
	if len(t) == 0 {
		return working.Absent("T_b", "degC", working.Lacks("boiling_acid_spent", "")),
			phrase.Of("course.measure_boiling")
	}
	if len(t) == 1 {
		return t[0].Worse(working.Bound), cond
	}
	return w.Line("T_b", "degC", "min(T_1,T_2)", min(t[0].V, t[1].V), t...).Worse(working.Bound), cond
}

// strength is the mass fraction of n mol of an acid in its water alone.
func strength(c route.Case, w *working.Sheet, formula string, n, water working.Num) working.Num {
	M, Mw := process.MolarMass(c.Store, w, formula), process.MolarMass(c.Store, w, "H2O").As("M_w")
	x, y := n.As("n"), water.As("n_w")
	return w.Line("w", "1", "n*M/(n*M+n_w*M_w)", x.V*M.V/(x.V*M.V+y.V*Mw.V), x, M, y, Mw)
}
