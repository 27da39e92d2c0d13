package review

import (
	"math"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
)

// The picture of a step shows what gives most of an agent, drops and boiling too, and says
// where something of it is not known; what fails is drawn elsewhere.
func TestThePictureShowsWhatGivesMost(t *testing.T) {
	of := func(step int, kase figure.Case, high float64) figure.Figure {
		v := working.Exact("C", "ppm", high, "as written")
		if math.IsNaN(high) {
			v = working.Absent("C", "ppm", working.Lacks(working.NotGiven, "steps[0].temperature"))
		}
		f := figure.Figure{ID: figure.ID{Quantity: "air.breathing_zone", Place: figure.Step(step), Agent: "hf",
			Case: kase}, Value: v}
		f.SetRange(0, high)
		return f
	}
	mist, boils := figure.By("mist"), figure.By(figure.Boiling)
	all := []figure.Figure{of(2, figure.Case{}, 1), of(2, mist, 115), of(2, boils, 3), of(3, figure.Case{}, math.NaN()),
		of(3, mist, 4), of(4, figure.Case{}, math.NaN()), of(2, figure.If("hood_fails"), 900)}
	agents, at := breathedMost(all)
	if len(agents) != 1 || len(at["hf"]) != 3 {
		t.Fatalf("%v, %v", agents, at)
	}
	for i, want := range []struct {
		most float64 // 0: nothing is known
		lost bool
	}{{115, false}, {4, true}, {0, true}} {
		x := at["hf"][i]
		most := 0.0
		if x.most != nil {
			most = x.most.High().V
		}
		if most != want.most || x.lost != want.lost {
			t.Errorf("step %d: %g, not all known %v; want %+v", x.step, most, x.lost, want)
		}
	}
}
