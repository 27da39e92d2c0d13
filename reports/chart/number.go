package chart

import (
	"math"
	"strconv"
	"strings"

	written "etchbound/reports/digits"
)

// exact is a number the caller chose, a limit or a moment, to nine digits, so
// that noise of the machine does not show and nothing else is lost.
func exact(v float64) string { return digits(v, 9) }

// rounded is a number of a curve whose values span a width: four digits, more
// where a small change of a large value would not show, and whole below ten
// million.
func rounded(v, width float64) string {
	n, a := 4, math.Abs(v)
	if a < noise*width {
		return "0"
	}
	if a > 0 && width > noise*a {
		n = max(n, int(math.Ceil(math.Log10(a/width)))+3)
	}
	if a >= 1000 && a < 1e7 {
		n = max(n, int(math.Log10(a))+1)
	}
	return digits(v, n)
}

// noise is the part of a number below which differences are those of the
// machine.
const noise = 1e-9

// digits is v to n significant digits without zeros at the end.
func digits(v float64, n int) string {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', n-1, 64), 64)
	if err != nil || r == 0 {
		return "0"
	}
	if a := math.Abs(r); a >= 1e7 || a < 1e-6 {
		return power(r)
	}
	return strconv.FormatFloat(r, 'f', -1, 64)
}

// power is v as a power of ten and no more digits than it has, narrow: 1.2·10⁻⁵.
func power(v float64) string {
	mantissa, exp, _ := strings.Cut(strconv.FormatFloat(v, 'e', -1, 64), "e")
	if n, _ := strconv.Atoi(exp); v == 0 || n == 0 {
		return mantissa
	}
	return strings.Replace(written.Power(v), " × ", "·", 1)
}

// with joins a number and its unit.
func with(number, unit string) string { return strings.TrimSuffix(number+" "+unit, " ") }

// decimal is whole * 10^exp, rounded once.
func decimal(whole int64, exp int) float64 {
	v, _ := strconv.ParseFloat(strconv.FormatInt(whole, 10)+"e"+strconv.Itoa(exp), 64)
	return v
}

// coordinate prints a place in the picture, to a hundredth of its unit.
func coordinate(v float64) string {
	r := math.Round(v*100) / 100
	if r == 0 {
		return "0"
	}
	return strconv.FormatFloat(r, 'f', -1, 64)
}
