package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// Ice that nobody renews: 300 g beside 1 L of water that is not stated to be cold. The
// water alone takes 313 g from 25 degC (4.18/334 x 25 by hand); at 8 W/m2/K the room
// gives the 0.056 m2 of such a bath 11.1 W (wall and one end of a cylinder of 1.3 L), which
// melts 5.8 kg in two days; the liquor ends at the temperature of the room.
func TestIceThatNobodyRenewsIsGone(t *testing.T) {
	long.NotShort(t)
	text := inIce("1 g", "10 mL", "2 W/K")
	const was = "cooling: {kind: ice_bath, temperature: 0 degC, ice: 100 kg, ua: 2 W/K}"
	hold := func(cooling string) string {
		return strings.Replace(strings.Replace(text, was, cooling, 1), "time: 4 h, temperature: 2 degC",
			"time: 48 h, temperature: 2 degC", 1)
	}
	warm := review(t, hold("cooling: {kind: ice_bath, ice: 300 g, bath: 1 L, ua: 2 W/K}"))
	cold := review(t, hold("cooling: {kind: ice_bath, temperature: 0 degC, ice: 300 g, bath: 1 L, ua: 2 W/K}"))
	a, b := figureOf(&warm, "heat.ice@2"), figureOf(&cold, "heat.ice@2")
	if a == nil || b == nil || !nearly.To(a.Value.V-b.Value.V, 0.313, 0.003) {
		t.Errorf("water that has to be cooled takes %+v - %+v kg, want 0.313", a, b)
	}
	if b == nil || !nearly.Between(b.Value.V, 5.6, 6) {
		t.Errorf("two days take %+v kg, want 5.8", b)
	}
	if v := verdicts(&cold)["heat.ice@2+written_ice"]; v != figure.Exceeds {
		t.Errorf("300 g for two days are %v", v)
	}
	if f := figureOf(&cold, "heat.temperature_peak@3:early_peak"); f == nil || !nearly.Between(f.Value.V, 24, 26.5) {
		t.Errorf("the liquor gets to %+v, want the room at 25 degC", f)
	}
}
