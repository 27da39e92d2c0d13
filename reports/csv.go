package reports

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
	"etchbound/schemas/quantity"
)

var figureColumns = []string{"id", "quantity", "place", "agent", "case", "of", "label", "value", "low", "high", "unit",
	"status", "conditions", "line", "missing"}

// CSV writes the figures of a review, one a row: UTF-8 without a byte-order
// mark, comma, LF, a header row, decimal points, an empty cell for what is
// unknown. Text cells cannot start a formula in a spreadsheet.
func CSV(w io.Writer, r hazards.Review) error {
	c := csv.NewWriter(w)
	c.Write(figureColumns)
	for i := range r.Figures {
		f := &r.Figures[i]
		c.Write([]string{guard(f.ID.String()), guard(f.Quantity), guard(f.Place.String()), guard(f.Agent),
			guard(f.Case.String()), guard(f.Of().String()), guard(number.LabelOf(f.Quantity)),
			machine(f.Quantity, f.Value), machine(f.Quantity, f.Low()), machine(f.Quantity, f.High()),
			guard(number.UnitOf(f.Quantity)),
			f.Value.Status.String(), guard(words.Say(f.Conditions)), strconv.Itoa(f.Value.Line()),
			guard(strings.Join(words.Names(f.Value.Missing()), " "))})
	}
	c.Flush()
	return c.Error()
}

func firstSet(values ...quantity.Value) quantity.Value {
	for _, v := range values {
		if v.Set {
			return v
		}
	}
	return quantity.Value{}
}

func bare(v quantity.Value) string {
	if !v.Set {
		return ""
	}
	return shortest(v.In(v.Unit()))
}

func unitWritten(v quantity.Value) string {
	if !v.Set {
		return ""
	}
	return v.Unit()
}

// machine is a number for a machine column; empty where it is unknown.
func machine(quantity string, n working.Num) string {
	if n.Unknown() {
		return ""
	}
	return shortest(number.Balance(quantity, n.V))
}

func shortest(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	return strconv.FormatFloat(number.Round9(v), 'g', -1, 64)
}

// guard keeps a spreadsheet from taking a text for a formula, and folds its
// lines.
func guard(s string) string {
	s = plain.Fold(plain.Printable(s))
	if s != "" && strings.ContainsRune("=+-@", rune(s[0])) {
		return "'" + s
	}
	return s
}
