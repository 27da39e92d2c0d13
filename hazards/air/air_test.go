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

// Base that takes half of an ammonium salt sets half of the ammonia free: 2 g of sodium hydroxide, 40.00 g/mol,
// on 5.349 g of ammonium chloride, 53.49 g/mol, and 4 g of it all (by hand). Acid that is there takes base
// first: with as much of it as there is base nothing comes.
func TestSomeBaseFreesSomeAmmonia(t *testing.T) {
	over := func(more string) (kPa float64, there bool) {
		b := bench.Steps(t, "  - {do: charge, in: pot, what: [{substance: water, volume: 100 mL}, {substance: ammonium "+
			"chloride, mass: 5.349 g}"+more+"], temperature: 25 degC}\n")
		for _, f := range air.Read(b.Case, nil, b.Walk, nil, b.Courses) {
			if f.ID.String() == "air.saturated@1/ammonia" {
				return f.Value.V, true
			}
		}
		return 0, false
	}
	const acid = ", {substance: hydrochloric acid, strength: 1 mol/L, volume: 51 mL}"
	base := func(mass string) string { return ", {substance: sodium hydroxide, mass: " + mass + "}" }
	all, _ := over(base("4.0001 g"))
	if half, there := over(base("2 g")); !there || !nearly.Share(half, all/2, 0.03) {
		t.Errorf("half the base frees %g ppm, all %g", half, all)
	}
	for _, none := range []string{"", base("2 g") + acid} {
		if ppm, there := over(none); there && !(ppm < 1e-6*all) {
			t.Errorf("%q frees %g ppm", none, ppm)
		}
	}
}
