package number

import (
	"math"

	"etchbound/reports/words"
)

// Margin is what is left of a limit, rounded so that it never looks better than it is:
// kelvin for a temperature in °C, a share of the limit for everything else. A share over
// its double is said as how many times the limit; below zero, and above the double where
// danger lies low, no share is believed.
func (t Thing) Margin(m, limit float64) string {
	switch {
	case math.IsNaN(m):
		return words.Number("unknown")
	case t.Unit == "degC":
		return t.kelvin(m)
	case math.IsInf(m, 0) || limit == 0:
		return words.Number("nothing_allowed")
	case m > 1 && t.Low:
		return words.Number("needed", Significant(1+m, coarse, -1))
	case m > 1:
		return words.Number("far")
	case m >= 0:
		return words.Number("left", Significant(100*m, coarse, -1))
	case t.Low:
		return words.Number("short", Significant(-100*m, coarse, 1))
	case m < -1:
		return words.Number("times", Significant(1-m, coarse, 1))
	}
	return words.Number("over", Significant(-100*m, coarse, 1))
}

// kelvin is the margin of a temperature.
func (t Thing) kelvin(m float64) string {
	switch {
	case m >= 0:
		return words.Number("kelvin_left", Significant(m, fine, -1))
	case t.Low:
		return words.Number("kelvin_short", Significant(-m, fine, 1))
	}
	return words.Number("kelvin_over", Significant(-m, fine, 1))
}

// Change is by how much something is more or less: a share of what it was, and how many
// times it where that is more than its double.
func Change(share float64) string {
	switch {
	case math.IsNaN(share) || math.IsInf(share, 0):
		return words.Number("unknown")
	case share > 1:
		return words.Number("more_times", Nearest(1+share, fine))
	case share > 0:
		return words.Number("more_percent", Nearest(100*share, fine))
	case share < 0:
		return words.Number("less_percent", Nearest(-100*share, fine))
	}
	return "0 %"
}
