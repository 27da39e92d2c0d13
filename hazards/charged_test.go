package hazards_test

import (
	"strings"
	"testing"

	"etchbound/schemas/long"
)

// Powder that is charged with the liquor has no addition of zero minutes: what it does
// all at once stands in its place. What is added over a time keeps its headline.
func TestPowderChargedWithTheLiquor(t *testing.T) {
	long.NotShort(t)
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
