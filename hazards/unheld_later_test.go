package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/schemas/long"
)

// What a later step washes with does not know what an earlier one came to: acid that comes
// out of the layers slowly counts in the first wash whatever the second one is made with.
func TestAWashBeforeWhatIsNotHeldKeepsItsRange(t *testing.T) {
	long.NotShort(t)
	wash := func(liquid, keys string) string {
		return "  - {do: wash, in: pot, into: drum, what: [" + liquid + "], cycles: 6" + keys + ", temperature: 20 degC}\n"
	}
	const water = "{substance: water, volume: 100 mL}"
	text := etches("phase: Ti3AlC2, mass: 1 g, "+pure, hf10) + wash(water, ", target_ph: 5")
	held, not := reviewed(t, text+wash(water, ""), true),
		reviewed(t, text+wash("{substance: zorblium, not_held: true, volume: 100 mL}", ""), true)
	neverBetter(t, &held, &not, "with a second wash of what is not held")
	for _, id := range []string{"wash.ph@3", "wash.cycles@3"} {
		f, g := figureOf(&held, id), figureOf(&not, id)
		if f == nil || g == nil || g.Danger().V == g.Value.V || !f.Widened || !g.Widened {
			t.Errorf("%s: %v beside %v", id, g, f)
		}
	}
}

// A melt of which nobody knows what it leaves may leave metal, and acid takes that with heat
// and hydrogen: a wash with it has its findings, as unknown.
func TestAcidOverAnUnknownMeltIsUnknown(t *testing.T) {
	long.NotShort(t)
	const lasts = ", time: 2 h"
	melted := func(phase, time string) string {
		return head + "precursor: {phase: " + phase + ", mass: 1 g, " + pure + "}\n" + places +
			"steps:\n  - {do: melt, in: pot, what: [precursor, {substance: zinc chloride, mass: 4.2 g}], time: 5 h, " +
			"temperature: 550 degC, gas: argon}\n" +
			"  - {do: cool, in: pot, time: 3 h, temperature: 25 degC}\n" +
			"  - {do: wash, in: pot, into: drum, what: [{substance: hydrochloric acid, strength: 5 wt%, " +
			"volume: 100 mL}], cycles: 1" + time + ", temperature: 25 degC}\n"
	}
	known, strange := reviewed(t, melted("Ti3AlC2", lasts), true), reviewed(t, melted("Zr2PbC", lasts), true)
	before, after := verdicts(&known), verdicts(&strange)
	for _, id := range []string{"heat.mtsr@3+boiling_point", "heat.addition_time.required@3+written_over"} {
		if _, there := before[id]; !there {
			t.Errorf("%s is no finding of a melt that is followed", id)
		}
		if v, there := after[id]; !there || v != figure.UnknownVerdict {
			t.Errorf("%s is %s (there: %v) over a melt that nobody follows", id, v, there)
		}
	}
	untimed := reviewed(t, melted("Zr2PbC", ""), true)
	neverBetter(t, &strange, &untimed, "with a wash that says no time")
}

// An acid that boils off as a step is meant to run has its findings in each step of its
// course; what is not held in its place has them too, as unknown.
func TestWhatBoilsOffIsUnknownOfWhatIsNotHeld(t *testing.T) {
	long.NotShort(t)
	const acid, amount = "hydrofluoric acid", ", strength: 50 wt%, volume: 10 mL}"
	text := func(substance string) string {
		return head + "precursor: {phase: Ti3AlC2, mass: 1 g, " + pure + "}\nplaces:\n  pot: {kind: vessel, " +
			"closure: open, capacity: 50 mL, cooling: {kind: none}}\nsteps:\n" +
			charges("{substance: "+substance+amount) + addsIt + "  - {do: hold, in: pot, time: 2 h, temperature: 25 degC}\n"
	}
	held, not := reviewed(t, text(acid), true), reviewed(t, text("zorblium, not_held: true"), true)
	neverBetter(t, &held, &not, "with what is not held in the place of "+acid)
	if f := figureOf(&held, "air.room_peak@3/hf:boiling"); f == nil {
		t.Error("nothing is said of what boils off while the liquor is held")
	}
}

// Whoever washes looks at the pH, at whichever it is to end: what the electrode is made of
// is asked for where the route says none as well.
func TestAWashWithoutATargetNeedsAnElectrode(t *testing.T) {
	long.NotShort(t)
	for _, target := range []string{"", ", target_ph: 6"} {
		rv := reviewed(t, etches("phase: Ti3AlC2, mass: 1 g, "+pure, hf10)+"  - {do: wash, in: pot, into: drum, "+
			"what: [{substance: water, volume: 100 mL}], cycles: 6, temperature: 20 degC"+target+"}\n", true)
		if v := verdicts(&rv)["material.attack@pot/ph_electrode_or_paper+stands_liquor"]; v != figure.UnknownVerdict {
			t.Errorf("with %q the electrode is %s", target, v)
		}
	}
}

// What stands in the place of something held hides no step that etches, and no liquor that
// fluoride is left in: powder that may have reacted goes on into acid, and a salt is washed
// with what may be water.
func TestWhatIsNotHeldHidesNoLaterStep(t *testing.T) {
	long.NotShort(t)
	const strange = "zorblium, not_held: true"
	for _, c := range []struct{ name, steps, was string }{
		{"a part of dried powder goes into acid", charges("{substance: hydrofluoric acid, strength: 15 wt%, volume: 15 mL}") +
			"  - {do: prewash, in: pot, into: drum, what: [{substance: sulfuric acid, strength: 10 wt%, volume: 80 mL}, " +
			"{substance: ammonium bifluoride, mass: 0.7 g}]}\n" + addsIt + "  - {do: dry, in: pot, temperature: 20 degC}\n" +
			"  - {do: sample, in: pot, into: drum, part: 3 %}\n", "sulfuric acid"},
		{"a salt is washed", "  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 3 mL}, " +
			"{substance: sodium fluoride, mass: 0.1 g}], target_ph: 5}\n" + charges(hf10) + addsIt, "water"},
		{"a shut pot is washed after", strings.Replace(charges("{substance: ammonium bifluoride, mass: 90 g}",
			"{substance: water, volume: 650 mL}"), "in: pot", "in: jar", 1) + "  - {do: wash, in: jar, into: drum, what: [" +
			"{substance: water, volume: 15 mL}], retained: 5 mL/g, cycles: 3}\n", "ammonium bifluoride"},
		{"a bottle of what can burn is brought", charges("{substance: DMSO, volume: 4 mL}", "{substance: water, "+
			"volume: 300 mL}"), "DMSO"},
	} {
		text := head + "precursor: {phase: Nb2AlC, mass: 0.4 g, " + pure + "}\n" + places +
			"  jar: {kind: vessel, closure: closed, capacity: 1 L, rating: 400 kPa, relief: 200 kPa}\nsteps:\n" + c.steps
		held := reviewed(t, text, true)
		for _, formula := range []string{"", ", formula: C2H6OS"} {
			if formula != "" && c.was != "DMSO" {
				continue
			}
			not := reviewed(t, strings.Replace(text, "substance: "+c.was, "substance: "+strange+formula, 1), true)
			neverBetter(t, &held, &not, "where "+c.name+formula)
		}
	}
}

// A place that is warm, or that nobody gave a temperature, does not send on what is as cold as
// where it goes, only because what is not held may etch there: what can burn over that liquor
// stays as high, or unknown.
func TestWhatComesFromNoTemperatureHasNone(t *testing.T) {
	long.NotShort(t)
	held := "{substance: hydrofluoric acid, strength: 2 wt%, volume: 4 mL}"
	strange := "{substance: zorblium, not_held: true, formula: HF, strength: 2 wt%, volume: 4 mL}"
	warm := func(acid string) string {
		return head + "precursor: {phase: Ti3AlC2, mass: 1 g, " + pure + "}\n" + places + "steps:\n" +
			charges("{substance: DMSO, volume: 15 mL}") + addsIt +
			"  - {do: dilute, in: drum, what: [" + acid + "], temperature: 60 degC}\n" +
			"  - {do: filter, in: drum, into: pot, retained: 4 mL}\n"
	}
	full, bare := reviewed(t, warm(held), true), reviewed(t, warm(strange), true)
	neverBetter(t, &full, &bare, "with a warm acid that is not held")
	cold := func(acid string) string {
		return head + "precursor: {phase: Ti3AlC2, mass: 1 g, " + pure + "}\n" + places + "steps:\n" +
			charges("{substance: DMSO, volume: 15 mL}") + addsIt +
			"  - {do: add, in: pot, what: [" + acid + "], over: 3 min, temperature: 2 degC}\n" +
			"  - {do: filter, in: drum, into: pot, retained: 4 mL}\n"
	}
	full, bare = reviewed(t, cold(held), true), reviewed(t, cold(strange), true)
	neverBetter(t, &full, &bare, "with an acid that is not held")
	const id = "air.flammable_share@4/dmso+flammable_quarter"
	for _, rv := range []*hazards.Review{&full, &bare} {
		if v, there := verdicts(rv)[id]; !there || v != figure.UnknownVerdict {
			t.Errorf("%s is %v (there: %v)", id, v, there)
		}
	}
}
