package solution

import (
	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// heatCapacity returns the heat capacity in J/K of a mass (g) of solution of the given
// fraction (g/g): the low one of a substance with a line or a table, and an estimate with
// its range of any other. It is unknown where the fraction is, or the substance has no
// formula.
func heatCapacity(st *chemicals.Store, w *working.Sheet, sub *chemicals.Substance, name string, mass,
	fraction working.Num) working.Num {
	m, x := mass.V, fraction.V
	switch sub.Solution {
	case "water":
		c := st.Num("water.cp")
		return w.Line("C", "J/K", "m*c_w", m*c.V, mass, c)
	case "hf":
		a, b, s := st.Num("cp.hf_aq.intercept"), st.Num("cp.hf_aq.slope"), st.Num("cp.hf_aq.steepest")
		return w.Line("C", "J/K", "m*(a-max(b,b_s)*w)", m*(a.V-max(b.V, s.V)*x), mass, a, b, s, fraction)
	case "hcl":
		a, b := st.Num("cp.hcl_aq.intercept"), st.Num("cp.hcl_aq.slope")
		c, f := st.Num("cp.hcl_aq.curve"), st.Num("cp.hcl_aq.low_factor")
		return w.Line("C", "J/K", "m*(a-b*w+c*w*w)*f", m*(a.V-b.V*x+c.V*x*x)*f.V, mass, a, b, c, f, fraction)
	}
	if _, ok := st.Table("cp." + sub.Solution); ok {
		c := read(st, w, "c_p", "cp."+sub.Solution, "25", fraction, percent)
		if !c.Unknown() {
			return w.Line("C", "J/K", "m*c_p", m*c.V, mass, c)
		}
	}
	return unmixed(st, w, sub, name, mass, fraction)
}

// unmixed estimates the heat capacity of a solution that no table is held of: that of its
// water and of its solute as a solid by Kopp's rule, times the share of both that the
// solutions of the tables have.
func unmixed(st *chemicals.Store, w *working.Sheet, sub *chemicals.Substance, name string, mass,
	fraction working.Num) working.Num {
	rule, molar := sub.Formula.KoppHeat(st, w), sub.Formula.MolarMass(st, w)
	if rule.Unknown() || fraction.Unknown() {
		return noCapacity(name)
	}
	f, c := st.Num("cp.kopp.solution"), st.Num("water.cp")
	m, x := mass.V, fraction.V
	return w.Line("C", "J/K", "m*f_a*((1-w)*c_w+w*cp_K/M)", m*f.V*((1-x)*c.V+x*rule.V/molar.V), mass, f, fraction, c,
		rule, molar).Worse(working.Estimated)
}

// undilutedHeat is the heat capacity of an amount (mol) of a pure liquid or solid: of its
// row, or else by Kopp's rule.
func undilutedHeat(st *chemicals.Store, w *working.Sheet, sub *chemicals.Substance, n working.Num) working.Num {
	cp := st.Num(datum.Of("cp", sub.Formula.Text+"("+sub.State+")")).As("Cp")
	switch {
	case !cp.Unknown():
	case sub.State == "s":
		cp = sub.Formula.SolidHeat(st, w).As("Cp")
	case sub.State == "l":
		rule, f := sub.Formula.KoppHeat(st, w), st.Num("cp.kopp.liquid")
		cp = w.Line("Cp", "J/mol/K", "f_l*cp_K", f.V*rule.V, f, rule).Worse(working.Estimated)
	}
	if cp.Unknown() {
		return noCapacity(sub.Name)
	}
	return w.Line("C", "J/K", "n*Cp", n.V*cp.V, n, cp)
}

func noCapacity(name string) working.Num {
	return working.Absent("C", "J/K", working.Lacks("heat_capacity", name))
}
