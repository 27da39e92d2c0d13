// Package digits knows how a number is Rounded to some digits and spelled out, with no
// exponent that only programs read. It must not know what the number is of, nor a word.
package digits

import (
	"math"
	"strconv"
	"strings"
)

// Is reports whether v is a number.
func Is(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// Round9 is v to nine significant digits, the precision of the JSON review; what is beyond
// is noise.
func Round9(v float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 9, 64), 64)
	if err != nil || r == 0 {
		return 0
	}
	return r
}

// Nearest prints v with at most digits significant digits.
func Nearest(v float64, digits int) string { return Significant(v, digits, 0) }

// Significant prints v with at most digits significant digits: to the nearest for way 0,
// never below v for way 1, never above v for way -1. What has fewer digits keeps them, so
// that 20 stays 20 and 69.3012 is 69.30. Empty for what is no number.
func Significant(v float64, digits, way int) string {
	step := StepOf(v, digits)
	if r := Rounded(v, step, way); r != 0 {
		step = max(step, StepOf(r, digits)) // 9.996 to three digits is 10.0
	}
	return ToStep(v, step, way)
}

// StepOf is the place of the last of some significant digits of v, as the power of ten
// it is: -2 for 0.753 and two.
func StepOf(v float64, digits int) int {
	_, power := parts(strconv.FormatFloat(v, 'e', max(digits-1, 0), 64))
	return power - max(digits-1, 0)
}

// ToStep prints v to the place of a power of ten, in the direction of way; what has fewer
// places keeps them.
func ToStep(v float64, step, way int) string {
	if !Is(v) {
		return ""
	}
	v = Round9(v)
	r := Rounded(v, step, way)
	if r == v || r == 0 {
		return Readable(r, -1)
	}
	return Readable(r, max(-step, 0))
}

// Rounded is v to the place of a power of ten, in the direction of way.
func Rounded(v float64, step, way int) float64 {
	steps := Round9(shifted(Round9(v), -step))
	switch {
	case way > 0:
		steps = math.Ceil(steps)
	case way < 0:
		steps = math.Floor(steps)
	default:
		steps = math.Round(steps)
	}
	return shifted(steps, step)
}

// shifted is v times a power of ten, by its digits: exact, which a product is not.
func shifted(v float64, by int) float64 {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return v
	}
	mantissa, power := parts(strconv.FormatFloat(v, 'e', -1, 64))
	r, _ := strconv.ParseFloat(mantissa+"e"+strconv.Itoa(power+by), 64)
	return r
}

// parts are the mantissa and the power of ten of a number in the form 1.2e+03.
func parts(e string) (mantissa string, power int) {
	mantissa, p, _ := strings.Cut(e, "e")
	power, _ = strconv.Atoi(p)
	return mantissa, power
}

// Readable prints v with some decimal places, or, for -1, as many as it has, and as a
// power of ten where it would be a row of noughts.
func Readable(v float64, places int) string {
	if a := math.Abs(v); v != 0 && (a >= 1e7 || a < 1e-5) {
		return Power(v)
	}
	return strconv.FormatFloat(v, 'f', places, 64)
}

// Power prints v as a chemist writes it by hand: 3.1 × 10⁻¹².
func Power(v float64) string {
	mantissa, n := parts(strconv.FormatFloat(Round9(v), 'e', -1, 64))
	ten := "10" + raise.Replace(strconv.Itoa(n))
	switch mantissa {
	case "1":
		return ten
	case "-1":
		return "-" + ten
	}
	return mantissa + " × " + ten
}

var raise = strings.NewReplacer("-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶",
	"7", "⁷", "8", "⁸", "9", "⁹")
