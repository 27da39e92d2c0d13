package solution_test

import (
	"math"
	"slices"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

func boils(w *working.Sheet, model string, fraction float64) working.Num {
	return solution.BoilingPoint(chemicals.Base(), w, model, given("w", "g/g", fraction))
}

func TestBoilingPoints(t *testing.T) {
	for _, row := range published(t, "thermochemistry_boiling.csv") {
		w := working.NewSheet()
		got := boils(w, row["model"], number(t, row["wt_pct"])/100)
		want := number(t, row["degc"])
		if !(math.Abs(got.V-want) <= number(t, row["tolerance"])) {
			t.Errorf("%s %s wt%%: %.1f degC, published %.1f (%s)", row["model"], row["wt_pct"], got.V, want, row["source"])
		}
		if got.Status != working.Estimated {
			t.Errorf("%v", got)
		}
		recheck(t, w)
	}
}

func TestBoilingPointEdges(t *testing.T) {
	for _, model := range []string{"hf", "hcl", "water"} {
		if got := boils(nil, model, 0).V; !nearly.To(got, 100, 1e-9) {
			t.Errorf("%s without acid boils at %g degC", model, got)
		}
	}
	for model, fraction := range map[string]float64{"hf": 0.71, "hcl": 0.43, "h2so4": 0.5, "naoh": 0.1, "": 0.1} {
		if got := boils(nil, model, fraction); !got.Unknown() {
			t.Errorf("%s of %g: %v", model, fraction, got)
		}
	}
	if got := boils(nil, "hf", 0.7); got.Unknown() {
		t.Errorf("70 wt%% hydrofluoric acid: %v", got)
	}
	absent := solution.BoilingPoint(chemicals.Base(), nil, "hf", working.Absent("w", "g/g", working.Lacks("strength", "")))
	if !slices.Equal(absent.Missing(), []working.Missing{working.Lacks("strength", "")}) {
		t.Errorf("%v", absent)
	}
}

// No step where the tables begin, and one maximum, the azeotrope. The recalled
// coefficients of water over hydrochloric acid are rough by 0.1 K.
func TestBoilingPointIsSmooth(t *testing.T) {
	const rough = 0.1
	for model, high := range map[string]float64{"hf": 0.7, "hcl": 0.42} {
		last := boils(nil, model, 0).V
		highest, lowest := last, math.Inf(1) // so far, and since the highest
		for x := 0.001; x <= high; x += 0.001 {
			now := boils(nil, model, x).V
			if !nearly.To(now, last, 0.8) {
				t.Errorf("%s: step from %.2f to %.2f degC at %.3f", model, last, now, x)
			}
			if now >= highest {
				highest, lowest = now, now
			}
			if lowest = min(lowest, now); now > lowest+rough {
				t.Errorf("%s: rises again to %.2f degC at %.3f", model, now, x)
			}
			last = now
		}
	}
}

func TestBoilingPointOffset(t *testing.T) {
	st := chemicals.Base()
	d, _ := st.Row("boiling.offset")
	w := given("w", "g/g", 0.48)
	low := solution.BoilingPoint(st.With(map[int]float64{d.Index: d.Low}), nil, "hf", w)
	if got := solution.BoilingPoint(st, nil, "hf", w).V - low.V; !nearly.To(got, 2, 1e-9) {
		t.Errorf("the low end is %g K lower", got)
	}
}

func BenchmarkCharged(b *testing.B) {
	hcl, _ := chemicals.Library().Find("hcl")
	for b.Loop() {
		solution.Charged(chemicals.Base(), nil, hcl, strength(quantity.Molarity, 9000), given("V", "mL", 20), working.Num{})
	}
}

func BenchmarkBoilingPoint(b *testing.B) {
	for b.Loop() {
		boils(nil, "hf", 0.48)
	}
}
