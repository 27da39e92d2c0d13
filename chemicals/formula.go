package chemicals

import (
	"strconv"
	"strings"

	"etchbound/chemicals/working"
)

// Formula is a chemical formula as written and what it is made of.
type Formula struct {
	Text   string
	Of     Composition // mol of each element per mol of the formula
	Order  []string    // elements in order of first appearance
	Charge int         // in elementary charges
}

// Count returns the mol of an element per mol of the formula, 0 where it holds
// none of it.
func (f Formula) Count(symbol string) float64 {
	if i, ok := ElementIndex(symbol); ok {
		return f.Of[i]
	}
	return 0
}

// MolarMass returns the molar mass in g/mol under the symbol M, added up on
// the sheet from the atomic weights of the store. It is unknown where the
// weight of one of the elements is. The mass of electrons is left out.
func (f Formula) MolarMass(st *Store, w *working.Sheet) working.Num {
	if len(f.Order) == 0 {
		return working.Absent("M", "g/mol", working.Lacks("formula", ""))
	}
	var room [12]working.Num
	in, mass := room[:0], 0.0
	for _, symbol := range f.Order {
		i := elementIndex[symbol]
		weight := st.weight(i)
		in = append(in, weight)
		mass += f.Of[i] * weight.V
	}
	if w == nil {
		return w.Line("M", "g/mol", "", mass, in...)
	}
	return w.Line("M", "g/mol", f.massFormula(), mass, in...)
}

func (f Formula) massFormula() string {
	var b strings.Builder
	for n, symbol := range f.Order {
		if n > 0 {
			b.WriteByte('+')
		}
		b.WriteString(strconv.FormatFloat(f.Of[elementIndex[symbol]], 'g', -1, 64))
		b.WriteByte('*')
		b.WriteString(symbol)
	}
	return b.String()
}
