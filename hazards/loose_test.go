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
func twoHolds(cooling string) string { return twoHoldsOf(pure, cooling) }

func twoHoldsOf(purity, cooling string) string {
	return head + "precursor: {phase: Ti3AlC2, mass: 20 g, " + purity + "}\nplaces:\n" +
		"  pot: {kind: vessel, material: PTFE, lid_material: PTFE, capacity: 800 mL, closure: vented, vent: 10 mm" +
		cooling + "}\nsteps:\n" +
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 20 wt%, volume: 300 mL}], " +
		"temperature: 10 degC}\n" +
		"  - {do: add, in: pot, what: [precursor], over: 20 min, temperature: 10 degC}\n" +
		"  - {do: hold, in: pot, time: 2 h, temperature: 15 degC}\n" +
		"  - {do: hold, in: pot, time: 8 h, temperature: 40 degC}\n"
}

// Where nobody says what cools a course that can run away, how well, or what else reacts in it,
// what it does in its later steps is not known; that nothing cools it is said by none, and then
// it is.
func TestWhatALaterStepDoesIsNotKnownWithoutItsCooling(t *testing.T) {
	id := "gas.superficial_velocity@4:self_accelerating+two_phase"
	const none = ", cooling: {kind: none}"
	for _, c := range []struct {
		purity, cooling string
		want            figure.Verdict
		asked           string
	}{
		{pure, "", figure.UnknownVerdict, "pot.cooling"},
		{pure, ", cooling: {kind: water_bath, temperature: 5 degC}", figure.UnknownVerdict, "pot.cooling.ua"},
		{pure, none, figure.Exceeds, ""}, // by what no run exceeds, all powder at once
		{"purity: 97 wt%", none, figure.UnknownVerdict, ""},
	} {
		rv := must(t, briefly(t, load(t, twoHoldsOf(c.purity, c.cooling))))
		if got := verdicts(&rv)[id]; got != c.want {
			t.Errorf("%q, %q: %s is %v, want %v", c.purity, c.cooling, id, got, c.want)
		}
		for _, key := range []string{"pot.cooling", "pot.cooling.ua"} {
			asked := slices.ContainsFunc(rv.Unknown, func(u hazards.UnknownItem) bool {
				return strings.HasSuffix(u.Subject.String(), key)
			})
			if asked != (c.asked == key) {
				t.Errorf("%q, %q: %s is asked for: %v", c.purity, c.cooling, key, asked)
			}
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
