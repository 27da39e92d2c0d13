package hazards_test

import (
	"fmt"
	"strings"
	"testing"

	"etchbound/hazards/vessel"
	"etchbound/schemas/long"
)

// A heater that stays on, or a bath at the temperature of the room, is worst where most
// waits and not where the powder begins to go in: an hour of adding 30 g to 200 mL lets
// a vessel that is warmed from the start react as it goes. The scan knows nothing of how
// the review looks for the moment.
func TestABathGoesWrongAtItsWorstMoment(t *testing.T) {
	long.Only(t)
	cold := strings.Replace(strings.Replace(inIce("30 g", "200 mL", "1 W/K"), "over: 10 min", "over: 60 min", 1),
		"time: 4 h", "time: 24 h", 1)
	warm := strings.NewReplacer(", ice: 100 kg", "", "ice_bath", "water_bath", "0 degC", "35 degC", " 2 degC",
		" 35 degC").Replace(cold)
	for _, c := range []struct {
		failure, text string
		bath          float64 // degC
	}{{"bath_wrong", cold, 25}, {"heater_on", warm, 100}} {
		rv := followed(t, c.text)
		for i := range rv.Courses[0].Runs {
			x := &rv.Courses[0].Runs[i]
			pieces := x.Vessel.Plan.Pieces
			left := func(t float64) []vessel.Piece {
				out := vessel.After(pieces, t)
				for j := range out {
					out[j].Coolant, out[j].Iced = c.bath+273.15, false
				}
				return out
			}
			all := scan(t, x, pieces[len(pieces)-1].Until*(1-1e-9), 30, 1e3, left)
			hot := figureOf(&rv, fmt.Sprintf("heat.temperature_peak@2:%s,%s", c.failure, x.Law))
			if hot == nil || !(hot.Value.V >= all.hot-1) {
				t.Errorf("%s by %s: %+v, a scan finds %.1f degC", c.failure, x.Law, hot, all.hot)
			}
		}
		if f := figureOf(&rv, "heat.time_left@3"); c.failure == "heater_on" && (f == nil || !(f.Value.V < 24*60)) {
			t.Errorf("nobody has long once a heater fails in the hold: %+v", f)
		}
	}
}
