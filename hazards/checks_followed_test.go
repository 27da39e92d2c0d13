package hazards_test

import (
	"strings"
	"testing"

	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// A failure is followed until nothing waits: where nothing is lost, a cooling failure
// ends at the highest temperature of the synthesis reaction (energy balance), even where
// the etch takes a week in the cold and the failure takes days.
func TestACoolingFailureIsFollowedToItsEnd(t *testing.T) {
	long.NotShort(t)
	rv := followed(t, strings.Replace(inIce("10 g", "80 mL", "2 W/K"), "time: 4 h", "time: 400 h", 1))
	late := false
	for _, law := range []string{"self_accelerating", "early_peak"} {
		most := 0.0
		for _, step := range []string{"2", "3"} {
			if f := figureOf(&rv, "heat.mtsr@"+step+":"+law); f != nil {
				most = max(most, f.Value.V)
			}
		}
		f := figureOf(&rv, "heat.temperature_peak@2:cooling_lost,"+law)
		if f == nil || !nearly.To(f.Value.V, most, 0.5) || !(most > 90) {
			t.Errorf("%s: cooling lost gives %+v, all that waits %g degC", law, f, most)
		}
		b := figureOf(&rv, "heat.time_to_boil@2:cooling_lost,"+law)
		late = late || b != nil && b.Value.V > 1440 && b.Value.V < 43200
	}
	if !late {
		t.Error("nothing boils later than a day after the failure: the route does not try it")
	}
}
