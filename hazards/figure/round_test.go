package figure_test

import (
	"testing"

	"etchbound/hazards/figure"
)

// By hand: what is needed is never printed as less.
func TestWhatIsNeededIsRoundedUp(t *testing.T) {
	for _, c := range []struct {
		v       float64
		n       int
		nearest string
		up      string
	}{{0.7281, 3, "0.728", "0.729"}, {0.728, 3, "0.728", "0.728"}, {3.214, 3, "3.21", "3.22"}, {9.991, 3, "9.99", "10"},
		{1234, 2, "1200", "1300"}, {0, 3, "0", "0"}, {0.3 * 3, 3, "0.9", "0.9"}} {
		if near, up := figure.Round(c.v, c.n), figure.RoundUp(c.v, c.n); near != c.nearest || up != c.up {
			t.Errorf("%g to %d digits: %s and %s, want %s and %s", c.v, c.n, near, up, c.nearest, c.up)
		}
	}
}
