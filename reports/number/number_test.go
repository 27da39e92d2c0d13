package number

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
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
		{0, 3, 1, "0"}, {3.1e-12, 3, 0, "3.1e-12"}, {6.02214076e23, 3, 0, "6.02e+23"}, {math.NaN(), 3, 0, "not known"},
		{math.Inf(1), 3, 0, "not known"},
	} {
		if got := Significant(c.v, c.digits, c.way); got != c.want {
			t.Errorf("significant(%v, %d, %d) = %q, want %q", c.v, c.digits, c.way, got, c.want)
		}
	}
}

// A printed range must hold the computed one, whatever the numbers.
func TestRangeRoundsOutward(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-1e8, 1e8).Draw(t, "low")
		high := low + rapid.Float64Range(1e-3, 1e6).Draw(t, "width")
		f := figure.Figure{ID: figure.ID{Quantity: "heat.adiabatic_rise"}, Value: working.Given("x", "K", low, "test")}
		f.SetRange(low, high)
		s := RangeText(&f)
		a, b, ok := strings.Cut(s, " to ")
		if !ok {
			t.Skip("both ends print alike")
		}
		pl, _ := strconv.ParseFloat(a, 64)
		ph, _ := strconv.ParseFloat(b, 64)
		// Noise beyond the ninth digit does not count.
		if pl > Round9(low) || ph < Round9(high) {
			t.Fatalf("%v to %v prints as %s", low, high, s)
		}
	})
}
