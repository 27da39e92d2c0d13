package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// scrubbed is a cell of 1 mol/L hydrochloric acid through which 0.5 A flow for 5 h, with the
// gas of it led through what stands in a trap.
func scrubbed(charge, cell string) string {
	return head + "precursor: {phase: Ti3AlC2, mass: 1 g, " + pure + "}\nplaces:\n  cell: {kind: cell, material: PTFE, " +
		"lid_material: PTFE, capacity: 250 mL, closure: vented, vent: 6 mm" + cell + "}\n" +
		"  trap: {kind: scrubber, material: HDPE, capacity: 500 mL, closure: vented}\nsteps:\n" + charge +
		"  - {do: charge, in: cell, what: [{substance: hydrochloric acid, strength: 1 mol/L, volume: 100 mL}], " +
		"temperature: 20 degC}\n" +
		"  - {do: charge, in: cell, what: [precursor], temperature: 20 degC}\n" +
		"  - {do: electrolyse, in: cell, time: 5 h, temperature: 20 degC, current: 0.5 A}\n"
}

const trapped = "  - {do: charge, in: trap, what: [{substance: sodium hydroxide, strength: 1 mol/L, volume: " +
	"200 mL}], " +
	"temperature: 20 degC}\n"

// By hand: 0.5 A for 5 h are 9000 C, 0.0466 mol of chlorine by two electrons each, which
// take 0.0933 mol of base; 200 mL of 1 mol/L hold 0.2 mol, so that 47 % are spent, 0.0187
// mol an hour, and it lasts 10.7 h. The vapour of dilute acid adds next to nothing.
// Hydrogen goes past, whatever the base.
func TestAScrubberIsSpent(t *testing.T) {
	rv := review(t, scrubbed(trapped, ", scrubber: trap"))
	for id, want := range map[string]float64{"base": 0.2, "taken": 0.0933, "spent": 46.6, "lasts": 10.7} {
		f := figureOf(&rv, "air.scrubber."+id+"@trap")
		if f == nil || !nearly.Share(f.Value.V, want, 0.03) {
			t.Errorf("%s is %+v, by hand %g", id, f, want)
		}
	}
	if f := figureOf(&rv, "air.scrubber.past@trap"); f == nil || !(f.Value.V > 0.1) {
		t.Errorf("hydrogen past the scrubber: %+v", f)
	}
	weak := review(t, scrubbed(strings.Replace(trapped, "200 mL", "50 mL", 1), ", scrubber: trap"))
	for id, want := range map[string]figure.Verdict{"air.scrubber.spent@trap+scrubber_spent": exceeds,
		"vessel.content@trap+brim": figure.Within} {
		if v := verdicts(&weak)[id]; v != want {
			t.Errorf("50 mL: %s is %v, want %v", id, v, want)
		}
	}
}

// A liquor of which no base is stated, and gas of which nobody says that it goes through,
// are not known, and are no pass.
func TestAScrubberOfNothingIsUnknown(t *testing.T) {
	water := "  - {do: charge, in: trap, what: [{substance: water, volume: 200 mL}], temperature: 20 degC}\n"
	for name, text := range map[string]string{"water": scrubbed(water, ", scrubber: trap"),
		"nothing charged": scrubbed("", ", scrubber: trap"), "no gas": scrubbed(trapped, "")} {
		rv := review(t, text)
		if v, there := verdicts(&rv)["air.scrubber.spent@trap+scrubber_spent"]; !there || v != figure.UnknownVerdict {
			t.Errorf("%s: %v (there %v)", name, v, there)
		}
	}
}

// By hand: 1 g of Ti3AlC2 is 5.14 mmol and gives up to 4 mol/mol of hydrogen and with free
// metal some more, 0.03 mol at the very most, 0.73 L; drops of 1 mL/L (the most that is taken) are 0.73 mL of the
// 100 mL, of whose 0.535 mol of acid they carry 3.9 mmol in each of the two steps in which the
// powder reacts, however fast the gas comes at its fastest for however long they last.
func TestDropsInAScrubberAreThoseOfTheGasThereIs(t *testing.T) {
	long.NotShort(t)
	rv := review(t, head+"precursor: {phase: Ti3AlC2, mass: 1 g, "+pure+"}\nplaces:\n  pot: {kind: vessel, "+
		"material: PTFE, lid_material: PTFE, capacity: 250 mL, closure: vented, vent: 1 mm, scrubber: trap}\n"+
		"  trap: {kind: scrubber, material: HDPE, capacity: 500 mL, closure: vented}\nsteps:\n"+trapped+
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 100 mL}], "+
		"temperature: 20 degC}\n"+
		"  - {do: add, in: pot, what: [precursor], over: 1 h, temperature: 20 degC}\n"+
		"  - {do: hold, in: pot, time: 100 h, temperature: 35 degC}\n")
	f := figureOf(&rv, "air.scrubber.taken@trap")
	vapour := 0.0
	for place, minutes := range map[string]float64{"2": 1, "3": 60, "4": 6000} {
		vapour += figureOf(&rv, "air.emission@"+place+"/hf").High().V / 1000 / 20.006 * minutes
	}
	if most := 2*0.03*24.465*1/100*0.535 + vapour; !(f.High().V <= most) {
		t.Errorf("the scrubber takes %g mol, by hand at most %g", f.High().V, most)
	}
}
