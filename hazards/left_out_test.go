package hazards_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

// How often and how far a route washes, and how many tubes share its liquor, are
// facts like any other: leaving one out leaves its finding and does not help.
func TestWhatAWashLeavesOutStaysAFinding(t *testing.T) {
	long.NotShort(t)
	const id = "wash.cycles@3+written_cycles"
	etched := head + "precursor: {phase: Ti3AlC2, mass: 1 g, " + pure + "}\n" + places +
		"steps:\n" + charges(hf10) + addsIt
	wash := func(keys string) string {
		return etched + "  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 100 mL}], " +
			"water: co2_free, temperature: 20 degC" + keys + "}\n"
	}
	for _, c := range []struct {
		name, keys string
		want       figure.Verdict
	}{
		{"both are stated", ", cycles: 20, target_ph: 5", figure.Within},
		{"no number of cycles", ", target_ph: 5", figure.UnknownVerdict},
		{"no target", ", cycles: 20", figure.UnknownVerdict},
	} {
		rv := review(t, wash(c.keys))
		if got, there := verdicts(&rv)[id]; !there || got != c.want {
			t.Errorf("%s: %v (there: %v), want %v", c.name, got, there, c.want)
		}
	}
}

// Powder of which nobody says what it retains can hold all of a little liquor, and what is
// decanted from it is not known to be nothing: 4 g hold 20 mL at 5 mL/g.
func TestWhatIsDecantedIsNotNothing(t *testing.T) {
	long.NotShort(t)
	parts := func(keys string) string {
		return etches("phase: Ti3AlC2, mass: 4 g, "+pure, hf10) + "  - {do: decant, in: pot, into: drum" + keys + "}\n"
	}
	full, bare := review(t, parts(", retained: 2 mL/g")), review(t, parts(""))
	notBetter(t, &full, &bare, "without retained")
	if v := verdicts(&bare)["vessel.content@drum+brim"]; v != figure.UnknownVerdict {
		t.Errorf("the drum is %v", v)
	}
}

// More liquor than its containers hold has a surface that nobody knows.
func TestLiquorThatFindsNoRoomHasNoKnownSurface(t *testing.T) {
	long.NotShort(t)
	pot := func(capacity string) string {
		return head + "precursor: {phase: Ti3AlC2, mass: 1 g, " + pure + "}\nplaces:\n  pot: {kind: beaker, " +
			"material: PTFE, closure: open, capacity: " + capacity + "}\nsteps:\n" + charges(hf10) + addsIt
	}
	for capacity, known := range map[string]bool{"50 mL": true, "5 mL": false} {
		rv := review(t, pot(capacity))
		f := figureOf(&rv, "air.emission@1/hf")
		if f == nil || f.Value.Unknown() == known {
			t.Errorf("10 mL of acid in %s: %v", capacity, f)
		}
	}
}

// How a vessel is shut, left out, never lets less into the air than any way that can be
// stated, at no end of the range.
func TestAClosureLeftOutLetsOutAsMuchAsAny(t *testing.T) {
	long.NotShort(t)
	emission := func(closure string) (low, high float64) {
		rv := review(t, head+"precursor: {phase: Ti3AlC2, mass: 10 g, "+pure+"}\nplaces:\n  pot: {kind: beaker, "+
			"material: PTFE, capacity: 250 mL"+closure+"}\nsteps:\n"+
			charges("{substance: hydrofluoric acid, strength: 10 wt%, volume: 100 mL}")+addsIt+
			"  - {do: hold, in: pot, time: 2 h, temperature: 25 degC}\n")
		f := figureOf(&rv, "air.emission@3/hf")
		if f == nil {
			t.Fatalf("no emission of the hold with %q", closure)
		}
		return f.Low().V, f.High().V
	}
	low, high := emission("")
	for _, closure := range []string{", closure: open", ", closure: vented"} {
		l, h := emission(closure)
		if !(low >= l) || !(high >= h) {
			t.Errorf("left out %g to %g mg/min, with%s %g to %g", low, high, closure, l, h)
		}
	}
}

// A bath without its temperature says nothing of what it takes, colder or warmer; how
// many tubes share a liquor says how large its surface is.
func TestABathAndTubesLeftOutAreUnknown(t *testing.T) {
	long.Only(t)
	route := func(place string) string {
		return head + "precursor: {phase: Ti3AlC2, mass: 1 g, " + pure + "}\nplaces:\n  pot: {material: PTFE, " +
			"capacity: 50 mL, closure: vented, " + place + "}\nsteps:\n" + charges(hf10) + addsIt
	}
	for _, c := range []struct {
		name, place, id string
		known           bool
	}{
		{"a stated bath", "kind: bottle, cooling: {kind: water_bath, temperature: 20 degC}",
			"heat.temperature_peak@2:instantaneous", true},
		{"a bath alone", "kind: bottle, cooling: {kind: water_bath}", "heat.temperature_peak@2:instantaneous", false},
		{"ice of a stated mass", "kind: bottle, cooling: {kind: ice_bath, ice: 1 kg}",
			"heat.temperature_peak@2:instantaneous", true},
		{"ice", "kind: bottle, cooling: {kind: ice_bath}", "heat.temperature_peak@2:instantaneous", false},
		{"four tubes", "kind: tube, count: 4", "air.emission@1/hf", true},
		{"tubes", "kind: tube", "air.emission@1/hf", false},
	} {
		rv := review(t, route(c.place))
		f := figureOf(&rv, c.id)
		if f == nil || f.Value.Unknown() == c.known {
			t.Errorf("%s: %s is %v", c.name, c.id, f)
		}
	}
}

// warmIce etches 26 g in a bath of ice that is above its melting point; acidTube shuts acid and
// peroxide in a tube of which nobody says what it is made of.
const (
	warmIce = head + "precursor: {phase: Ti2AlC, mass: 26 g}\nplaces: {pot: {kind: beaker, material: HDPE, wall: " +
		"0.672 mm, capacity: 584.9 mL, closure: closed, rating: 400 kPa, relief: 200 kPa, stirrer_heat: 130 mW, cooling: " +
		"{kind: ice_bath, ice: 0.114 kg, ua: 1.539 W/K, temperature: 4 degC}}}\nsteps:\n  - {do: charge, in: pot, what: " +
		"[{substance: hydrofluoric acid, strength: 47.593 wt%, volume: 130 mL}], temperature: 4 degC}\n  - {do: add, in: " +
		"pot, what: [precursor], over: 7.612 min, temperature: 4 degC}\n  - {do: hold, in: pot, time: 438.84 min, " +
		"temperature: 6 degC}\n  - {do: hold, in: pot, time: 60 min, temperature: 8 degC}\n"
	acidTube = head + "places:\n  pot: {kind: vessel, closure: open}\n  tube: {kind: vessel, capacity: 20 mL, rating: " +
		"50 kPa, relief: 40 kPa}\nsteps:\n  - {do: charge, in: pot, what: [{substance: nitric acid, strength: 8 wt%, " +
		"volume: 4 mL}, {substance: hydrogen peroxide, strength: 6 wt%, volume: 6 mL}], temperature: 20 degC}\n" +
		"  - {do: transfer, in: pot, into: tube}\n"
)

// The time of a step that cools, the line of a vent and the pH a wash is to reach are
// facts of a route: a text with one of them struck out is never the milder one.
func TestAFactStruckOutOfAStepIsNeverMilder(t *testing.T) {
	long.Only(t)
	for _, c := range []struct{ route, after, fact string }{
		{"bifluoride-1g.yaml", "do: cool\n    in: etch", "\n    time: 30 min"},
		{"reactor-50g.yaml", "vent: 6 mm # assumed, with what follows it", "\n    vent_line: 2 m"},
		{"mo2tialc2-hf-2g.yaml", "cycles: 8", "\n    target_ph: 6"},
		{acidTube, "rating: 50 kPa", ", relief: 40 kPa"},
		{warmIce, "ua: 1.539 W/K", ", temperature: 4 degC"}, // colder ice lets more of the powder wait
	} {
		text, isOf := bundledTexts(t)[c.route]
		if !isOf {
			text = c.route
		}
		said := strings.Replace(text, c.after+c.fact, c.after, 1)
		if said == text {
			t.Fatalf("%s does not say %q", c.route, c.fact)
		}
		full, bare, holds := review(t, text), review(t, said), neverBetter
		if !isOf { // its limit goes with what is struck out
			holds = notBetter
		}
		holds(t, &full, &bare, c.route+" without"+c.fact)
	}
}

// Carbonate that may meet acid stops work as carbonate that does: who shuts what may give gas
// is told so, though nobody knows how much.
func TestCarbonateBesideWhatIsNotHeldMayGiveGas(t *testing.T) {
	long.NotShort(t)
	const acid, soda = "{substance: hydrochloric acid, strength: 10 wt%, volume: 20 mL}", "{substance: sodium carbonate, "
	const strange = "not_held: true, "
	for _, c := range [][2]string{{acid, soda}, {"{substance: acid of the shelf, " + strange + "volume: 20 mL}", soda},
		{acid, "{substance: soda of the shelf, " + strange}, {acid, "{substance: soda, " + strange + "formula: Na2CO3, "}} {
		rv := reviewed(t, head+places+"steps:\n"+charges(c[0])+"  - {do: neutralise, in: pot, what: ["+c[1]+
			"mass: 10 g}], temperature: 20 degC, over: 10 min}\n", true)
		if !slices.ContainsFunc(rv.Holds, func(h hazards.Hold) bool { return h.ID == "carbon_dioxide" }) {
			t.Errorf("%v: nothing says that it gives gas", c)
		}
	}
}

// Oxygen of a room of which the gas of something not held is a part is not known, and stops work
// as too little of it does: 10 L of liquid nitrogen let out, and an acid that nobody knows.
func TestOxygenBesideWhatIsNotHeldStopsWork(t *testing.T) {
	long.NotShort(t)
	const strange = "{substance: zorblium, not_held: true, volume: 10 mL"
	for _, acid := range []string{hf10, strange + "}",
		strange + ", formula: HCl}, {substance: sodium carbonate, mass: 1 g}"} {
		c := newCase(t, load(t, bottle(acid)))
		c.Brief, c.Site = true, fullSite(t)
		rv := must(t, c)
		if !holdsAt(&rv, "oxygen") {
			t.Errorf("%s: nothing says that the room may lack oxygen", acid)
		}
	}
}

// A stirrer of which nobody states how much it heats is as bad as one of 1 W/L, kW/m3, at the
// dangerous end in 20 L that nothing cools: D = (4 0.02/pi)^(1/3) = 0.294 m, 5 V/D = 0.34 m2 of
// still air at 5 W/m2/K take 20 W at 11.8 K. In 0.2 L it warms at most 2.5 K, and is left out.
func TestAStirrerOfNoStatedHeatIsAsBadAsAny(t *testing.T) {
	long.NotShort(t)
	const id = "heat.temperature_peak@3:self_accelerating"
	stirs := func(litres, heat string) (*hazards.Review, *figure.Figure) {
		rv := review(t, head+"precursor: {phase: Ti3AlC2, mass: 1 g, "+pure+"}\nplaces:\n  pot: {kind: vessel, material: "+
			"HDPE, capacity: 30 L, closure: vented, cooling: {kind: none}"+heat+"}\nsteps:\n"+
			charges("{substance: hydrofluoric acid, strength: 10 wt%, volume: "+litres+" L}")+addsIt+
			"  - {do: hold, in: pot, time: 24 h, temperature: 25 degC, stirred: true}\n")
		return &rv, figureOf(&rv, id)
	}
	full, stated := stirs("20", ", stirrer_heat: 20 W")
	bare, left := stirs("20", "")
	notBetter(t, full, bare, "without stirrer_heat")
	if stated == nil || left == nil || !(left.High().V >= stated.High().V-1e-6) || !(left.High().V > left.Value.V+5) {
		t.Errorf("stated to %+v, left out to %+v", stated.High(), left.High())
	}
	_, little := stirs("0.2", "")
	if little == nil || !strings.Contains(words.Say(little.Conditions), "no heat of a stirrer counted") {
		t.Errorf("little liquor does not say that its stirrer is left out: %+v", little)
	}
}
