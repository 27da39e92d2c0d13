package draft_test

import (
	"testing"

	"etchbound/hazards/course"
	"etchbound/hazards/vessel"
	"etchbound/reports/draft"
	"etchbound/schemas/nearly"
)

// The liquid of a jacket is drawn where there is one, in degC, and by no other track.
func TestTheLiquidOfAJacketIsDrawnWhereThereIsOne(t *testing.T) {
	bare := course.Course{Stages: []course.Stage{{}}}
	in := course.Course{Stages: []course.Stage{{Jacket: &course.Jacket{}}}}
	drawn := 0
	for i := range draft.Tracks {
		x := &draft.Tracks[i]
		if !x.In(&in) || x.In(&bare) == x.OfJacket() {
			t.Errorf("%s: drawn in a jacket %v, without one %v", x.Quantity, x.In(&in), x.In(&bare))
		}
		if x.OfJacket() {
			drawn++
			if y := x.Of(&in, vessel.Point{Temperature: 300, Jacket: 283.15}); !nearly.To(y, 10, 1e-9) {
				t.Errorf("a jacket of 283.15 K is drawn at %g degC", y)
			}
		}
	}
	if drawn != 1 {
		t.Errorf("%d tracks are of a jacket", drawn)
	}
}
