package hazards_test

import (
	"math"
	"strings"
	"testing"

	"etchbound/chemicals/working"
)

// Heat of solution is a function of state: however the same acid and water come
// together, the heats of all steps add up to the same (law of constant heat
// summation). Nothing is let go here; the last state is the same in each.
func TestHeatOfMixingDoesNotDependOnTheWay(t *testing.T) {
	const head = "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nprecursor: {phase: Ti3AlC2, mass: 1 g}\n" +
		"places:\n  pot: {kind: vessel}\n  tube: {kind: vessel}\nsteps:\n"
	const tail = "  - {do: add, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 mL}], over: 1 min, temperature: 20 degC}\n" +
		"  - {do: add, in: pot, what: [precursor], over: 1 min, temperature: 20 degC}\n"
	const acid, half = "{substance: hydrochloric acid, strength: 36 wt%, volume: 20 mL}", "{substance: hydrochloric acid, strength: 36 wt%, volume: 10 mL}"
	const water = "{substance: water, volume: 100 mL}"
	step := func(do, in, what string) string {
		return "  - {do: " + do + ", in: " + in + ", what: [" + what + "], temperature: 20 degC}\n"
	}
	ways := []struct{ name, steps string }{
		{"acid, then water", step("charge", "pot", acid) + step("dilute", "pot", water)},
		{"acid in two lots, then water", step("charge", "pot", half) + step("mix", "pot", half) + step("dilute", "pot", water)},
		{"two lots in one step, then water", step("charge", "pot", half+", "+half) + step("dilute", "pot", water)},
		{"half the acid from another vessel, then water", step("charge", "pot", half) + step("charge", "tube", half) + "  - {do: transfer, in: tube, into: pot}\n" + step("dilute", "pot", water)},
		{"acid from another vessel into water", step("charge", "tube", acid) + step("charge", "pot", water) + "  - {do: transfer, in: tube, into: pot}\n"},
		{"water from another vessel into acid", step("charge", "pot", acid) + step("charge", "tube", water) + "  - {do: transfer, in: tube, into: pot}\n"},
		{"in two parts", step("charge", "tube", acid) + step("charge", "pot", water) + "  - {do: transfer, in: tube, into: pot, part: 40 %}\n  - {do: transfer, in: tube, into: pot}\n"},
		{"water from between, then acid", step("charge", "pot", half) + step("dilute", "pot", water) + step("mix", "pot", half)},
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
		if math.Abs(f.Value.V-want) > 1e-9*want {
			t.Errorf("%s: %v kJ, and %v kJ %s", w.name, f.Value.V, want, ways[0].name)
		}
	}
}

// A solid that is dry gives off nothing when it is dried again.
func TestDryingTwiceTakesNothingMore(t *testing.T) {
	const once = "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nprecursor: {phase: Ti3AlC2, mass: 1 g}\n" +
		"places:\n  pot: {kind: vessel}\n  tube: {kind: vessel}\nsteps:\n" +
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 1 wt%, volume: 1 mL}], temperature: 20 degC}\n" +
		"  - {do: dry, in: pot, temperature: 20 degC}\n"
	const again = "  - {do: dry, in: pot, temperature: 20 degC}\n"
	const end = "  - {do: mix, in: pot, what: [{substance: water, volume: 10 mL}], temperature: 20 degC}\n" +
		"  - {do: add, in: pot, what: [precursor], over: 1 min, temperature: 20 degC}\n"
	one, two := byID(review(t, once+end).Figures), byID(review(t, once+again+end).Figures)
	for _, id := range []string{"fluoride.hf_strength", "fluoride.hf_concentration", "fluoride.total", "heat.adiabatic_rise"} {
		a, b := one[id], two[id]
		if a == nil || b == nil || !(a.Value.V > 0) || math.Abs(a.Value.V-b.Value.V) > 1e-12*a.Value.V {
			t.Errorf("%s: %v, and %v when dried twice", id, a, b)
		}
	}
}

// Where nobody knows how often a solid is washed, nobody knows what the vessel
// that takes the liquor holds, nor what neutralises it; the sum over the route
// still counts every gram once.
func TestUnknownWashingLeavesItsLiquorUnknown(t *testing.T) {
	const head = "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nprecursor: {phase: Ti2AlC, mass: 4 g, impurities: none (invented)}\n" +
		"places:\n  beaker: {kind: beaker, capacity: 250 mL, closure: open}\n  drum: {kind: drum, capacity: 30 L, closure: vented}\nsteps:\n" +
		"  - {do: charge, in: drum, what: [{substance: water, volume: 2 L}], temperature: 20 degC}\n" +
		"  - {do: charge, in: beaker, what: [{substance: hydrofluoric acid, strength: 20 wt%, volume: 60 mL}], temperature: 20 degC}\n" +
		"  - {do: add, in: beaker, what: [precursor], over: 20 min, temperature: 25 degC}\n" +
		"  - {do: centrifuge, in: beaker, into: drum}\n"
	const tail = "  - {do: neutralise, in: drum, what: [{substance: calcium hydroxide, mass: 40 g}], temperature: 20 degC}\n"
	const wash = "  - {do: wash, in: beaker, into: drum, what: [{substance: water, volume: 100 mL}], target_ph: 6%s}\n"
	open := byID(review(t, head+strings.Replace(wash, "%s", "", 1)+tail).Figures)
	boiled := byID(review(t, head+strings.Replace(wash, "%s", ", water: co2_free", 1)+tail).Figures)
	for _, id := range []string{"neutralise.mass@6/calcium_hydroxide", "neutralise.heat@6/calcium_hydroxide", "wash.fluoride@5"} {
		if f := boiled[id]; f == nil || f.Value.Unknown() {
			t.Errorf("%s with water free of carbon dioxide: %v", id, f)
		}
		if f := open[id]; f == nil || !f.Value.Unknown() {
			t.Errorf("%s with water that met air, which never reaches pH 6: %v", id, f)
		}
	}
	for _, id := range []string{"fluoride.total", "fluoride.hf_equivalent", "fluoride.hf_concentration", "fluoride.hf_strength"} {
		at, all := open[id+"@6"], open[id+"@2"] // all of the fluoride was charged in step 2
		if at == nil || at.Value.Status != working.Bound || math.Abs(at.Value.V-all.Value.V) > 1e-9*all.Value.V {
			t.Errorf("%s@6: %v, want the bound of step 2, %v", id, at, all)
		}
	}
	const sum = "neutralise.mass@waste/calcium_hydroxide"
	if a, b := open[sum], boiled[sum]; a == nil || b == nil || a.Danger().V < b.Danger().V*(1-1e-9) {
		t.Errorf("%s: %v where the washing is unknown, and %v", sum, a, b)
	}
}

const threePlaces = "route: etchbound/1\ntitle: check\nbasis: {status: invented}\n%s" +
	"places:\n  pot: {kind: bottle, capacity: 500 mL, closure: open}\n  tube: {kind: tube, capacity: 500 mL, closure: closed}\n  drum: {kind: drum, capacity: 5 L, closure: closed}\nsteps:\n"

// routeOf is the beginning of a route of 2 g of a phase with what is said of it.
func routeOf(precursor string) string {
	return strings.Replace(threePlaces, "%s", "precursor: {"+precursor+"}\n", 1)
}

// What happened in a step is not changed by what is done after it.
func TestLaterStepsDoNotChangeEarlierOnes(t *testing.T) {
	first := routeOf("phase: Ti3AlC2, mass: 2 g") +
		"  - {do: charge, in: pot, what: [{substance: hydrochloric acid, strength: 12 mol/L, volume: 50 mL}], temperature: 60 degC}\n" +
		"  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 60 degC}\n"
	later := "  - {do: dilute, in: pot, what: [{substance: water, volume: 400 mL}, {substance: hydrochloric acid, strength: 1 mol/L, volume: 10 mL}], temperature: 25 degC}\n"
	before, after := byID(review(t, first).Figures), byID(review(t, first+later).Figures)
	for id, f := range before {
		if g := after[id]; strings.HasSuffix(id, "@2") && (g == nil || !alike(g.Value.V, f.Value.V) || !alike(g.Low.V, f.Low.V) || !alike(g.High.V, f.High.V)) {
			t.Errorf("%s: %v, and %v with a later step", id, f, g)
		}
	}
}

func alike(a, b float64) bool { return a == b || a != a && b != b }
