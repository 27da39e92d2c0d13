package thermal_test

import (
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/thermal"
	"etchbound/schemas/nearly"
)

// Salts that lie dry side by side give no heat of solution; it comes with the liquid,
// wherever that is written. 10 g of KCl are 0.13413 mol, which take up 17.4 kJ/mol
// (two data families): 2.334 kJ.
func TestDrySaltsGiveNoHeatOfSolution(t *testing.T) {
	const dry = "  - {do: charge, in: pot, what: [{substance: potassium chloride, mass: 10 g}], temperature: 25 degC}\n"
	water := func(verb string) string {
		return "  - {do: " + verb + ", in: pot, what: [{substance: water, volume: 100 mL}], temperature: 25 degC}\n"
	}
	other := "  - {do: charge, in: drum, what: [{substance: water, volume: 100 mL}], temperature: 25 degC}\n" +
		"  - {do: transfer, in: pot, into: drum}\n"
	for _, row := range []struct {
		name, steps, id string
		want            float64
	}{
		{"dry", dry, "heat.mix.total@1", 0},
		{"more salt on it", dry + dry, "heat.mix.total@2", 0},
		{"ice on it", dry + "  - {do: charge, in: pot, what: [{substance: ice, mass: 100 g}], temperature: 25 degC}\n",
			"heat.mix.total@2", -2.334},
		{"water on it", dry + water("dilute"), "heat.mix.total@2", -2.334},
		{"twice as much, water on it", dry + dry + water("dilute"), "heat.mix.total@3", -4.668},
		{"poured into water", dry + other, "heat.mix.total@3", -2.334},
		{"into water", water("charge") + dry, "heat.mix.total@2", -2.334},
	} {
		b := bench.Steps(t, row.steps)
		got := 0.0
		for _, f := range thermal.Read(b.Case, nil, b.Walk, nil, b.Courses) {
			if f.ID.String() == row.id {
				got = f.Value.V
			}
		}
		if !nearly.To(got, row.want, 0.005) {
			t.Errorf("%s: %g kJ, want %g", row.name, got, row.want)
		}
	}
}
