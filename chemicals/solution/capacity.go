package solution

import (
	"etchbound/chemicals"
	"etchbound/chemicals/working"
)

// heatCapacity returns the low heat capacity in J/K of a mass (g) of solution
// of the given fraction (g/g). Too low a heat capacity makes a rise too large
// and not too small, so that a solution without one counts as zero, a bound.
func heatCapacity(st *chemicals.Store, w *working.Sheet, model string, mass, fraction working.Num) working.Num {
	m, x := mass.V, fraction.V
	switch model {
	case "water":
		c := st.Num("water.cp")
		return w.Line("C", "J/K", "m*c_w", m*c.V, mass, c)
	case "hf":
		a, b := st.Num("cp.hf_aq.intercept"), st.Num("cp.hf_aq.slope")
		return w.Line("C", "J/K", "m*(a-b*w)", m*(a.V-b.V*x), mass, a, b, fraction)
	case "hcl":
		a, b := st.Num("cp.hcl_aq.intercept"), st.Num("cp.hcl_aq.slope")
		c, f := st.Num("cp.hcl_aq.curve"), st.Num("cp.hcl_aq.low_factor")
		return w.Line("C", "J/K", "m*(a-b*w+c*w*w)*f", m*(a.V-b.V*x+c.V*x*x)*f.V, mass, a, b, c, f, fraction)
	}
	if _, ok := st.Table("cp." + model); !ok {
		return noCapacity()
	}
	c := read(st, w, "c_p", "cp."+model, "25", fraction, percent)
	if c.Unknown() && !fraction.Unknown() {
		return noCapacity()
	}
	return w.Line("C", "J/K", "m*c_p", m*c.V, mass, c)
}

func noCapacity() working.Num {
	return working.Exact("C", "J/K", 0, "no heat capacity held").Worse(working.Bound)
}
