package solution

import (
	"etchbound/chemicals"
	"etchbound/chemicals/working"
)

// heatCapacity returns the low heat capacity in J/K of a mass (g) of solution
// of the given fraction (g/g). A solution without one is most of what it is
// charged to, so that nothing can be said of how warm that gets: it is unknown,
// and lacks what names it.
func heatCapacity(st *chemicals.Store, w *working.Sheet, model, name string, mass, fraction working.Num) working.Num {
	m, x := mass.V, fraction.V
	switch model {
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
	if _, ok := st.Table("cp." + model); !ok {
		return noCapacity(name)
	}
	c := read(st, w, "c_p", "cp."+model, "25", fraction, percent)
	if c.Unknown() && !fraction.Unknown() {
		return noCapacity(name)
	}
	return w.Line("C", "J/K", "m*c_p", m*c.V, mass, c)
}

func noCapacity(name string) working.Num {
	return working.Absent("C", "J/K", working.Lacks("heat_capacity", name))
}

// leftOut is the heat capacity of a solid that no row is held of. It adds
// nothing to that of the liquid it goes into, which is a bound.
func leftOut() working.Num {
	return working.Exact("C", "J/K", 0, "no heat capacity held").Worse(working.Bound)
}
