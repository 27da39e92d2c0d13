package working

import "math"

// Above is 1 where a lies above b, else 0, as formula lines have it; NaN where
// either is.
func Above(a, b float64) float64 {
	switch {
	case a > b:
		return 1
	case a <= b:
		return 0
	}
	return math.NaN()
}
