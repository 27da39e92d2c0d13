package hazards_test

import (
	"testing"

	"etchbound/hazards/figure"
)

// What a later step washes with does not know what an earlier one came to: acid that comes
// out of the layers slowly counts in the first wash whatever the second one is made with.
func TestAWashBeforeWhatIsNotHeldKeepsItsRange(t *testing.T) {
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
	melted := func(phase string) string {
		return head + "precursor: {phase: " + phase + ", mass: 1 g, " + pure + "}\n" + places +
			"steps:\n  - {do: melt, in: pot, what: [precursor, {substance: zinc chloride, mass: 4.2 g}], time: 5 h, " +
			"temperature: 550 degC, gas: argon}\n" +
			"  - {do: cool, in: pot, time: 3 h, temperature: 25 degC}\n" +
			"  - {do: wash, in: pot, into: drum, what: [{substance: hydrochloric acid, strength: 5 wt%, " +
			"volume: 100 mL}], cycles: 1, time: 2 h, temperature: 25 degC}\n"
	}
	known, strange := reviewed(t, melted("Ti3AlC2"), true), reviewed(t, melted("Zr2PbC"), true)
	before, after := verdicts(&known), verdicts(&strange)
	for _, id := range []string{"heat.mtsr@3+boiling_point", "heat.addition_time.required@3+written_over"} {
		if _, there := before[id]; !there {
			t.Errorf("%s is no finding of a melt that is followed", id)
		}
		if v, there := after[id]; !there || v != figure.UnknownVerdict {
			t.Errorf("%s is %s (there: %v) over a melt that nobody follows", id, v, there)
		}
	}
}
