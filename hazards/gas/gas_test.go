package gas_test

import (
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/gas"
	"etchbound/schemas/nearly"
)

// A gram of Ti3AlC2, 194.605 g/mol, gives 3.0 mol of hydrogen a mol (the electrons
// of the aluminium and of the fluoride that ends the layers), 24.4654 L a mol at
// 25 degC and 101.325 kPa: 0.377155 L. All metals dissolved give 7.5 mol a mol of
// titanium(IV), 0.943 L.
func TestHydrogenOfAGram(t *testing.T) {
	b := bench.Steps(t, bench.Etch)
	figs := gas.Read(b.Case, nil, b.Walk, nil, b.Courses)
	for _, row := range []struct {
		id         string
		want, near float64
	}{{"gas.hydrogen.total@2", 0.377155, 1e-5}, {"gas.hydrogen.dissolution_bound@2", 0.943, 1e-3}} {
		if f := bench.Find(t, figs, row.id); !nearly.Share(f.Value.V, row.want, row.near) {
			t.Errorf("%s = %g %s, want %g", row.id, f.Value.V, f.Value.Unit, row.want)
		}
	}
}

// At 25 % of the lower flammable limit of 4 vol% air takes 99 times the hydrogen:
// 1 L/min asks for 99 L/min, 5.94 m3/h.
func TestAirThatDilutesHydrogen(t *testing.T) {
	b := bench.Steps(t, bench.Etch)
	figs := gas.Read(b.Case, nil, b.Walk, nil, b.Courses)
	flow := bench.Find(t, figs, "gas.hydrogen.peak_rate.during_addition@2:instantaneous").Value.V
	if air := bench.Find(t, figs, "gas.hydrogen.dilution_air@2:instantaneous").Value.V; !nearly.Share(air, 5.94*flow,
		1e-9) {
		t.Errorf("%g L/min of hydrogen take %g m3/h of air, want %g", flow, air, 5.94*flow)
	}
}

// Acid without powder gives no hydrogen.
func TestNoPowderNoHydrogen(t *testing.T) {
	b := bench.Steps(t, "  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: "+
		"20 mL}], temperature: 20 degC}\n")
	for _, f := range gas.Read(b.Case, nil, b.Walk, nil, b.Courses) {
		if f.Quantity == "gas.hydrogen.total" && !(f.Value.V == 0) {
			t.Errorf("%s = %v", f.ID, f.Value)
		}
	}
}
