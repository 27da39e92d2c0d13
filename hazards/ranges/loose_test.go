package ranges

import (
	"math"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
)

// How hot a course of several steps gets is bounded by the heat of all of them only where all
// of it is known: by hand, 40 degC and 30 K come to 70, whichever step has them.
func TestABoundNeedsTheHeatOfEveryStep(t *testing.T) {
	rise := func(step int, high float64) figure.Figure {
		f := figure.Figure{ID: figure.ID{Quantity: "heat.adiabatic_rise", Place: figure.Step(step)},
			Value: working.Exact("dT", "K", 15, "of the test")}
		f.SetRange(10, high)
		return f
	}
	x := loose{steps: []figure.Place{figure.Step(2), figure.Step(3)}, set: 40}
	for _, row := range []struct {
		label string
		base  []figure.Figure
		want  float64
	}{
		{"both", []figure.Figure{rise(2, 20), rise(3, 30)}, 70},
		{"first not known", []figure.Figure{rise(2, math.NaN()), rise(3, 30)}, math.NaN()},
		{"last not known", []figure.Figure{rise(2, 30), rise(3, math.NaN())}, math.NaN()},
		{"of another step", []figure.Figure{rise(1, math.NaN()), rise(2, 30)}, 70},
		{"none", nil, math.NaN()},
	} {
		r := ranger{base: row.base}
		if got := r.hottestOf(&x); got != row.want && !(math.IsNaN(got) && math.IsNaN(row.want)) {
			t.Errorf("%s: %g, want %g", row.label, got, row.want)
		}
	}
}
