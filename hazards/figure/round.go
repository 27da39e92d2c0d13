package figure

import "strconv"

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
