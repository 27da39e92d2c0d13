package fluoride_test

import (
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/fluoride"
	"etchbound/schemas/nearly"
)

// 20 mL of 10 wt% hydrofluoric acid of 1.036 g/mL hold 2.072 g of HF, 1.968 g of it
// fluorine (18.998/20.006). 1.6 g of lithium fluoride in 9 mol/L hydrochloric acid
// are 0.06168 mol: 1.234 g as HF, 1.172 g as F (25.939, 20.006 and 18.998 g/mol).
func TestWhatFluorideIsThere(t *testing.T) {
	salt := "  - {do: charge, in: pot, what: [{substance: hydrochloric acid, strength: 9 mol/L, volume: 20 mL}, " +
		"{substance: lithium fluoride, mass: 1.6 g}], temperature: 20 degC}\n"
	for _, row := range []struct {
		steps, id  string
		want, near float64
	}{
		{bench.Etch, "fluoride.total@1", 1.968, 0.003},
		{bench.Etch, "fluoride.hf_equivalent@1", 2.072, 0.003},
		{bench.Etch, "fluoride.hf_strength@1", 10, 1e-9},
		{bench.Etch, "fluoride.hf_concentration@1", 5.178, 0.003}, // 103.6 g/L over 20.006
		{salt, "fluoride.total@1", 1.172, 0.001},
		{salt, "fluoride.hf_equivalent@1", 1.234, 0.001},
	} {
		b := bench.Steps(t, row.steps)
		f := bench.Find(t, fluoride.Read(b.Case, nil, b.Walk, nil, nil), row.id)
		if !nearly.Share(f.Value.V, row.want, row.near) {
			t.Errorf("%s = %g %s, want %g", row.id, f.Value.V, f.Value.Unit, row.want)
		}
	}
}

// A bath without fluoride has no figure of it.
func TestNoFluoride(t *testing.T) {
	b := bench.Steps(t, "  - {do: charge, in: pot, what: [{substance: hydrochloric acid, strength: 9 mol/L, "+
		"volume: 20 mL}], temperature: 20 degC}\n")
	for _, f := range fluoride.Read(b.Case, nil, b.Walk, nil, nil) {
		if !(f.Value.V == 0) {
			t.Errorf("%s = %v", f.ID, f.Value)
		}
	}
}
