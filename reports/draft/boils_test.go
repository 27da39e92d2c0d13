package draft

import (
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
)

// Cake that could heat itself by thousands of kelvin is told to where its water boils, and the
// figure keeps its heat (water boils, common practice).
func TestCakeIsToldToBoiling(t *testing.T) {
	at := func(quantity string, v float64) figure.Figure {
		f := figure.Figure{ID: figure.ID{Quantity: quantity, Place: figure.At("pot")},
			Value: working.Exact("y", "K", v, "of a test")}
		f.SetRange(v, v)
		return f
	}
	for v, want := range map[float64]string{34351: "past boiling (40 K to it)", 12: "12 K"} {
		b := New(&hazards.Review{Figures: []figure.Figure{at("cake.warming", v), at("cake.boiling", 40)}}, Options{})
		f := b.ByID[figure.ID{Quantity: "cake.warming", Place: figure.At("pot")}]
		if got := b.ValueText(f); got != want || f.Value.V != v {
			t.Errorf("%g K is told as %q, want %q, and kept as %g", v, got, want, f.Value.V)
		}
	}
}
