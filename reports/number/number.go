// Package number knows how a figure is put to a reader: its digits and unit, its range
// rounded outward, its name and its status. It must not know where the figure stands
// on a page, nor what it is held against.
package number

import (
	"math"
	"strconv"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/reports/words"
)

// Round9 is v to nine significant digits, the precision of the JSON review.
func Round9(v float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 9, 64), 64)
	if err != nil || r == 0 {
		return 0
	}
	return r
}

// Nearest prints v with at most digits significant digits.
func Nearest(v float64, digits int) string { return Significant(v, digits, 0) }

// Significant prints v with at most digits significant digits: to the nearest
// for way 0, never below v for way 1, never above v for way -1. Noise beyond
// the ninth digit does not count, so that a computed 69.3 stays 69.3.
func Significant(v float64, digits, way int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return words.Of("value.unknown")
	}
	v = Round9(v)
	if v == 0 {
		return "0"
	}
	e := strconv.FormatFloat(v, 'e', -1, 64)
	mantissa, _, _ := strings.Cut(strings.TrimPrefix(e, "-"), "e")
	if len(strings.Replace(mantissa, ".", "", 1)) <= digits {
		return plain(v, -1)
	}
	r := towards(v, digits, way)
	return plain(r, digits)
}

// towards rounds v to digits significant digits in the direction of way.
func towards(v float64, digits, way int) float64 {
	r, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'e', digits-1, 64), 64)
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-float64(digits-1))
	if way > 0 && r < v {
		r += step
	}
	if way < 0 && r > v {
		r -= step
	}
	return r
}

// plain prints v without an exponent where that can be read, with digits
// significant digits or, for -1, as many as it has.
func plain(v float64, digits int) string {
	if v == 0 {
		return "0"
	}
	if a := math.Abs(v); a >= 1e7 || a < 1e-4 {
		return strconv.FormatFloat(v, 'e', max(digits-1, -1), 64)
	}
	if digits < 0 {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	// The exponent is that of the rounded number: 9.996 to three digits is 10.0.
	s := strconv.FormatFloat(v, 'e', digits-1, 64)
	exp, _ := strconv.Atoi(s[strings.IndexByte(s, 'e')+1:])
	return strconv.FormatFloat(v, 'f', max(digits-1-exp, 0), 64)
}

// UnitText is a unit as it is printed after a number.
func UnitText(unit string) string {
	switch unit {
	case "", "1":
		return ""
	case "degC":
		return "°C"
	case "m3/h":
		return "m³/h"
	case "m3":
		return "m³"
	case "m2":
		return "m²"
	}
	return unit
}

// With joins a number and its unit.
func With(number, unit string) string {
	if u := UnitText(unit); u != "" {
		return number + " " + u
	}
	return number
}

// Measure is v with its unit, and without one where it is unknown.
func Measure(v float64, digits int, unit string) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return words.Of("value.unknown")
	}
	return With(Nearest(v, digits), unit)
}

// DigitsOf is the number of significant digits of a quantity in a report.
func DigitsOf(quantity string) int {
	if q, ok := figure.Lookup(quantity); ok && q.Digits > 0 {
		return q.Digits
	}
	return 3
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

// ValueText is the central value of a figure with its unit.
func ValueText(f *figure.Figure) string {
	if f.Value.Unknown() {
		return words.Of("value.unknown")
	}
	u := reading(f)
	return u.With(f.Quantity, f.Value.V, 0)
}

// unit is how a quantity is read: a time in minutes as hours or days where it is long.
type unit struct {
	Name string
	Per  float64 // of the unit of the catalogue
}

// longTimes are the units of long times, the longest first, each from how many minutes
// on it is read.
var longTimes = []struct {
	from float64
	unit
}{{2 * 1440, unit{"d", 1440}}, {120, unit{"h", 60}}}

// reading is the unit in which a figure is read, by its low end, so that minutes stay
// minutes where there may be no more than that.
func reading(f *figure.Figure) unit {
	v := f.Low().V
	if f.Low().Unknown() {
		v = f.Value.V
	}
	return UnitFor(f.Quantity, v)
}

// UnitFor is the unit in which a value of a quantity is read.
func UnitFor(quantity string, v float64) unit {
	name := UnitOf(quantity)
	for _, x := range longTimes {
		if name == "min" && v >= x.from {
			return x.unit
		}
	}
	return unit{name, 1}
}

// Never reports whether a time stands for one that is not reached.
func Never(quantity string, v float64) bool {
	q, _ := figure.Lookup(quantity)
	return q.Never > 0 && v >= float64(q.Never)*(1-1e-9)
}

// number is a value of a quantity in the unit, rounded as significant does.
func (u unit) number(quantity string, v float64, way int) string {
	if Never(quantity, v) {
		q, _ := figure.Lookup(quantity)
		long := UnitFor(quantity, float64(q.Never))
		return words.Of("time.never", With(Nearest(float64(q.Never)/long.Per, 3), long.Name))
	}
	return Significant(Balance(quantity, v)/u.Per, DigitsOf(quantity), way)
}

// With is that number with its unit.
func (u unit) With(quantity string, v float64, way int) string {
	if Never(quantity, v) {
		return u.number(quantity, v, way)
	}
	return With(u.number(quantity, v, way), u.Name)
}

// RangeText is the range of a figure. Both ends are rounded outward, so that
// the end at which danger lies never looks better than it was computed.
func RangeText(f *figure.Figure) string {
	if l, h := f.Low(), f.High(); !l.Unknown() && !h.Unknown() && Round9(l.V) == Round9(h.V) {
		return words.Of("range.none")
	}
	u := reading(f)
	low := u.end(f.Quantity, f.Low(), -1)
	high := u.end(f.Quantity, f.High(), 1)
	if low == high {
		if f.Low().Unknown() {
			return words.Of("value.unknown")
		}
		return words.Of("range.none")
	}
	return words.Of("range", low, high)
}

func (u unit) end(quantity string, n working.Num, way int) string {
	if n.Unknown() {
		return words.Of("value.unknown")
	}
	return u.number(quantity, n.V, way)
}

// ValueAndRange is "63.1 K (56.9 to 69.3)".
func ValueAndRange(f *figure.Figure) string {
	if Never(f.Quantity, f.Value.V) && !f.Low().Unknown() && !Never(f.Quantity, f.Low().V) {
		return words.Of("time.soonest", reading(f).With(f.Quantity, f.Low().V, -1), ValueText(f))
	}
	r := RangeText(f)
	if r == words.Of("range.none") || (f.Value.Unknown() && r == words.Of("value.unknown")) {
		return ValueText(f)
	}
	return ValueText(f) + " (" + r + ")"
}

// StatusText is the printed word of a status.
func StatusText(s working.Status) string { return words.Of("status." + s.String()) }
