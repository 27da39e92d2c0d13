package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards/vessel"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// poured is ten grams in 200 mL of 48 wt% HF at 40 degC, poured on to what stands in a pail.
func poured(pail, receives string) string {
	return head + "precursor: {phase: Ti3AlC2, mass: 10 g, " + pure + "}\nplaces:\n" +
		"  pot: {kind: vessel, material: PTFE, lid_material: PTFE, capacity: 500 mL, closure: vented, vent: 6 mm, cooling: " +
		"{kind: water_bath, temperature: 40 degC, ua: 2 W/K}}\n  pail: {" + pail + "}\nsteps:\n" +
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 48 wt%, volume: 200 mL}], " +
		"temperature: 40 degC}\n" +
		"  - {do: add, in: pot, what: [precursor], over: 60 min, temperature: 40 degC}\n" +
		"  - {do: hold, in: pot, time: 1 h, temperature: 40 degC, attended: true}\n" + receives +
		"  - {do: quench, in: pot, into: pail, over: 5 min, time: 1 h, temperature: 5 degC}\n"
}

const (
	pail     = "kind: beaker, material: HDPE, capacity: 1 L, closure: open"
	coldTap  = "  - {do: charge, in: pail, what: [{substance: water, volume: 500 mL}], temperature: 20 degC}\n"
	iceWater = "  - {do: charge, in: pail, what: [{substance: water, volume: 500 mL}, {substance: ice, mass: 100 g}], " +
		"temperature: 0 degC}\n"
	iceStood = iceWater + "  - {do: hold, in: pot, time: 2 h, temperature: 40 degC}\n"
)

// quenchChecks are the routes of these checks, of which every line is recomputed.
var quenchChecks = []check{{name: "quenched in tap water", yaml: poured(pail, coldTap)},
	{name: "a scrubber", yaml: scrubbed(trapped, ", scrubber: trap")},
	{name: "quenched in ice water", yaml: poured(pail, iceStood)}}

// What a liquor comes to in the place it is poured to, by hand: 240 g of liquor count as
// water, 1004 J/K at 40 degC; 500 mL of water 2086 J/K; diluting gives 15.8 kJ (10.8 to
// 20.7), with 600 g of water 16.3. Tap water at 20 degC: (1004 40 + 2086 20 + 15763)/3090
// = 31.6 degC. With 100 g of ice, 33.4 kJ: (40160 + 16300 - 33400)/(1004 + 2504) = 6.6. In
// 2 h the room gives 0.041 m2 of it 8.2 W, 59 kJ, and no ice is left: 16.1.
func TestALiquorIsPouredIntoAnotherVessel(t *testing.T) {
	long.Only(t)
	for _, c := range []struct {
		name, receives, step string
		comes, rise          float64
	}{
		{"tap water", coldTap, "5", 31.6, 14.1}, {"ice water", iceWater, "5", 6.6, 12.3},
		{"ice that the room has melted", iceStood, "6", 16.1, 12.3},
	} {
		rv := review(t, poured(pail, c.receives))
		for id, want := range map[string]float64{"heat.quench.temperature@": c.comes, "heat.adiabatic_rise@": c.rise,
			"heat.mtsr@": c.comes + c.rise} {
			if f := figureOf(&rv, id+c.step); f == nil || !nearly.To(f.Value.V, want, 0.6) {
				t.Errorf("%s: %s%s is %+v, by hand %.1f", c.name, id, c.step, f, want)
			}
		}
	}
}

// The vessel that receives is the one that is judged: how full it is, what it stands, and
// what gives gas there; and of what it holds nothing is guessed.
func TestTheVesselThatReceivesIsJudged(t *testing.T) {
	long.NotShort(t)
	rv := review(t, poured(pail, iceWater))
	for id, want := range map[string]float64{
		"vessel.content@pail":    80.235, // 500 mL, 200 mL, 100 g of ice, 10 g at 4.25 g/mL, in a litre
		"heat.technical_limit@5": 65,     // of the HDPE and not of the PTFE
	} {
		if f := figureOf(&rv, id); f == nil || !nearly.To(f.Value.V, want, 0.2) {
			t.Errorf("%s is %+v, want %g", id, f, want)
		}
	}
	rv = review(t, poured(strings.Replace(pail, "1 L", "750 mL", 1), iceWater))
	if v := verdicts(&rv)["vessel.content@pail+brim"]; v != exceeds {
		t.Errorf("800 mL in 750 mL are %v", v)
	}
	full := rv
	rv = review(t, poured(pail, strings.Replace(coldTap, ", temperature: 20 degC", "", 1)))
	for _, id := range []string{"heat.quench.temperature@5", "heat.mtsr@5", "heat.temperature_peak@5",
		"gas.hydrogen.peak_rate.after_addition@5", "heat.peak_power.after_addition@5"} {
		if f := figureOf(&rv, id); f == nil || !f.Value.Unknown() {
			t.Errorf("water of no stated temperature: %s is %+v", id, f)
		}
	}
	for _, id := range []string{"heat.temperature_peak@2", "heat.temperature_peak@3", "heat.mtsr@3",
		"gas.hydrogen.peak_rate.after_addition@3"} { // neither touches what goes before
		f, g := figureOf(&rv, id), figureOf(&full, id)
		if f == nil || g == nil || !nearly.Share(f.Value.V, g.Value.V, 1e-5) || !nearly.Share(f.High().V, g.High().V, 1e-5) {
			t.Errorf("before water of no stated temperature %s is %v, %v before a pail that runs over", id, f, g)
		}
	}
}

// The reaction goes on where it is poured to, as cold as the two come to: powder that the
// hold left gives less gas there than before.
func TestWhatIsQuenchedGoesOnInItsNewVessel(t *testing.T) {
	long.NotShort(t)
	rv := review(t, poured(pail, iceWater))
	n := &rv.Courses[0]
	last := &n.Stages[len(n.Stages)-1]
	if last.Step.Do != "quench" || last.Done.Place != "pail" {
		t.Fatalf("the course ends in step %d, %s", last.Step.Number, last.Done.Place)
	}
	for i := range n.Runs {
		x := &n.Runs[i]
		_, hold := x.Window(3)
		pouring, after := x.Window(5)
		waits := x.Law == vessel.SelfAccelerating // by the other all has reacted in the hold
		if !(after.Gas.Value < 0.5*hold.Gas.Value) || waits && !(after.Gas.Value > 0 && pouring.Gas.Value > after.Gas.Value) {
			t.Errorf("%s: %g mol/s in the hold, %g while it is poured, %g in ice water", x.Law, hold.Gas.Value,
				pouring.Gas.Value, after.Gas.Value)
		}
	}
}

// Ice is the water that it melts to, wherever it is put in.
func TestIceFillsAsTheWaterItMeltsTo(t *testing.T) {
	rv := review(t, head+places+"steps:\n  - {do: charge, in: pot, what: [{substance: ice, mass: 500 g}, "+
		"{substance: hydrofluoric acid, strength: 48 wt%, volume: 100 mL}], temperature: 0 degC}\n")
	if f := figureOf(&rv, "vessel.content@pot"); f == nil || !nearly.To(f.Value.V, 60, 0.5) {
		t.Errorf("500 g of ice and 100 mL in a litre are %+v, want 60 %%", f)
	}
}

// What quenches is cold, but nobody who leaves out how cold gets credit for it: what the
// liquor of 35 degC can come to counts from there on, and from 20 degC where that is stated.
// By hand: 500 mL of water are 2086 J/K beside the liquor, so that all the heat, 19.2 kJ of
// 25.7 mmol at 748 kJ/mol, warms 2.64 kJ/K of both by 7.3 K.
func TestAQuenchWithoutATemperatureIsAsWarmAsItWas(t *testing.T) {
	long.NotShort(t)
	for says, want := range map[string]float64{"": 42.3, ", temperature: 20 degC": 27.3} {
		rv := review(t, head+"precursor: {phase: Ti3AlC2, mass: 5 g, "+pure+`}
places:
  pot: {kind: bottle, material: PTFE, lid_material: PTFE, capacity: 1 L, closure: vented, vent: 8 mm,
    cooling: {kind: water_bath, temperature: 20 degC, ua: 1 W/K}}
steps:
  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 20 wt%, volume: 150 mL}],
     temperature: 20 degC, stirred: true}
  - {do: add, in: pot, what: [precursor], over: 1 h, temperature: 25 degC, stirred: true}
  - {do: hold, in: pot, time: 2 h, temperature: 35 degC, stirred: true}
  - {do: quench, in: pot, what: [{substance: water, volume: 500 mL}], over: 5 min`+says+"}\n")
		if f := figureOf(&rv, "heat.mtsr@4"); f == nil || !nearly.To(f.Value.V, want, 0.3) {
			t.Errorf("%q: %v, by hand %g degC", says, f.Value, want)
		}
	}
}
