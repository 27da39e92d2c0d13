package process_test

import (
	"strings"
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/process"
	"etchbound/schemas/nearly"
)

// One gram of Ti3AlC2 (194.6 g/mol, 5.139 mmol) of which the route states 900 kJ/mol releases 4.625 kJ
// in an oxidising bath and in neutral fluoride. Where a current etches it, 1 A at 5 V for an hour come on
// top, 18 kJ (1 W s is 1 J), and without the voltage nothing is known: no calorimetry of a powder tells
// what a cell takes. Without powder the current is all of it.
func TestHeatThatIsStatedCountsInAnyBath(t *testing.T) {
	const (
		oxidant = "{substance: hydrochloric acid, strength: 1 mol/L, volume: 50 mL}, " +
			"{substance: hydrogen peroxide, strength: 3 wt%, volume: 20 mL}"
		salt    = "{substance: potassium fluoride, mass: 5 g}, {substance: water, volume: 50 mL}"
		cell    = "{substance: ammonium chloride, mass: 5 g}, {substance: water, volume: 50 mL}"
		powder  = "  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 20 degC}\n"
		current = "  - {do: electrolyse, in: pot, current: 1 A, VOLTtime: 1 h, temperature: 20 degC}\n"
		own     = "measured: {etch_heat: 900 kJ/mol}\n"
	)
	five := strings.Replace(current, "VOLT", "voltage: 5 V, ", 1)
	for _, tt := range []struct {
		name, what, steps, own string
		heat                   float64 // kJ; 0 is not known
	}{
		{"oxidant", oxidant, powder, own, 4.625}, {"oxidant, nothing stated", oxidant, powder, "", 0},
		{"neutral fluoride", salt, powder, own, 4.625}, {"cell", cell, powder + five, own, 22.625},
		{"cell without voltage", cell, powder + strings.Replace(current, "VOLT", "", 1), own, 0},
		{"cell, nothing stated", cell, powder + five, "", 0}, {"no powder", cell, five, "", 18},
	} {
		c := bench.CaseOf(t, strings.Replace(bench.Head, "places:", tt.own+"places:", 1)+
			"  - {do: charge, in: pot, what: ["+tt.what+"], temperature: 20 degC}\n"+tt.steps)
		k, err := process.Go(c, nil)
		if err != nil || len(k.Etches) != 1 {
			t.Fatal(tt.name, err, len(k.Etches))
		}
		if q := k.Etches[0].Heat; q.Unknown() != (tt.heat == 0) || tt.heat > 0 && !nearly.To(q.V, tt.heat, 0.005) {
			t.Errorf("%s: %v, want %g kJ", tt.name, q, tt.heat)
		}
	}
}
