package scaling

import (
	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards"
)

// FormedHF is how many mol a mass of hydrogen fluoride in g is, and how many for each mol of
// the layered phase; the second without a symbol where a route has no powder.
//
//	n = m/M    x = n/p
func FormedHF(r *hazards.Review, grams working.Num) (n, per working.Num) {
	hf, held := chemicals.Library().Find("hf")
	if !held || r.Case.Store == nil {
		return working.Absent("n", "mol", working.Lacks("formula", "hf")), working.Num{}
	}
	var w *working.Sheet
	m, M := grams.As("m"), hf.Formula.MolarMass(r.Case.Store, nil).As("M")
	n = w.Line("n", "mol", "m/M", m.V/M.V, m, M)
	if q := r.Walk.Powder; q != nil {
		per = w.Line("x", "mol/mol", "n/p", n.V/q.N.V, n, q.N.As("p"))
	}
	return n, per
}
