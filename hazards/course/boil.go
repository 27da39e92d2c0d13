package course

import (
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// liquor is what decides the boiling point of a pool.
type liquor struct {
	hf, hcl, water working.Num // mol as charged
	salt           working.Num // mol of fluoride salt that can take up strong acid
	acids          int
	salted         bool
	other          string // what makes the boiling point unknown
}

func liquorOf(w *working.Sheet, s *process.State) liquor {
	var l liquor
	var hf, hcl, water, salt []working.Num
	for i := range s.Liquid {
		q := &s.Liquid[i]
		for j := range q.Entries {
			e := &q.Entries[j]
			if e.Sub == nil {
				continue
			}
			n := process.PartOf(w, q, e.N)
			switch {
			case e.Sub.Solution == "hf":
				hf = append(hf, n)
			case e.Sub.Solution == "hcl":
				hcl = append(hcl, n)
			case e.Sub.Solution == "water":
				water = append(water, n)
			case e.Sub.Formula.Text == "LiF" || e.Sub.Formula.Text == "NaF":
				salt = append(salt, n)
				l.salted = true
			default:
				l.other = e.Sub.Name
			}
		}
	}
	l.hf, l.hcl = w.Sum("n_HF", "mol", hf...), w.Sum("n_HCl", "mol", hcl...)
	l.water, l.salt = w.Sum("n_w", "mol", water...), w.Sum("n_s", "mol", salt...)
	if len(hf) > 0 {
		l.acids++
	}
	if len(hcl) > 0 {
		l.acids++
	}
	return l
}

// Boiling is the boiling point of the liquor of a step at 101.325 kPa. A single
// acid follows its own table. Of a mixture the most volatile acid counts, at
// its strength as charged; at best the salt has taken its part of the strong
// acid. Sulfuric acid and potassium or ammonium liquors are unknown.
func Boiling(c route.Case, w *working.Sheet, d *process.Done) (working.Num, string) {
	if more := d.Contents().Unsaid(); more != nil {
		return working.Absent("T_b", "degC", more...), "what this place received is not known"
	}
	l := liquorOf(w, d.Contents())
	st := c.Store
	if l.other != "" || l.acids == 0 {
		what := l.other
		if what == "" {
			what = "no acid with a vapour table"
		}
		return working.Absent("T_b", "degC", "boiling point of a liquor with "+what), "measure it, or look for vapour data"
	}
	if l.acids == 1 && !l.salted {
		model, n, slug := "hf", l.hf, "HF"
		if l.hcl.V != 0 || l.hcl.Unknown() {
			model, n, slug = "hcl", l.hcl, "HCl"
		}
		return solution.BoilingPoint(st, w, model, strength(c, w, slug, n, l.water)), "liquor as charged, 101.325 kPa"
	}
	cond := "mixture: the most volatile acid at its strength as charged; a bound"
	var t []working.Num
	if l.hcl.V != 0 || l.hcl.Unknown() {
		x := st.Num("boiling.salt_conversion").As("c")
		left := w.Line("n_HCl", "mol", "max(n-c*n_s,0)", max(l.hcl.V-x.V*l.salt.V, 0), l.hcl.As("n"), x, l.salt)
		t = append(t, solution.BoilingPoint(st, w, "hcl", strength(c, w, "HCl", left, l.water)).As("T_1"))
	}
	if l.hf.V != 0 || l.hf.Unknown() {
		t = append(t, solution.BoilingPoint(st, w, "hf", strength(c, w, "HF", l.hf, l.water)).As("T_2"))
	}
	if len(t) == 0 {
		return working.Absent("T_b", "degC", "boiling point of a liquor with no acid left in it"), "measure it, or look for vapour data"
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
