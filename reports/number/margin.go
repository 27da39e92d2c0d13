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
		return words.Of("value.unknown")
	case t.Unit == "degC":
		return t.kelvin(m)
	case math.IsInf(m, 0) || limit == 0:
		return words.Of("margin.zero_limit")
	case m > 1 && t.Low:
		return words.Of("margin.needed", Significant(1+m, coarse, -1))
	case m > 1:
		return words.Of("margin.far")
	case m > mostLeft && m < 1:
		return words.Of("margin.most_left", Nearest(100*mostLeft, coarse))
	case m >= 0:
		return words.Of("margin.left", Significant(100*m, coarse, -1))
	case t.Low:
		return words.Of("margin.short", Significant(-100*m, coarse, 1))
	case m < -1:
		return words.Of("margin.times", Significant(1-m, coarse, 1))
	}
	return words.Of("margin.over", Significant(-100*m, coarse, 1))
}

// mostLeft is the share of a limit above which what is left is said as more than that.
const mostLeft = 0.99

// kelvin is the margin of a temperature.
func (t Thing) kelvin(m float64) string {
	switch {
	case m >= 0:
		return words.Of("margin.kelvin_left", Significant(m, fine, -1))
	case t.Low:
		return words.Of("margin.kelvin_short", Significant(-m, fine, 1))
	}
	return words.Of("margin.kelvin_over", Significant(-m, fine, 1))
}

// Change is by how much something is more or less: a share of what it was, and how many
// times it where that is more than its double.
func Change(share float64) string {
	switch {
	case math.IsNaN(share) || math.IsInf(share, 0):
		return words.Of("value.unknown")
	case share > 1:
		return words.Of("change.times_what", Nearest(1+share, fine))
	case share > 0:
		return words.Of("change.more_percent", Nearest(100*share, fine))
	case share < 0:
		return words.Of("change.less_percent", Nearest(-100*share, fine))
	}
	return "0 %"
}
