package wash_test

import (
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/wash"
	"etchbound/schemas/nearly"
)

// 100 mL of 1 mol/L hydrochloric acid, of which 20 mL stay, washed with 180 mL: a
// tenth is left by each cycle, so 1 mol/L falls to 1e-3 mol/L, pH 3, in three, and
// to pH 3.9 in four (by hand; strong acid, activity left out).
func TestDilution(t *testing.T) {
	acid := "  - {do: charge, in: pot, what: [{substance: hydrochloric acid, strength: 1 mol/L, volume: 100 mL}], " +
		"temperature: 20 degC}\n"
	washes := "  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 180 mL}], cycles: 3," +
		" target_ph: 3.9, retained: 20 mL, water: co2_free, temperature: 20 degC}\n"
	b := bench.Steps(t, acid, washes)
	figs := wash.Read(b.Case, nil, b.Walk, nil, nil)
	for _, row := range []struct {
		id         string
		want, near float64
		from       string
	}{
		{"wash.cycles@2", 4, 1e-6, "10^-3.9 mol/L after 3.9 cycles of a tenth each, so four"},
		{"wash.ph@2", 3, 0.01, "-lg(1 mol/L * 0.1^3)"},
		{"wash.water@2", 0.540, 1e-9, "3 * 180 mL"},
		{"wash.liquor@2", 0.620, 1e-9, "80 mL of the acid and 540 mL of water"},
		{"wash.fluoride@2", 0, 0, "no fluoride went in"},
	} {
		if f := bench.Find(t, figs, row.id); !nearly.To(f.Value.V, row.want, row.near) {
			t.Errorf("%s = %g %s, want %g (%s)", row.id, f.Value.V, f.Value.Unit, row.want, row.from)
		}
	}
}

// Without a target the cycles it takes are unknown, and the pH that is reached is not.
func TestNoTarget(t *testing.T) {
	b := bench.Steps(t, bench.Etch,
		"  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 180 mL}], cycles: 3, retained: 20 mL,"+
			" water: co2_free, temperature: 20 degC}\n")
	figs := wash.Read(b.Case, nil, b.Walk, nil, nil)
	if f := bench.Find(t, figs, "wash.cycles@3"); !f.Value.Unknown() || len(f.Value.Missing()) == 0 {
		t.Errorf("cycles to no target: %+v", f.Value)
	}
	if f := bench.Find(t, figs, "wash.ph@3"); f.Value.Unknown() {
		t.Errorf("the pH after three cycles lacks %v", f.Value.Missing())
	}
}

// Ethanol and 2-propanol are not water: neither a pH nor cycles to one is told, and the
// figures stay.
func TestASolventIsNotWater(t *testing.T) {
	for _, solvent := range []string{"ethanol", "isopropanol"} {
		b := bench.Steps(t, bench.Etch, "  - {do: wash, in: pot, into: drum, what: [{substance: "+solvent+
			", volume: 180 mL}], cycles: 3, target_ph: 2, retained: 20 mL, temperature: 20 degC}\n")
		figs := wash.Read(b.Case, nil, b.Walk, nil, nil)
		for _, id := range []string{"wash.cycles@3", "wash.ph@3"} {
			if f := bench.Find(t, figs, id); !f.Value.Unknown() || len(f.Value.Missing()) == 0 {
				t.Errorf("%s with %s: %+v", id, solvent, f.Value)
			}
		}
	}
}

// No pH ends an exchange of the liquid, and none can be written: no cycles to one are missing.
func TestAnExchangeHasNoTarget(t *testing.T) {
	b := bench.Steps(t, bench.Etch, "  - {do: exchange, in: pot, into: drum, what: [{substance: ethanol, "+
		"volume: 180 mL}], cycles: 2, retained: 20 mL, temperature: 20 degC}\n")
	for _, f := range wash.Read(b.Case, nil, b.Walk, nil, nil) {
		if f.Quantity == "wash.cycles" {
			t.Errorf("%s: %+v", f.ID, f.Value)
		}
	}
}
