package doubt_test

import (
	"math"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/bench"
	"etchbound/hazards/doubt"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

func fig(quantity string, v working.Num) figure.Figure {
	f := figure.Figure{ID: figure.ID{Quantity: quantity}, Value: v}
	f.SetRange(v.V, v.V)
	return f
}

// What most figures lack comes first, once, with the figures that lack it.
func TestUnknownIsListedByWeight(t *testing.T) {
	rare, often := working.LacksDatum("density.hcl"), working.LacksDatum("etch_heat.V2AlC")
	figs := []figure.Figure{fig("heat.mtsr", working.Absent("T", "degC", rare, often)),
		fig("heat.etch.total", working.Absent("Q", "kJ", often)),
		fig("gas.hydrogen.total", working.Given("V", "L", 1, "x"))}
	got := doubt.Unknown(&route.Route{}, figs, nil)
	if len(got) < 2 || got[0].Missing != often || len(got[0].Figures) != 2 || got[1].Missing != rare ||
		len(got[1].Figures) != 1 {
		t.Errorf("%+v", got)
	}
}

// What a writer leaves open is listed though no figure says that it lacks it.
func TestWhatTheWriterLeftOpen(t *testing.T) {
	r := bench.Steps(t, bench.Etch).Case.Route
	whole := len(doubt.Unknown(r, nil, nil))
	less := *r
	less.Places = append([]route.Place(nil), r.Places...)
	less.Places[0].Cooling = nil
	if got := len(doubt.Unknown(&less, nil, nil)); got != whole+1 {
		t.Errorf("%d things are open, and %d without the cooling", whole, got)
	}
}

// An assumption says from where to where it moves each figure, the most moved first.
func TestAssumptions(t *testing.T) {
	rows := []chemicals.Datum{{ID: "a", Value: 2, Low: 1, High: 3, Unit: "1", Status: "assumed"},
		{ID: "b", Value: 1, Low: 1, High: 1, Unit: "1", Status: "read"}}
	base := []figure.Figure{fig("heat.etch.total", working.Given("Q", "kJ", 10, "x")),
		fig("gas.hydrogen.total", working.Given("V", "L", 1, "x"))}
	got := doubt.Assumptions(rows, base, func(v int) (low, high []float64) {
		if v == 0 {
			return []float64{8, 1}, []float64{13, 1}
		}
		return []float64{10, 1}, []float64{10, math.NaN()}
	})
	if len(got) != 1 || got[0].ID != "a" || len(got[0].Moves) != 1 || got[0].Moves[0].From != 8 ||
		got[0].Moves[0].To != 13 {
		t.Errorf("%+v", got)
	}
}
