package solution

import (
	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// IntegralHeat returns the heat in kJ released on making a solution of acid
// mol of solute in water mol of water at 25 degC, from the pure substance the
// data count from: HF(l), HCl(g), H2SO4(l), NaOH(s). The heat of mixing two
// solutions is that of the result less those of the two.
//
// It is unknown for other models and for hydrochloric acid beyond 55.5 mol/kg.
// Sodium hydroxide with less than 3 mol of water per mol, and sulfuric acid
// with more than 10000, are bounds.
func IntegralHeat(st *chemicals.Store, w *working.Sheet, model string, acid, water working.Num) working.Num {
	acid, water = acid.As("n"), water.As("n_w")
	if acid.Unknown() || water.Unknown() {
		return w.Model("Q", "kJ", "heat of dissolving what is not known", acid.V*water.V, acid, water)
	}
	if acid.V == 0 || water.V == 0 || model == "water" {
		return w.Sum("Q", "kJ") // nothing is dissolved
	}
	ratio := w.Line("r", "mol/mol", "n_w/n", water.V/acid.V, acid, water)
	var q working.Num
	switch model {
	case "hf":
		q = heatHF(st, w, ratio)
	case "hcl":
		q = heatHCl(st, w, ratio)
	case "h2so4":
		q = heatH2SO4(st, w, ratio)
	case "naoh":
		q = heatNaOH(st, w, ratio)
	default:
		q = working.Absent("q", "kJ/mol", working.LacksDatum(datum.Of("heat_of_solution", model)))
	}
	return w.Line("Q", "kJ", "n*q", acid.V*q.V, acid, q.As("q"))
}

func molality(st *chemicals.Store, w *working.Sheet, ratio working.Num) working.Num {
	b := st.Num("constant.water_moles")
	return w.Line("b", "mol/kg", "b_w/r", b.V/ratio.V, b, ratio)
}

// dilution reads the heat of dilution to infinity; below the first row it goes
// straight to zero, which it is at infinite dilution.
func dilution(st *chemicals.Store, w *working.Sheet, model string, b working.Num) working.Num {
	id := "heat_of_dilution." + model
	t, ok := st.Table(id)
	if !ok {
		return working.Absent("d", "kJ/mol", working.LacksDatum(datum.ID(id)))
	}
	if low, _ := t.Range(); b.V < low {
		v, _ := t.At(0, low)
		return worse(w, w.Table("d", "kJ/mol", id, v*b.V/low, b), working.Estimated)
	}
	return read(st, w, "d", id, "released", b, 1)
}

// strongHF is the molality where the measured heats of dilution end.
const strongHF = 20

func heatHF(st *chemicals.Store, w *working.Sheet, ratio working.Num) working.Num {
	qInf := st.Num("heat_of_solution.hf_l")
	b := molality(st, w, ratio)
	if b.V <= strongHF {
		d := dilution(st, w, "hf", b)
		return w.Line("q", "kJ/mol", "q_inf-d", qInf.V-d.V, qInf, d)
	}
	// Above it, the fit takes over from the last row; only what the fit adds
	// carries the factor, since only that is interpolated.
	end := working.Exact("b_20", "mol/kg", strongHF, "last row of the table")
	d := dilution(st, w, "hf", end)
	bw := st.Num("constant.water_moles")
	r0 := w.Line("r_0", "mol/mol", "b_w/b_20", bw.V/end.V, bw, end)
	a, c, k := st.Num("heat_of_solution.hf_strong.a"), st.Num("heat_of_solution.hf_strong.b"),
		st.Num("factor.heat.hf_strong")
	v := qInf.V - d.V - k.V*(a.V*r0.V/(r0.V+c.V)-a.V*ratio.V/(ratio.V+c.V))
	n := w.Line("q", "kJ/mol", "q_inf-d-k_q*(q_0*r_0/(r_0+b_0)-q_0*r/(r+b_0))", v, qInf, d, k, a, c, r0, ratio)
	return worse(w, n, working.Estimated)
}

func heatHCl(st *chemicals.Store, w *working.Sheet, ratio working.Num) working.Num {
	qInf, k := st.Num("heat_of_solution.hcl_g"), st.Num("factor.heat.hcl")
	d := dilution(st, w, "hcl", molality(st, w, ratio))
	return w.Line("q", "kJ/mol", "q_inf-k_q*d", qInf.V-k.V*d.V, qInf, k, d)
}

func heatH2SO4(st *chemicals.Store, w *working.Sheet, ratio working.Num) working.Num {
	const id = "heat_of_solution.h2so4"
	k := st.Num("factor.heat.h2so4")
	t, ok := st.Table(id)
	if !ok {
		return working.Absent("q", "kJ/mol", working.LacksDatum(datum.ID(id)))
	}
	low, high := t.Range()
	if ratio.V >= low {
		s := clamped(st, w, id, ratio, high, working.Bound)
		return w.Line("q", "kJ/mol", "k_q*q_s", k.V*s.V, k, s)
	}
	// The old closed form, scaled to meet the first row of the table.
	first := working.Exact("r_1", "mol/mol", low, "first row of the table")
	s, b := read(st, w, "q_s", id, "released", first, 1), st.Num("heat_of_solution.h2so4.b")
	v := k.V * s.V * ratio.V * (first.V + b.V) / (first.V * (ratio.V + b.V))
	return w.Line("q", "kJ/mol", "k_q*q_s*r*(r_1+b_0)/(r_1*(r+b_0))", v, k, s, b, first, ratio)
}

// clamped reads a heat of solution, and beyond the last row keeps its value.
func clamped(st *chemicals.Store, w *working.Sheet, id string, ratio working.Num, high float64,
	beyond working.Status) working.Num {
	if ratio.V <= high {
		return read(st, w, "q_s", id, "released", ratio, 1)
	}
	t, _ := st.Table(id)
	v, _ := t.At(0, high)
	return worse(w, w.Table("q_s", "kJ/mol", id, v, ratio), beyond)
}

func heatNaOH(st *chemicals.Store, w *working.Sheet, ratio working.Num) working.Num {
	const id = "heat_of_solution.naoh"
	k := st.Num("factor.heat.naoh")
	t, ok := st.Table(id)
	if !ok {
		return working.Absent("q", "kJ/mol", working.LacksDatum(datum.ID(id)))
	}
	low, high := t.Range()
	if ratio.V >= low {
		s := clamped(st, w, id, ratio, high, working.Estimated)
		return w.Line("q", "kJ/mol", "k_q*q_s", k.V*s.V, k, s)
	}
	// a r/(r+b) through the two lowest rows and the dry solid.
	r1 := working.Exact("r_1", "mol/mol", low, "first row of the table")
	r2 := working.Exact("r_2", "mol/mol", t.X[1], "second row of the table")
	q1 := read(st, w, "q_1", id, "released", r1, 1)
	q2 := read(st, w, "q_2", id, "released", r2, 1)
	b := w.Line("b_0", "", "r_1*r_2*(q_2-q_1)/(r_2*q_1-r_1*q_2)",
		r1.V*r2.V*(q2.V-q1.V)/(r2.V*q1.V-r1.V*q2.V), r1, r2, q1, q2)
	v := k.V * q1.V * ratio.V * (r1.V + b.V) / (r1.V * (ratio.V + b.V))
	n := w.Line("q", "kJ/mol", "k_q*q_1*r*(r_1+b_0)/(r_1*(r+b_0))", v, k, q1, ratio, r1, b)
	return worse(w, n, working.Bound)
}
