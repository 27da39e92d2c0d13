package hazards_test

import (
	"strings"
	"testing"

	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// Powder that is charged with the liquor has no addition of zero minutes: what it does
// all at once stands in its place. What is added over a time keeps its headline.
func TestPowderChargedWithTheLiquor(t *testing.T) {
	long.Only(t)
	const hold = "  - {do: hold, in: pot, time: 4 h, temperature: 20 degC}\n"
	together := followed(t, head+"precursor: {phase: Ti3AlC2, mass: 5 g, "+pure+"}\n"+places+"steps:\n"+
		charges(hf10, "precursor")+hold)
	for i := range together.Figures {
		if q := together.Figures[i].Quantity; strings.Contains(q, "addition_time") {
			t.Errorf("an addition of zero minutes has %s", together.Figures[i].ID.String())
		}
	}
	for _, q := range []string{"heat.temperature_peak", "gas.hydrogen.peak_rate", "heat.time_to_boil"} {
		if figureOf(&together, q+"@1:all_at_once") == nil {
			t.Errorf("no %s of all at once", q)
		}
	}
	added := followed(t, etches("phase: Ti3AlC2, mass: 5 g, "+pure, hf10)+hold)
	if figureOf(&added, "heat.addition_time.required@2") == nil {
		t.Error("an addition that takes time has lost its headline")
	}
}

// An addition of no time is one tipped in: it is wetted within half a minute, so that a
// gram, 3.0/194.605 mol of hydrogen, gives 0.754 L/min (by hand), and nothing of it is
// unknown; that it takes too short a time is still found.
func TestAnAdditionOfNoTimeIsTippedIn(t *testing.T) {
	long.NotShort(t)
	const hold = "  - {do: hold, in: pot, time: 4 h, temperature: 20 degC}\n"
	none := followed(t, strings.Replace(etches("phase: Ti3AlC2, mass: 1 g, "+pure, hf10), "over: 10 min", "over: 0 min",
		1)+hold)
	for _, id := range []string{"gas.hydrogen.peak_rate.during_addition@2:instantaneous",
		"gas.hydrogen.peak_rate@2:all_at_once,instantaneous"} {
		if f := figureOf(&none, id); f == nil || !nearly.Share(f.Value.V, 0.75431, 1e-3) {
			t.Errorf("%s: %+v", id, f)
		}
	}
	for _, m := range none.Unknown {
		if m.Kind == "result" || m.Kind == "run" {
			t.Errorf("%+v is unknown", m.Missing)
		}
	}
	if v := verdicts(&none)["heat.addition_time.required@2+written_over"]; v == withinLimit {
		t.Errorf("no time is enough: %v", v)
	}
}
