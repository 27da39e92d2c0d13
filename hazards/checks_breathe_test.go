package hazards_test

import (
	"math"
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/reports/words"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

// openAcid is a beaker of acid that stands open.
func openAcid(place, charge, steps string) string {
	return "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nplaces:\n  pot: {kind: beaker, " +
		"material: PTFE, " + place + "}\n  drum: {kind: drum, material: HDPE, capacity: 5 L, closure: vented}\nsteps:\n" +
		"  - {do: charge, in: pot, what: [" + charge + "], over: 1 min, temperature: 20 degC}\n" + steps
}

const acid30 = "{substance: hydrofluoric acid, strength: 30 wt%, volume: 100 mL}"

// A purge leaves a vented bottle saturated, as hydrogen does: F p/(P - p_t), by the
// law of gas that bubbles through (vapour carried is the whole emission of a vented
// vessel). Two litres a minute carry twice what one does; a purge nobody measured is
// not known.
func TestAPurgeCarriesVapour(t *testing.T) {
	at := func(flow string) figure.Figure {
		rv := review(t, openAcid("capacity: 250 mL, closure: vented", "{substance: hydrochloric acid, strength: 36 "+
			"wt%, volume: 100 mL}",
			"  - {do: hold, in: pot, time: 60 min, temperature: 25 degC, gas: nitrogen"+flow+"}\n"))
		f := figureOf(&rv, "air.emission@2/hcl")
		if f == nil {
			t.Fatalf("no figure with %q", flow)
		}
		return *f
	}
	// what passes the vent by diffusion is the same with either flow, and little
	one, two := at(", gas_flow: 1 L/min"), at(", gas_flow: 2 L/min")
	rv := review(t, openAcid("capacity: 250 mL, closure: vented", "{substance: hydrochloric acid, strength: 36 "+
		"wt%, volume: 100 mL}", "  - {do: hold, in: pot, time: 60 min, temperature: 25 degC}\n"))
	p := figureOf(&rv, "air.saturated@2/hcl").Value.V * 0.101325e-3 // kPa
	want := 1.0 / 60 / 24.4654 * p / (101.325 - p - 3.17) * 36.461 * 60e3
	if !nearly.Share(one.Value.V, want, 2e-3) || !nearly.To(two.Value.V/one.Value.V, 2, 1e-4) {
		t.Errorf("%g and %g mg/min, want %g and twice that", one.Value.V, two.Value.V, want)
	}
	if f := at(""); !f.Value.Unknown() {
		t.Errorf("a purge without its flow gives %g mg/min", f.Value.V)
	}
}

// Eight hours in one step and in eight are the same eight hours: 0.5 ppm over 480
// min is held against the mean of them all, while each of the eight may have eight
// times as much for itself (29 CFR 1910.1000(d)(1): the time-weighted average of a
// shift). Twelve minutes at a hundred and the rest at nothing is 2.5.
func TestStepsAreAveragedTogether(t *testing.T) {
	hold := func(n int, minutes string) string {
		return strings.Repeat("  - {do: hold, in: pot, time: "+minutes+" min, temperature: 20 degC}\n", n)
	}
	seen := map[string]float64{}
	for name, steps := range map[string]string{"whole": hold(1, "480"), "parted": hold(8, "60")} {
		c := newCase(t, load(t, openAcid("capacity: 250 mL, closure: open", acid30, steps)))
		c.Brief, c.Site = true, demoSite(t)
		c.Site.Hood = nil
		rv := must(t, c)
		f := figureOf(&rv, "air.time_average/hf:over_480_min")
		if f == nil {
			t.Fatal("no average over the steps")
		}
		seen[name] = f.High().V
		worst := figure.Within
		for i := range rv.Findings {
			if x := &rv.Findings[i]; x.Figure == f.ID {
				worst = max(worst, x.Verdict)
			}
		}
		if worst != figure.Exceeds {
			t.Errorf("%s: the average of %g ppm is %v", name, f.High().V, worst)
		}
	}
	if !nearly.Share(seen["whole"], seen["parted"], 1e-6) {
		t.Errorf("%v: the same eight hours", seen)
	}
}

// A tube that breaks in the first spin of a wash holds the liquor before the wash,
// and a step that dilutes or neutralises opens what stood there before it.
func TestWhatAStepFindsCounts(t *testing.T) {
	for _, x := range []struct{ name, place, steps, id string }{
		{"wash in tubes", "capacity: 250 mL, closure: closed", "  - {do: wash, in: pot, into: drum, what: " +
			"[{substance: water, volume: 100 mL}], cycles: 3, temperature: 20 degC}\n", "air.emission@2/hf"},
		{"neutralised", "capacity: 250 mL, closure: open", "  - {do: neutralise, in: pot, what: [{substance: calcium " +
			"hydroxide, mass: 100 g}], over: 30 min, temperature: 20 degC}\n", "air.emission@2/hf"},
		{"into a shut tube", "capacity: 250 mL, closure: closed", "  - {do: redisperse, in: pot, what: [{substance: " +
			"water, volume: 100 mL}], temperature: 20 degC}\n", "air.emission@2/hf"},
	} {
		yaml := openAcid(x.place, acid30, x.steps)
		if x.name == "wash in tubes" {
			yaml = strings.Replace(yaml, "kind: beaker", "kind: tube, count: 1", 1)
		}
		rv := review(t, yaml)
		f, before := figureOf(&rv, x.id), figureOf(&rv, "air.emission@1/hf")
		if f == nil || !(f.Value.V >= before.Value.V*(1-1e-9)) {
			t.Errorf("%s: %+v, and %g mg/min before", x.name, f, before.Value.V)
		}
	}
}

// A tray is a pan 5 cm deep, and how wide a vessel without a capacity is nobody
// knows, however many there are.
func TestSurfaces(t *testing.T) {
	charge := func(place string) figure.Figure {
		rv := review(t, openAcid(place, acid30, ""))
		return *figureOf(&rv, "air.emission@1/hf")
	}
	tray := strings.Replace(openAcid("capacity: 10 L, closure: open", acid30, ""), "kind: beaker", "kind: tray", 1)
	rv := review(t, tray)
	pan, pot := figureOf(&rv, "air.emission@1/hf").Value.V, charge("capacity: 10 L, closure: open").Value.V
	if area := 10e-3 / 0.05; !(pan >= pot*area/(math.Pi/4*math.Pow(4*10e-3/math.Pi, 2.0/3))) {
		t.Errorf("a tray gives off %g mg/min, a pot of its capacity %g", pan, pot)
	}
	for _, place := range []string{"closure: open", "closure: open, count: 4"} {
		if f := charge(place); !f.Value.Unknown() {
			t.Errorf("%s: %g mg/min", place, f.Value.V)
		}
	}
}

// A stack counts by its height at best and not at all at worst, and nowhere is
// there more than where the figure looks.
func TestAStackIsNoBarrier(t *testing.T) {
	at := func(height float64) figure.Figure {
		c := newCase(t, load(t, openAcid("capacity: 250 mL, closure: open", acid30, "")))
		c.Brief, c.Site = true, demoSite(t)
		if height > 0 {
			c.Site.Hood.Stack = quantity.Of(height, "m")
		}
		rv := must(t, c)
		return *figureOf(&rv, "air.plume@stack/hf")
	}
	none, high := at(0), at(12)
	if !(high.High().V >= none.High().V*(1-1e-6)) ||
		!(high.Value.V < none.Value.V && high.Value.V >= none.Value.V*1e-3) {
		t.Errorf("12 m: %g (to %g) ppm, from the ground %g (to %g)", high.Value.V, high.High().V, none.Value.V, none.High().V)
	}
}

// The level of a route that does not say how long a step lasts is that of the
// longest time tabled.
func TestTheLevelOfAStepWithoutATime(t *testing.T) {
	level := func(yaml string) float64 {
		rv := review(t, yaml)
		for i := range rv.Findings {
			if f := &rv.Findings[i]; f.Figure.String() == "air.plume@stack/hf" {
				return f.Limit.Value
			}
		}
		return math.NaN()
	}
	said := openAcid("capacity: 250 mL, closure: open", acid30, "")
	if a, b := level(said), level(strings.Replace(said, "over: 1 min, ", "", 1)); a != 95 || b != 12 {
		t.Errorf("AEGL-2 of %g and %g ppm, want 95 for ten minutes and 12 for eight hours", a, b)
	}
}

// Ammonia that base sets free is breathed: bifluoride made alkaline has every
// figure of the air.
func TestAmmoniaIsBreathed(t *testing.T) {
	rv := review(t, openAcid("capacity: 250 mL, closure: open", "{substance: ammonia, strength: 28 wt%, volume: "+
		"100 mL}", ""))
	for _, id := range []string{"air.emission@1/ammonia", "air.breathing_zone@1/ammonia"} {
		f := figureOf(&rv, id)
		if f == nil || strings.Contains(strings.Join(words.Names(f.Value.Missing()), " "), "NH3") {
			t.Errorf("%s: %+v", id, f)
		}
	}
	if f := figureOf(&rv, "air.emission@1/ammonia"); !(f.Value.V > 0) {
		t.Errorf("%+v", f)
	}
}

// Bifluoride in water leaves 0.25, 0.39 and 0.60 mol/kg of HF free at 0.5, 1 and 2,
// by K = 3.9 (an encyclopaedia entry that was read), which stand at 19, 30 and 45 ppm over it at 25 degC; at
// the dangerous end half of all its fluoride counts. With an acid all of it does.
func TestVapourOverABifluoride(t *testing.T) {
	ppm := func(what string) figure.Figure {
		rv := review(t, openAcid("capacity: 2 L, closure: open", "{substance: water, mass: 1000 g}, "+what,
			"  - {do: hold, in: pot, time: 10 min, temperature: 25 degC}\n"))
		return *figureOf(&rv, "air.saturated@2/hf")
	}
	for grams, want := range map[string][2]float64{"28.52 g": {19, 38}, "57.04 g": {30, 76}, "114.1 g": {45, 152}} {
		f := ppm("{substance: ammonium bifluoride, mass: " + grams + "}")
		if !nearly.Share(f.Value.V, want[0], 0.03) || !nearly.Share(f.High().V, want[1], 0.03) {
			t.Errorf("%s: %g (to %g) ppm, want %g (to %g)", grams, f.Value.V, f.High().V, want[0], want[1])
		}
	}
	if f := ppm("{substance: ammonium bifluoride, mass: 57.04 g}, {substance: hydrochloric acid, strength: 36 wt%, " +
		"volume: 100 mL}"); !(f.Value.V >= 150*1.85/2) {
		t.Errorf("with a strong acid %g ppm, want 150 for 2 mol/kg of HF or more; 1.85 here", f.Value.V)
	}
}

// What a step pours to is looked at as what it leaves: lithium fluoride poured to
// acid is acid there, and liquor found hot is hot until it is cooled.
func TestWhatIsPouredTo(t *testing.T) {
	long.NotShort(t)
	two := "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nplaces:\n  a: {kind: beaker, capacity: " +
		"500 mL, closure: open}\n  b: {kind: beaker, capacity: 1 L, closure: open}\nsteps:\n" +
		"  - {do: charge, in: a, what: [{substance: lithium fluoride, mass: 20 g}, {substance: water, volume: 100 " +
		"mL}], temperature: 20 degC}\n" +
		"  - {do: charge, in: b, what: [{substance: hydrochloric acid, strength: 36 wt%, volume: 200 mL}], " +
		"temperature: 20 degC}\n" +
		"  - {do: transfer, in: a, into: b}\n"
	rv := review(t, two)
	after := review(t, two+"  - {do: hold, in: b, time: 1 h, temperature: 20 degC}\n")
	for _, id := range []string{"air.saturated@3/hf", "air.emission@3/hf", "air.room_peak@spill/hf"} {
		if f := figureOf(&rv, id); f == nil {
			t.Errorf("no %s", id)
		}
	}
	if a, b := figureOf(&rv, "air.saturated@3/hf"), figureOf(&after, "air.saturated@4/hf"); a != nil &&
		!nearly.Share(a.Value.V, b.Value.V, 1e-9) {
		t.Errorf("%g ppm where it is poured to and %g once it stands there", a.Value.V, b.Value.V)
	}
	wash := func(celsius string) float64 {
		rv := review(t, strings.Replace(openAcid("capacity: 250 mL, closure: closed", acid30, "  - {do: hold, in: "+
			"pot, time: 1 h, temperature: 50 degC}\n"+
			"  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 100 mL}], cycles: 3, temperature: "+celsius+
			"}\n"), "kind: beaker", "kind: tube, count: 1", 1))
		return figureOf(&rv, "air.emission@3/hf").Value.V
	}
	if hot, cold := wash("50 degC"), wash("2 degC"); !(cold >= hot*(1-1e-9)) {
		t.Errorf("%g mg/min set cold, %g set hot: it was hot before", cold, hot)
	}
}

// Tubes are spun in every wash, and a gas is a purge unless it is air or none.
func TestTubesAndPurges(t *testing.T) {
	long.NotShort(t)
	tube := func(verb string) float64 {
		rv := review(t, strings.Replace(openAcid("capacity: 250 mL, closure: closed", acid30,
			"  - {do: "+verb+", in: pot, into: drum, what: [{substance: water, volume: 100 mL}], cycles: 1, temperature: "+
				"20 degC}\n"), "kind: beaker", "kind: tube, count: 1", 1))
		return figureOf(&rv, "air.emission@2/hf").Value.V
	}
	if a, b, c := tube("wash"), tube("prewash"), tube("exchange"); !nearly.Share(b, a, 1e-9) || !nearly.Share(c, a, 1e-9) {
		t.Errorf("a tube that breaks gives %g, %g and %g mg/min", a, b, c)
	}
	for gas, unknown := range map[string]bool{"nitrogen": true, "dry nitrogen from an airtight line": true,
		"argon (air grade)": true, "air": false, "compressed air": false, "none": false} {
		c := newCase(t, load(t, openAcid("capacity: 250 mL, closure: vented", acid30, "  - {do: hold, in: pot, time: "+
			"1 h, temperature: 20 degC, gas: "+gas+"}\n")))
		c.Brief, c.Site = true, demoSite(t)
		rv := must(t, c)
		f := figureOf(&rv, "air.oxygen@room")
		if got := f != nil && f.Value.Unknown(); got != unknown {
			t.Errorf("%s without a flow: %+v", gas, f)
		}
	}
}

// Twenty amperes for an hour give 20 x 3600/(2 x 96485) mol of hydrogen, 0.104
// mmol/s (Faraday's law), and half as much oxygen, and both leave saturated.
func TestACurrentCarriesVapour(t *testing.T) {
	rv := review(t, "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nprecursor: {phase: Ti3AlC2, "+
		"mass: 1 g, "+pure+"}\nplaces:\n  cell: {kind: cell, capacity: 500 mL, closure: vented, vent: 6 mm}\nsteps:\n"+
		"  - {do: charge, in: cell, what: [precursor, {substance: hydrochloric acid, strength: 30 wt%, volume: 200 "+
		"mL}], temperature: 25 degC}\n"+
		"  - {do: electrolyse, in: cell, current: 20 A, time: 1 h, temperature: 25 degC}\n")
	f := figureOf(&rv, "air.emission@2/hcl")
	if f == nil {
		t.Fatal("nothing leaves")
	}
	p := figureOf(&rv, "air.saturated@2/hcl").Value.V * 0.101325e-3
	want := 1.5 * 20 / (2 * 96485.33) * p / (101.325 - p - 3.17) * 36.461 * 60e3
	if !nearly.Share(f.Value.V, want, 0.01) {
		t.Errorf("%g mg/min, want %g", f.Value.V, want)
	}
}

// A liquor that stands just at a limit has one verdict at every batch, and a kept
// vessel that does not hold its liquor says nothing of how it is cooled.
func TestOneVerdictAtEveryBatch(t *testing.T) {
	long.Only(t)
	set, problems, err := limit.Load("house.yaml", strings.NewReader("limits: etchbound/1\ntitle: "+
		"House\nentries:\n  - {id: house, quantity: fluoride.hf_strength, value: 40 wt%, document: House rules}\n"),
		figure.Units{})
	if err != nil || set == nil {
		t.Fatal(problems, err)
	}
	r := load(t, strings.Replace(strings.Replace(inIce("10 g", "200 mL", "2 W/K"), "10 wt%", "40 wt%", 1),
		"closure: vented,", "closure: vented, capacity: 2 L, keep: true,", 1))
	seen := map[figure.Verdict]bool{}
	for _, grams := range long.Some([]float64{0.5, 1, 2, 3, 7, 13, 50, 97.99, 100}, 5, 2) {
		c := newCase(t, r.Scaled(quantity.Of(grams, "g", quantity.Mass)))
		c.Brief, c.Limits = true, limit.Base().With(set)
		rv := must(t, c)
		for i := range rv.Findings {
			if f := &rv.Findings[i]; f.Limit.ID == "house" {
				seen[f.Verdict] = true
			}
		}
	}
	if len(seen) != 1 {
		t.Errorf("%v", seen)
	}
	for grams, unknown := range map[float64]bool{50: false, 150: true} {
		walled := strings.Replace(strings.Replace(inIce("10 g", "200 mL", "2 W/K"), ", ua: 2 W/K", "", 1),
			"closure: vented,", "closure: vented, capacity: 2 L, keep: true,", 1)
		rv := must(t, newCase(t, load(t, walled).Scaled(quantity.Of(grams, "g", quantity.Mass))))
		if f := figureOf(&rv, "heat.addition_time.required@2"); f.Value.Unknown() != unknown {
			t.Errorf("%g g in 2 L: %+v", grams, f)
		}
	}
}
