package solution

import (
	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// Density returns the density in g/mL of a solution of the given mass fraction
// (g/g), at 20 degC or else at 25 degC. Hydrofluoric acid is tabled at 20 degC
// only and read there for both, which is 0.3 % high at 25 degC. A model, or a slug,
// without a table takes the row density.solution.default, which runs over all that
// is physical; outside a table it is unknown.
func Density(st *chemicals.Store, w *working.Sheet, model string, fraction working.Num, at20 bool) working.Num {
	if model == "water" {
		return st.Num("water.density")
	}
	id := "density." + model
	t, ok := st.Table(id)
	if !ok {
		return st.Num("density.solution.default")
	}
	column, other := "25", "20"
	if at20 {
		column, other = other, column
	}
	if _, held := t.Column(column); !held { // a table of one temperature stands for both
		column = other
	}
	return read(st, w, "rho", id, column, fraction, percent)
}

// fractionOf returns the mass fraction of a solution that holds y g of solute
// in a litre at 25 degC: the root of y/1000 = w rho(w), found by halving
// because w rho(w) only rises.
func fractionOf(st *chemicals.Store, w *working.Sheet, model string, y working.Num) working.Num {
	t, ok := st.Table("density." + model)
	if !ok {
		rho := st.Num("density.solution.default")
		return w.Line("w", "g/g", "y/(1000*rho_s)", y.V/(1000*rho.V), y, rho)
	}
	if y.Unknown() {
		return w.Model("w", "g/g", rootName, y.V, y)
	}
	column, ok := t.Column("25")
	if !ok {
		column = 0
	}
	low, high := t.Range()
	excess := func(x float64) float64 {
		rho, _ := t.At(column, x)
		return x/percent*rho - y.V/1000
	}
	if excess(high) < 0 || y.V < 0 {
		return working.Absent("w", "g/g", working.LacksDatum(datum.Of("density", model)))
	}
	for range 60 {
		if mid := (low + high) / 2; excess(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return w.Model("w", "g/g", rootName, (low+high)/2/percent, y)
}

const rootName = "root of y/1000 = w*rho(w)"

// densityModel is the name under which the density of a solution of a substance is
// tabled: of its model, or where it has none of the substance.
func densityModel(s *chemicals.Substance) string {
	if s.Solution == "" {
		return s.Slug
	}
	return s.Solution
}
