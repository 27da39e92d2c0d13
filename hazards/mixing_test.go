package hazards_test

import (
	"math"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// Heat of solution is a function of state: however the same acid and water come
// together, the heats of all steps add up to the same (law of constant heat
// summation). Nothing is let go here; the last state is the same in each.
func TestHeatOfMixingDoesNotDependOnTheWay(t *testing.T) {
	const head = "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nprecursor: {phase: Ti3AlC2, mass: 1 g}\n" +
		"places:\n  pot: {kind: vessel}\n  tube: {kind: vessel}\nsteps:\n"
	const tail = "  - {do: add, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 mL}], " +
		"over: 1 min, temperature: 20 degC}\n" +
		"  - {do: add, in: pot, what: [precursor], over: 1 min, temperature: 20 degC}\n"
	const acid, half = "{substance: hydrochloric acid, strength: 36 wt%, volume: 20 mL}",
		"{substance: hydrochloric acid, strength: 36 wt%, volume: 10 mL}"
	const water = "{substance: water, volume: 100 mL}"
	step := func(do, in, what string) string {
		return "  - {do: " + do + ", in: " + in + ", what: [" + what + "], temperature: 20 degC}\n"
	}
	ways := []struct{ name, steps string }{
		{"acid, then water", step("charge", "pot", acid) + step("dilute", "pot", water)},
		{"acid in two lots, then water", step("charge", "pot", half) + step("mix", "pot", half) + step("dilute", "pot",
			water)},
		{"two lots in one step, then water", step("charge", "pot", half+", "+half) + step("dilute", "pot", water)},
		{"half the acid from another vessel, then water", step("charge", "pot", half) + step("charge", "tube", half) +
			"  - {do: transfer, in: tube, into: pot}\n" + step("dilute", "pot", water)},
		{"acid from another vessel into water", step("charge", "tube", acid) + step("charge", "pot", water) +
			"  - {do: transfer, in: tube, into: pot}\n"},
		{"water from another vessel into acid", step("charge", "pot", acid) + step("charge", "tube", water) +
			"  - {do: transfer, in: tube, into: pot}\n"},
		{"in two parts", step("charge", "tube", acid) + step("charge", "pot", water) + "  - {do: transfer, in: tube, " +
			"into: pot, part: 40 %}\n  - {do: transfer, in: tube, into: pot}\n"},
		{"water from between, then acid", step("charge", "pot", half) + step("dilute", "pot", water) + step("mix", "pot",
			half)},
	}
	want := math.NaN()
	for _, w := range ways {
		f := byID(assess(t, head+w.steps+tail).Figures)["heat.mix.total"]
		if f == nil || !(f.Value.V > 1) {
			t.Fatalf("%s: heat of mixing %v kJ", w.name, f)
		}
		if math.IsNaN(want) {
			want = f.Value.V
		}
		if !nearly.Share(f.Value.V, want, 1e-9) {
			t.Errorf("%s: %v kJ, and %v kJ %s", w.name, f.Value.V, want, ways[0].name)
		}
	}
}

// A solid that is dry gives off nothing when it is dried again.
func TestDryingTwiceTakesNothingMore(t *testing.T) {
	long.NotShort(t)
	const once = "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nprecursor: {phase: Ti3AlC2, mass: 1 g}\n" +
		"places:\n  pot: {kind: vessel}\n  tube: {kind: vessel}\nsteps:\n" +
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 1 wt%, volume: 1 mL}], " +
		"temperature: 20 degC}\n" +
		"  - {do: dry, in: pot, temperature: 20 degC}\n"
	const again = "  - {do: dry, in: pot, temperature: 20 degC}\n"
	const end = "  - {do: mix, in: pot, what: [{substance: water, volume: 10 mL}], temperature: 20 degC}\n" +
		"  - {do: add, in: pot, what: [precursor], over: 1 min, temperature: 20 degC}\n"
	one, two := byID(review(t, once+end).Figures), byID(review(t, once+again+end).Figures)
	for _, id := range []string{"fluoride.hf_strength", "fluoride.hf_concentration", "fluoride.total",
		"heat.adiabatic_rise"} {
		a, b := one[id], two[id]
		if a == nil || b == nil || !(a.Value.V > 0) || !nearly.Share(b.Value.V, a.Value.V, 1e-12) {
			t.Errorf("%s: %v, and %v when dried twice", id, a, b)
		}
	}
}

// Where nobody knows how often a solid is washed, nobody knows what the vessel
// that takes the liquor holds, nor what neutralises it; the sum over the route
// still counts every gram once.
func TestUnknownWashingLeavesItsLiquorUnknown(t *testing.T) {
	long.NotShort(t)
	const head = "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nprecursor: {phase: Ti2AlC, mass: 4 " +
		"g, impurities: none (invented)}\n" +
		"places:\n  beaker: {kind: beaker, capacity: 250 mL, closure: open}\n  drum: {kind: drum, capacity: 30 L, " +
		"closure: vented}\nsteps:\n" +
		"  - {do: charge, in: drum, what: [{substance: water, volume: 2 L}], temperature: 20 degC}\n" +
		"  - {do: charge, in: beaker, what: [{substance: hydrofluoric acid, strength: 20 wt%, volume: 60 mL}], " +
		"temperature: 20 degC}\n" +
		"  - {do: add, in: beaker, what: [precursor], over: 20 min, temperature: 25 degC}\n" +
		"  - {do: centrifuge, in: beaker, into: drum}\n"
	const tail = "  - {do: neutralise, in: drum, what: [{substance: calcium hydroxide, mass: 40 g}], temperature: " +
		"20 degC}\n"
	const wash = "  - {do: wash, in: beaker, into: drum, what: [{substance: water, volume: 100 mL}], target_ph: 6%s}\n"
	open := byID(review(t, head+strings.Replace(wash, "%s", "", 1)+tail).Figures)
	boiled := byID(review(t, head+strings.Replace(wash, "%s", ", water: co2_free", 1)+tail).Figures)
	for _, id := range []string{"neutralise.mass@6/calcium_hydroxide", "neutralise.heat@6/calcium_hydroxide",
		"wash.fluoride@5"} {
		if f := boiled[id]; f == nil || f.Value.Unknown() {
			t.Errorf("%s with water free of carbon dioxide: %v", id, f)
		}
		if f := open[id]; f == nil || !f.Value.Unknown() {
			t.Errorf("%s with water that met air, which never reaches pH 6: %v", id, f)
		}
	}
	for _, id := range []string{"fluoride.total", "fluoride.hf_equivalent", "fluoride.hf_concentration",
		"fluoride.hf_strength"} {
		at, all := open[id+"@6"], open[id+"@2"] // all of the fluoride was charged in step 2
		if at == nil || at.Value.Status != working.Bound || !nearly.Share(at.Value.V, all.Value.V, 1e-9) {
			t.Errorf("%s@6: %v, want the bound of step 2, %v", id, at, all)
		}
	}
	const sum = "neutralise.mass@waste/calcium_hydroxide"
	if a, b := open[sum], boiled[sum]; a == nil || b == nil || !(a.Danger().V >= b.Danger().V*(1-1e-9)) {
		t.Errorf("%s: %v where the washing is unknown, and %v", sum, a, b)
	}
}

const threePlaces = "route: etchbound/1\ntitle: check\nbasis: {status: invented}\n%s" +
	"places:\n  pot: {kind: bottle, capacity: 500 mL, closure: open}\n  tube: {kind: tube, capacity: 500 mL, " +
	"closure: closed}\n  drum: {kind: drum, capacity: 5 L, closure: closed}\nsteps:\n"

// routeOf is the beginning of a route of 2 g of a phase with what is said of it.
func routeOf(precursor string) string {
	return strings.Replace(threePlaces, "%s", "precursor: {"+precursor+"}\n", 1)
}

// What happened in a step is not changed by what is done after it; what a failure would do,
// such as another acid poured, can be.
func TestLaterStepsDoNotChangeEarlierOnes(t *testing.T) {
	first := routeOf("phase: Ti3AlC2, mass: 2 g") +
		"  - {do: charge, in: pot, what: [{substance: hydrochloric acid, strength: 12 mol/L, volume: 50 mL}], " +
		"temperature: 60 degC}\n" +
		"  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 60 degC}\n"
	later := "  - {do: dilute, in: pot, what: [{substance: water, volume: 400 mL}, {substance: hydrochloric acid, " +
		"strength: 1 mol/L, volume: 10 mL}], temperature: 25 degC}\n"
	before, after := byID(review(t, first).Figures), byID(review(t, first+later).Figures)
	for id, f := range before {
		if g := after[id]; strings.HasSuffix(id, "@2") && f.Of().Case.Failure == "" &&
			(g == nil || !same(g.Value.V, f.Value.V) || !same(g.Low().V, f.Low().V) || !same(g.High().V, f.High().V)) {
			t.Errorf("%s: %v, and %v with a later step", id, f, g)
		}
	}
}

const hf50 = "[{substance: hydrofluoric acid, strength: 50 wt%, volume: 100 mL}]"

// Parts of a powder that come together again are etched together.
func TestPartsOfThePowderAreEtchedTogether(t *testing.T) {
	long.NotShort(t)
	start := routeOf("phase: Ti3AlC2, mass: 2 g") +
		"  - {do: charge, in: pot, what: [precursor, {substance: water, volume: 10 mL}], temperature: 25 degC}\n" +
		"  - {do: charge, in: tube, what: " + hf50 + ", temperature: 25 degC}\n"
	whole := byID(review(t, start+"  - {do: transfer, in: pot, into: drum}\n  - {do: transfer, in: drum, into: "+
		"tube}\n").Figures)
	parts := byID(review(t, start+"  - {do: transfer, in: pot, into: drum, part: 50 %}\n  - {do: transfer, in: "+
		"pot, into: drum}\n  - {do: transfer, in: drum, into: tube}\n").Figures)
	for _, id := range []string{"gas.hydrogen.total", "heat.etch.total", "gas.closed.pressure"} {
		a, b := whole[id], parts[id]
		if a == nil || b == nil || !(a.Value.V > 0) || !nearly.Share(b.Value.V, a.Value.V, 1e-9) ||
			!nearly.Share(b.High().V, a.High().V, 1e-9) {
			t.Errorf("%s: %v, and %v in parts", id, a, b)
		}
	}
}

// Acid that comes into a neutralised drum is waste again.
func TestAcidAfterNeutralisingIsWaste(t *testing.T) {
	long.NotShort(t)
	etch := "  - {do: charge, in: pot, what: " + hf50 + ", temperature: 25 degC}\n" +
		"  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 25 degC}\n" +
		"  - {do: filter, in: pot, into: drum}\n"
	drum := "  - {do: charge, in: drum, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 5 mL}], " +
		"temperature: 25 degC}\n"
	const base = "  - {do: neutralise, in: drum, what: [{substance: calcium hydroxide, mass: 0.96 g}], " +
		"temperature: 25 degC}\n"
	const id = "neutralise.mass@waste/calcium_hydroxide"
	one := byID(review(t, routeOf("phase: Ti3AlC2, mass: 2 g")+drum+etch).Figures)[id]
	two := byID(review(t, routeOf("phase: Ti3AlC2, mass: 2 g")+drum+base+etch).Figures)[id]
	if one == nil || two == nil || !(two.Danger().V >= one.Danger().V*0.99) {
		t.Errorf("%s: %v, and %v where the drum was neutralised before", id, one, two)
	}
}

// Acid that is filtered into a shut drum of carbonate frees its gas there:
// 2 HF + Na2CO3 gives one CO2, whatever the verb.
func TestCarbonateGivesItsGasWhateverTheVerb(t *testing.T) {
	long.NotShort(t)
	for _, do := range []string{"filter", "decant", "centrifuge", "transfer"} {
		f := byID(review(t, routeOf("phase: Ti3AlC2, mass: 2 g")+
			"  - {do: charge, in: drum, what: [{substance: water, volume: 500 mL}, {substance: sodium carbonate, mass: "+
			"300 g}], temperature: 25 degC}\n"+
			"  - {do: charge, in: pot, what: "+hf50+", temperature: 25 degC}\n"+
			"  - {do: "+do+", in: pot, into: drum}\n"+
			"  - {do: charge, in: pot, what: "+hf50+", temperature: 25 degC}\n"+
			"  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 25 degC}\n").Figures)
		// 100 mL of 50 wt% HF is 2.96 mol (density table 1.17 to 1.19 g/mL, two sources): 1.46 to 1.49 mol of
		// gas in 4.4 L, 810 to 850 kPa by the ideal gas law.
		if p := f["gas.closed.pressure@drum"]; p == nil || !(p.Value.V > 780 && p.Value.V < 880) {
			t.Errorf("%s: closed pressure %v", do, p)
		}
		if h := f["heat.mix.total@3"]; h == nil || !h.Value.Unknown() {
			t.Errorf("%s: heat of mixing %v, want unknown: acid meets base", do, h)
		}
	}
}

// Silicon, zinc and aluminium carbide give gas in base; how much is not held.
func TestImpuritiesInBaseAreUnknown(t *testing.T) {
	for _, formula := range []string{"Si", "Zn", "Al4C3", "TiAl3"} {
		f := byID(review(t, routeOf("phase: Ti3AlC2, mass: 2 g, impurities: [{formula: "+formula+", share: 5 wt%}]")+
			"  - {do: charge, in: pot, what: [{substance: sodium hydroxide, strength: 30 wt%, volume: 50 mL}], "+
			"temperature: 25 degC}\n"+
			"  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 25 degC}\n").Figures)["gas.hydrogen.total"]
		if f == nil || !f.Value.Unknown() {
			t.Errorf("%s in base: hydrogen %v, want unknown", formula, f)
		}
	}
}

// An acid wash of a melt that does not say how often it is done still takes the
// zinc, and how much it brings to the waste is unknown.
func TestAnAcidWashOfUnknownLengthStillReacts(t *testing.T) {
	long.NotShort(t)
	start := routeOf("phase: Ti3AlC2, mass: 1 g") +
		"  - {do: melt, in: pot, what: [precursor, {substance: zinc chloride, mass: 4.2 g}], time: 5 h, temperature: " +
		"550 degC}\n"
	const wash = "  - {do: wash, in: pot, into: drum, what: [{substance: hydrochloric acid, strength: 5 wt%, " +
		"volume: 100 mL}], cycles: 2, temperature: 25 degC}\n"
	said := byID(review(t, start+wash).Figures)
	open := byID(review(t, start+strings.Replace(wash, ", cycles: 2", "", 1)).Figures)
	for _, id := range []string{"gas.hydrogen.total", "neutralise.mass@waste/calcium_hydroxide"} {
		if f := said[id]; f == nil || !(f.Value.V > 0) {
			t.Errorf("%s in two cycles: %v", id, f)
		}
		if f := open[id]; f == nil || !f.Value.Unknown() {
			t.Errorf("%s in cycles not said: %v, want unknown", id, f)
		}
	}
}

// The liquid of a pre-wash warms all that is there, not only what the solid
// keeps when it is poured off: the same mixing, poured off or not, has the same
// rise (energy balance).
func TestAPrewashWarmsAllOfItsLiquid(t *testing.T) {
	const head = "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nprecursor: {phase: Ti3AlC2, mass: 1 g}\n" +
		"places:\n  pot: {kind: vessel}\n  drum: {kind: vessel}\nsteps:\n" +
		"  - {do: charge, in: pot, what: [{substance: sulfuric acid, strength: 60 wt%, volume: 10 mL}], temperature: " +
		"20 degC}\n"
	const water = "what: [{substance: water, volume: 40 mL}], temperature: 20 degC}\n"
	kept := byID(assess(t, head+"  - {do: dilute, in: pot, "+water).Figures)["heat.mix.rise@2"]
	poured := byID(assess(t, head+"  - {do: prewash, in: pot, into: drum, retained: 5 mL, "+
		water).Figures)["heat.mix.rise@2"]
	if kept == nil || poured == nil || !(kept.Value.V > 1) || !nearly.To(kept.Value.V, poured.Value.V, 1e-9) {
		t.Fatalf("rise %v, and %v where it is poured off", kept, poured)
	}
}

// Sulfuric acid of 96 wt%, 100 mL, in 500 mL of water warms it by 46 K however it is brought to
// the waste: as much as by a transfer, which the law of constant heat summation asks, less what
// a mL that stays behind would give; of a wash by its first decant. Acid that
// meets base there is not worked out by any of them, rinses included, and says so.
func TestStreamsMixInTheWasteWhateverBringsThem(t *testing.T) {
	const head = "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nplaces:\n" +
		"  a: {kind: bottle, material: PTFE, capacity: 1 L, closure: vented}\n" +
		"  drum: {kind: drum, material: PTFE, capacity: 2 L, closure: vented, held_before: empty}\nsteps:\n"
	const rinse = "what: [{substance: water, volume: 50 mL}], cycles: 2, retained: 1 mL}"
	put := func(place, what string) string {
		return "  - {do: charge, in: " + place + ", temperature: 20 degC, what: [{substance: " + what + "}]}\n"
	}
	for _, last := range []string{"transfer, in: a, into: drum}", "collect, in: a, into: drum}",
		"decant, in: a, into: drum, retained: 1 mL}", "filter, in: a, into: drum, retained: 1 mL}",
		"centrifuge, in: a, into: drum, retained: 1 mL}", "wash, in: a, into: drum, " + rinse,
		"exchange, in: a, into: drum, " + rinse} {
		acid := byID(assess(t, head+put("drum", "water, volume: 500 mL")+
			put("a", "sulfuric acid, strength: 96 wt%, volume: 100 mL")+"  - {do: "+last+"\n").Figures)["heat.mix.rise@3"]
		if acid == nil || !nearly.To(acid.Value.V, 46.6, 0.5) {
			t.Errorf("%s: %v", last, acid)
		}
		meets := byID(assess(t, head+put("drum", "sodium hydroxide, strength: 2 mol/L, volume: 500 mL")+
			put("a", "hydrofluoric acid, strength: 40 wt%, volume: 20 mL")+"  - {do: "+last+"\n").Figures)["heat.mix.rise@3"]
		if meets == nil || !meets.Value.Unknown() {
			t.Errorf("%s: acid meets base: %v", last, meets)
		}
	}
}

// More of one solvent in its own waste mixes with itself; another one does not (definition).
func TestMoreOfTheSameWasteMixesWithItself(t *testing.T) {
	for there, told := range map[string]bool{"isopropanol": false, "acetone": true} {
		f := byID(assess(t, "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nplaces:\n"+
			"  a: {kind: bottle, material: PTFE, capacity: 1 L, closure: vented}\n"+
			"  drum: {kind: drum, material: PTFE, capacity: 2 L, closure: vented, held_before: empty}\nsteps:\n"+
			"  - {do: charge, in: drum, temperature: 20 degC, what: [{substance: "+there+", volume: 200 mL}]}\n"+
			"  - {do: charge, in: a, temperature: 20 degC, what: [{substance: isopropanol, volume: 200 mL}]}\n"+
			"  - {do: decant, in: a, into: drum, retained: 1 mL}\n").Figures)["heat.mix.rise@3"]
		if (f != nil) != told {
			t.Errorf("isopropanol on to %s: %v", there, f)
		}
	}
}

// Acid that washes what is wet warms it as much as acid poured on the same water: 100 mL of
// sulfuric acid of 96 wt% on 40 mL that stayed of water give 48.6 kJ by the same law of heat as
// a charge does, and more than boil it; on water that stays of such acid it is told too (Hess).
func TestAWashWithAcidWarmsWhatStayed(t *testing.T) {
	const head = "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nplaces:\n" +
		"  a: {kind: bottle, material: PTFE, capacity: 1 L, closure: vented}\n" +
		"  drum: {kind: drum, material: PTFE, capacity: 2 L, closure: vented, held_before: empty}\nsteps:\n"
	const acid = "sulfuric acid, strength: 96 wt%, volume: 100 mL"
	does := func(what, do string) map[string]*figure.Figure {
		return byID(assess(t, head+"  - {do: charge, in: a, temperature: 20 degC, what: [{substance: "+what+
			"}]}\n  - {do: "+do+"}\n").Figures)
	}
	const id, wet = "heat.mix.total@2", "water, volume: 40 mL"
	poured := does(wet, "charge, in: a, temperature: 20 degC, what: [{substance: "+acid+"}]")[id]
	const wash = "wash, in: a, into: drum, cycles: 2, retained: 40 mL, temperature: 20 degC, what: "
	on := does(wet, wash+"[{substance: "+acid+"}]")[id]
	if poured == nil || on == nil || !nearly.To(poured.Value.V, 48.6, 0.1) ||
		!nearly.To(on.Value.V, poured.Value.V, 0.01) {
		t.Errorf("poured %v, as a wash %v", poured, on)
	}
	if f := does(acid, wash+"[{substance: water, volume: 100 mL}]")["heat.mix.rise@2"]; f == nil || f.Value.V < 30 {
		t.Errorf("water on acid that stayed: %v", f)
	}
	if f := does(wet, wash+"[{substance: water, volume: 90 mL}]")["heat.mix.rise@2"]; f != nil {
		t.Errorf("water on water: %v", f)
	}
}
