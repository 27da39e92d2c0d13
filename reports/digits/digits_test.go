package digits

import (
	"math"
	"testing"
)

func TestSignificant(t *testing.T) {
	// Expected texts follow from the rule of significant digits by hand.
	for _, c := range []struct {
		v      float64
		digits int
		way    int
		want   string
	}{
		{63.1038, 4, 0, "63.10"}, {63.1, 4, 0, "63.1"}, {56.871, 4, -1, "56.87"}, {69.304, 4, 1, "69.31"},
		{69.30000000001, 4, 1, "69.3"}, {0.0123456, 3, 1, "0.0124"}, {9.996, 3, 0, "10.0"}, {9.991, 3, 1, "10.0"},
		{-18.04, 3, 1, "-18.0"}, {-18.04, 3, -1, "-18.1"}, {123456, 3, 0, "123000"}, {7, 2, 0, "7"},
		{0.125, 2, 0, "0.13"}, {100, 2, 0, "100"}, {0, 3, 1, "0"}, {math.NaN(), 3, 0, ""},
		{math.Inf(1), 3, 0, ""}, {3.1e-12, 3, 0, "3.1 × 10⁻¹²"}, {6.02214076e23, 3, 0, "6.02 × 10²³"},
		{1e-9, 9, 0, "10⁻⁹"}, {-1e-9, 9, 0, "-10⁻⁹"}, {0.0001, 2, 0, "0.0001"}, {0.00009999, 2, 0, "0.00010"},
	} {
		if got := Significant(c.v, c.digits, c.way); got != c.want {
			t.Errorf("Significant(%v, %d, %d) = %q, want %q", c.v, c.digits, c.way, got, c.want)
		}
	}
}
