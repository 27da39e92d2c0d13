// Package nearly compares floats in tests: by an absolute tolerance, or by a share
// of what is wanted. A NaN is near nothing, so a comparison with one fails, where
// math.Abs(got-want) > tolerance lets it pass. It must not know what the numbers
// mean, and nothing but tests imports it.
package nearly

import "math"

// To reports whether got lies within tolerance of want, both in the unit of the
// numbers; tolerance is not negative. It is false where any of the three is NaN,
// and where got or want is infinite, unless both are the same infinity.
func To(got, want, tolerance float64) bool {
	if got == want {
		return tolerance >= 0
	}
	return math.Abs(got-want) <= tolerance && !math.IsInf(got-want, 0)
}

// Off is how far got is from want, and infinite where either is NaN: for tests
// that keep the worst of many distances before they judge it.
func Off(got, want float64) float64 {
	if d := math.Abs(got - want); !math.IsNaN(d) {
		return d
	}
	if got == want {
		return 0
	}
	return math.Inf(1)
}

// Share reports whether got lies within a share of want: 0.01 is one percent. For
// a want of 0 only 0 is near; use To there.
func Share(got, want, share float64) bool { return To(got, want, share*math.Abs(want)) }

// Alike is Share where NaN stands for unknown on both sides: two unknowns are
// alike, and an unknown and a number never.
func Alike(got, want, share float64) bool {
	return math.IsNaN(got) && math.IsNaN(want) || Share(got, want, share)
}

// Between reports whether got lies from low to high, ends included.
func Between(got, low, high float64) bool { return got >= low && got <= high }
