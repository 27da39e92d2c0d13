package reports

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
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
		if got := significant(c.v, c.digits, c.way); got != c.want {
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
		s := rangeText(&f)
		a, b, ok := strings.Cut(s, " to ")
		if !ok {
			t.Skip("both ends print alike")
		}
		pl, _ := strconv.ParseFloat(a, 64)
		ph, _ := strconv.ParseFloat(b, 64)
		// Noise beyond the ninth digit does not count.
		if pl > round9(low) || ph < round9(high) {
			t.Fatalf("%v to %v prints as %s", low, high, s)
		}
	})
}

func TestMargins(t *testing.T) {
	for _, c := range []struct {
		quantity string
		limit    float64
		margin   float64
		want     string
	}{
		{"heat.mtsr", 103.6, 5.42, "5.42 K left"}, {"heat.mtsr", 103.6, -2.371, "2.38 K over"},
		{"fluoride.hf_strength", 50, 0.896, "89 % left"}, {"heat.adiabatic_rise", 50, -0.386, "39 % over"},
		{"air.breathing_zone", 3, -139, "140 times the limit"}, {"air.breathing_zone", 3, -1.5, "150 % over"},
		{"gas.closed.pressure", 0, -1, "zero limit"}, {"heat.etch.total", 1, math.NaN(), "not known"},
	} {
		f := figure.Finding{Limit: limit.Limit{Value: c.limit}, Margin: c.margin}
		if got := marginText(&f, c.quantity); got != c.want {
			t.Errorf("%s: %q, want %q", c.quantity, got, c.want)
		}
	}
}
