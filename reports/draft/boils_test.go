package draft

import (
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
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

// A liquor whose boiling point is known to some kelvin is told by its high end; one of which nobody
// knows how much acid a salt takes up, by both: strong hydrochloric acid boils below 62 degC, what
// is left of it once the salt has reacted above 85 (36 and 32 wt%: common handbooks).
func TestBothEndsOfABoilingPointThatAreFarApart(t *testing.T) {
	step := figure.Step(1)
	at := func(quantity string, low, v, high float64) figure.Figure {
		f := figure.Figure{ID: figure.ID{Quantity: quantity, Place: step}, Value: working.Exact("T", "degC", v, "of a test")}
		f.SetRange(low, high)
		return f
	}
	c := route.Case{Route: &route.Route{Places: []route.Place{{Key: "pot", Closure: route.Open}},
		Steps: []route.Step{{Number: 1, Do: "hold", In: "pot"}}}}
	for _, x := range []struct {
		boils     [2]float64
		top       [3]float64
		want, way string
	}{
		{[2]float64{98, 104}, [3]float64{90, 120, 130}, "boils at 104 °C (from 90)", "within a few kelvin"},
		{[2]float64{54.8, 89.7}, [3]float64{84, 96, 109}, "boils between 54.8 °C and 89.7 °C", "all above the low end"},
		{[2]float64{54.8, 89.7}, [3]float64{38, 96, 109}, "boils between 54.8 °C and 89.7 °C (from 38)", "far apart"},
		{[2]float64{54.8, 89.7}, [3]float64{38, 60, 80}, "60 °C (38 to 80)", "below the high end"},
	} {
		b := New(&hazards.Review{Case: c, Figures: []figure.Figure{
			at("heat.boiling_point", x.boils[0], x.boils[1], x.boils[1]),
			at("heat.temperature_peak", x.top[0], x.top[1], x.top[2])}}, Options{})
		f, _ := b.At("heat.temperature_peak", step)
		if got := b.ValueAndRange(f); got != x.want {
			t.Errorf("%s: told as %q, want %q", x.way, got, x.want)
		}
	}
}
