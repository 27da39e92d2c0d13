package number

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/reports/digits"
	"etchbound/reports/words"
)

// Round9 is v to nine significant digits, the precision of the JSON review.
func Round9(v float64) float64 { return digits.Round9(v) }

// Nearest prints v with at most some significant digits.
func Nearest(v float64, most int) string { return Significant(v, most, 0) }

// Significant prints v with at most some significant digits: to the nearest for way 0,
// never below v for way 1, never above v for way -1.
func Significant(v float64, most, way int) string {
	if !digits.Is(v) {
		return words.Of("value.unknown")
	}
	return digits.Significant(v, most, way)
}

// Measure is v with its unit as it stands, and without one where it is unknown.
func Measure(v float64, most int, unit string) string {
	if !digits.Is(v) {
		return words.Of("value.unknown")
	}
	return With(Nearest(v, most), unit)
}

// Said is Measure as a table for people has it: what is too small to be read is less than
// that, and no power of ten.
func Said(v float64, most int, unit string) string {
	if v != 0 && math.Abs(v) < least {
		return words.Of("number.less", With(digits.Readable(least, -1), unit))
	}
	return Measure(v, most, unit)
}

// Percent is a share of a whole as people say it, to some digits: in percent, and of more than
// ten wholes how many times it is.
func Percent(share float64, most, way int) string {
	if share > 10 {
		return words.Of("number.times", Significant(share, most, way))
	}
	if x := 100 * share; x != 0 && math.Abs(x) < least {
		return Said(x, most, "%")
	}
	return With(Significant(100*share, most, way), "%")
}

// DigitsOf is the number of significant digits of a quantity in a report at most.
func DigitsOf(quantity string) int {
	if q, ok := figure.Lookup(quantity); ok && q.Digits > 0 {
		return q.Digits
	}
	return fine
}

// UnitOf is the catalogue's unit of a quantity.
func UnitOf(quantity string) string {
	q, _ := figure.Lookup(quantity)
	return q.Unit
}

// LabelOf is the catalogue's label of a quantity.
func LabelOf(quantity string) string {
	if q, ok := figure.Lookup(quantity); ok {
		return q.Label
	}
	return quantity
}

// Balance is a figure's number as printed: what remains of a balance that
// closes is rounding of the machine and prints as 0.
func Balance(quantity string, v float64) float64 {
	if quantity == "account.error" && math.Abs(v) < 1e-12 {
		return 0
	}
	return v
}

// Never reports whether a time stands for one that is not reached.
func Never(quantity string, v float64) bool { return Units{}.Of(quantity, "").never(v) }

// StatusText is the printed word of a status.
func StatusText(s working.Status) string { return words.Of("status." + s.String()) }
