package reports

import (
	"math"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
)

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
