package air_test

import (
	"testing"

	"etchbound/hazards/air"
	"etchbound/hazards/bench"
	"etchbound/schemas/nearly"
)

// Over open acid stands what its vapour makes of the air: 14.6 mmHg over 49 wt%
// hydrofluoric acid at 25 degC (an encyclopedia article) and 141 mmHg over 36 wt%
// hydrochloric acid (International Critical Tables), of 760 mmHg.
func TestSaturatedAir(t *testing.T) {
	for _, row := range []struct {
		acid, id   string
		want, near float64
	}{
		{"{substance: hydrofluoric acid, strength: 49 wt%, volume: 100 mL}", "air.saturated@1/hf", 14.6 / 760 * 1e6, 0.011},
		{"{substance: hydrofluoric acid, strength: 10 wt%, volume: 100 mL}", "air.saturated@1/hf", 0.195 / 760 * 1e6, 0.005},
		{"{substance: hydrochloric acid, strength: 36 wt%, volume: 100 mL}", "air.saturated@1/hcl", 141.0 / 760 * 1e6, 0.006},
	} {
		b := bench.Steps(t, "  - {do: charge, in: pot, what: ["+row.acid+"], temperature: 25 degC}\n")
		f := bench.Find(t, air.Read(b.Case, nil, b.Walk, nil, b.Courses), row.id)
		if !nearly.Share(f.Value.V, row.want, row.near) {
			t.Errorf("%s: %g %s, want %g", row.acid, f.Value.V, f.Value.Unit, row.want)
		}
	}
}

// Warmer acid gives off more, and acid at no stated temperature nobody knows how much.
func TestTemperatureCounts(t *testing.T) {
	at := func(temperature string) float64 {
		b := bench.Steps(t, "  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 49 wt%, "+
			"volume: 100 mL}]"+temperature+"}\n")
		return bench.Find(t, air.Read(b.Case, nil, b.Walk, nil, b.Courses), "air.emission@1/hf").Value.V
	}
	if cold, warm := at(", temperature: 5 degC"), at(", temperature: 35 degC"); !(warm > 2*cold) || !(cold > 0) {
		t.Errorf("%g mg/min at 5 degC and %g at 35", cold, warm)
	}
	if v := at(""); v == v {
		t.Errorf("%g mg/min at no stated temperature", v)
	}
}
