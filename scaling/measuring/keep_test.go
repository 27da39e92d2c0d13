package measuring

import (
	"math"
	"testing"

	"etchbound/schemas/nearly"
)

// By the definition of a cut, (end - left)/(end - best): of a figure of 10 to 20, and of one whose
// danger is low, 20 to 10, what leaves 14 stands before what leaves 18 and 12 of the other, what
// leaves the end cuts nothing, and the furthest beyond it is told.
func TestWhatCutsNothingIsLeftOut(t *testing.T) {
	by := func(left float64) By { return By{Experiment: "calorimeter", Left: left, Alone: math.NaN()} }
	high := Figure{Best: 10, End: 20, Beyond: math.NaN()}
	high.keep([]By{by(18), by(20), by(23), by(14), by(21), by(math.NaN())})
	if len(high.By) != 3 || high.By[0].Left != 14 || high.By[1].Left != 18 || !math.IsNaN(high.By[2].Left) ||
		!nearly.To(high.Beyond, 23, 0) {
		t.Errorf("%+v", high)
	}
	low := Figure{Best: 20, End: 10, Low: true, Beyond: math.NaN()}
	low.keep([]By{by(12), by(10), by(7), by(9)})
	if len(low.By) != 1 || low.By[0].Left != 12 || !nearly.To(low.Beyond, 7, 0) {
		t.Errorf("%+v", low)
	}
	alone := Figure{Best: 10, End: 20, Beyond: math.NaN()}
	if alone.keep([]By{{Experiment: "calorimeter", Left: 14, Alone: 22}, by(21)}); !nearly.To(alone.Beyond, 22, 0) {
		t.Errorf("%+v", alone)
	}
	none := Figure{Best: 10, End: 20, Beyond: math.NaN()}
	if none.keep([]By{by(11), by(20.05)}); !math.IsNaN(none.Beyond) {
		t.Errorf("%+v", none)
	}
}
