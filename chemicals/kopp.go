package chemicals

import (
	"strconv"
	"strings"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// SolidHeat is the heat capacity of a solid of which no row is held, in J/mol/K near
// 25 degC: by Kopp's rule, times the share of it that solids of the table have. It is an
// estimate with the range of that share, and unknown of a formula without atoms.
func (f Formula) SolidHeat(st *Store, w *working.Sheet) working.Num {
	rule, share := f.KoppHeat(st, w), st.Num("cp.kopp")
	return w.Line("cp", "J/mol/K", "f_K*cp_K", share.V*rule.V, share, rule).Worse(working.Estimated)
}

// KoppHeat is the sum over the atoms of a solid by Kopp's rule, in J/mol/K near 25 degC,
// as the rule has it. It is unknown of a formula without atoms.
func (f Formula) KoppHeat(st *Store, w *working.Sheet) working.Num {
	if len(f.Order) == 0 {
		return working.Absent("cp_K", "J/mol/K", working.Lacks("formula", ""))
	}
	atoms := f.atoms()
	in, sum := make([]working.Num, 0, len(atoms)), 0.0
	for _, a := range atoms {
		c := st.Num(datum.Of("cp.atom", a.kind))
		in, sum = append(in, c), sum+a.n*c.V
	}
	return w.Line("cp_K", "J/mol/K", koppFormula(w, atoms, in), sum, in...)
}

// alike are the atoms of a formula that count alike by Kopp's rule.
type alike struct {
	kind string // the end of the id of their datum
	n    float64
}

// ofTheirOwn are the elements that have a number of their own in Kopp's rule.
const ofTheirOwn = " C H B Si O F P S "

// atoms are those of a formula, in its order.
func (f Formula) atoms() []alike {
	var out []alike
	for _, symbol := range f.Order {
		kind, n := symbol, f.Of[elementIndex[symbol]]
		if !strings.Contains(ofTheirOwn, " "+symbol+" ") {
			kind = "other"
		}
		at := len(out)
		for i := range out {
			if out[i].kind == kind {
				at = i
			}
		}
		if at == len(out) {
			out = append(out, alike{kind: kind})
		}
		out[at].n += n
	}
	return out
}

// koppFormula is nothing where nobody reads it.
func koppFormula(w *working.Sheet, atoms []alike, in []working.Num) string {
	if w == nil {
		return ""
	}
	var b strings.Builder
	for i := range atoms {
		if i > 0 {
			b.WriteByte('+')
		}
		b.WriteString(strconv.FormatFloat(atoms[i].n, 'g', -1, 64) + "*" + in[i].Symbol)
	}
	return b.String()
}
