package record

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
)

var Columns = []string{"id", "quantity", "place", "agent", "case", "of", "label", "value", "low", "high", "unit",
	"status", "conditions", "line", "missing"}

// CSV writes the figures of a review, one a row: UTF-8 without a byte-order
// mark, comma, LF, a header row, decimal points, an empty cell for what is
// unknown. Text cells cannot start a formula in a spreadsheet.
func CSV(w io.Writer, r hazards.Review) error {
	c := csv.NewWriter(w)
	c.Write(Columns)
	for i := range r.Figures {
		f := &r.Figures[i]
		c.Write([]string{Guard(f.ID.String()), Guard(f.Quantity), Guard(f.Place.String()), Guard(f.Agent),
			Guard(f.Case.String()), Guard(f.Of().String()), Guard(number.LabelOf(f.Quantity)),
			Machine(f.Quantity, f.Value), Machine(f.Quantity, f.Low()), Machine(f.Quantity, f.High()),
			Guard(number.UnitOf(f.Quantity)),
			f.Value.Status.String(), Guard(words.Say(f.Conditions)), strconv.Itoa(f.Value.Line()),
			Guard(strings.Join(words.Names(f.Value.Missing()), " "))})
	}
	c.Flush()
	return c.Error()
}

// Machine is a number for a machine column; empty where it is unknown.
func Machine(quantity string, n working.Num) string {
	if n.Unknown() {
		return ""
	}
	return Shortest(number.Balance(quantity, n.V))
}

func Shortest(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	return strconv.FormatFloat(number.Round9(v), 'g', -1, 64)
}

// Guard keeps a spreadsheet from taking a text for a formula, and folds its
// lines.
func Guard(s string) string {
	s = plain.Fold(plain.Printable(s))
	if s != "" && strings.ContainsRune("=+-@", rune(s[0])) {
		return "'" + s
	}
	return s
}
