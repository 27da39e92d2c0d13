package hazards_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/schemas/long"
)

// twoHolds is powder that waits cold and reacts in a warmer hold, in a pot with a cooling.
func twoHolds(cooling string) string {
	return head + "precursor: {phase: Ti3AlC2, mass: 20 g, " + pure + "}\nplaces:\n" +
		"  pot: {kind: vessel, material: PTFE, lid_material: PTFE, capacity: 800 mL, closure: vented, vent: 10 mm" +
		cooling + "}\nsteps:\n" +
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 20 wt%, volume: 300 mL}], " +
		"temperature: 10 degC}\n" +
		"  - {do: add, in: pot, what: [precursor], over: 20 min, temperature: 10 degC}\n" +
		"  - {do: hold, in: pot, time: 2 h, temperature: 15 degC}\n" +
		"  - {do: hold, in: pot, time: 8 h, temperature: 40 degC}\n"
}

// Where nobody says what cools a course that can run away, what it does in its later steps is
// not known; that nothing cools it is said by none, and then it is.
func TestWhatALaterStepDoesIsNotKnownWithoutItsCooling(t *testing.T) {
	id := "gas.superficial_velocity@4:self_accelerating+two_phase"
	for cooling, want := range map[string]figure.Verdict{
		"": figure.UnknownVerdict, ", cooling: {kind: none}": figure.Within,
	} {
		rv := must(t, briefly(t, load(t, twoHolds(cooling))))
		if got := verdicts(&rv)[id]; got != want {
			t.Errorf("%q: %s is %v, want %v", cooling, id, got, want)
		}
		asked := slices.ContainsFunc(rv.Unknown, func(u hazards.UnknownItem) bool {
			return strings.HasSuffix(u.Subject, "pot.cooling")
		})
		if asked != (cooling == "") {
			t.Errorf("%q: what cools the pot is asked for: %v", cooling, asked)
		}
	}
}

// Leaving out what cools a course makes nothing milder, in the steps in which it waits or in
// those in which it reacts.
func TestCoolingLeftOutIsNeverMilderLater(t *testing.T) {
	long.Only(t)
	for _, ua := range []string{"0.7 W/K", "1.5 W/K", "3 W/K"} {
		full := must(t, briefly(t, load(t, twoHolds(", cooling: {kind: water_bath, temperature: 5 degC, ua: "+ua+"}"))))
		bare := must(t, briefly(t, load(t, twoHolds(""))))
		notBetter(t, &full, &bare, "without cooling of "+ua)
	}
}
