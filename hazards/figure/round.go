package figure

import (
	"math"
	"strconv"
)

// RoundUp prints v, above zero, to n significant digits and not below it: for what is
// needed. What is over a digit by no more than the last of a computed number does not count.
func RoundUp(v float64, n int) string {
	if v > 0 {
		step := math.Pow(10, math.Floor(math.Log10(v))-float64(n-1))
		v = math.Ceil(v/step-1e-9) * step
	}
	return Round(v, n)
}

// Round prints v to n significant digits without an exponent where that reads
// well.
func Round(v float64, n int) string {
	s := strconv.FormatFloat(v, 'g', n, 64)
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return s
	}
	if a := max(f, -f); a != 0 && (a < 1e-4 || a >= 1e7) {
		return s
	}
	return strconv.FormatFloat(f, 'f', -1, 64)
}
