package hazards_test

import (
	"math"
	"testing"

	"etchbound/schemas/nearly"
)

// Vapour goes through the vent of a vessel from which no gas comes: by the law of
// diffusion through a tube and the two ends of a hole, with hydrochloric acid at 20 degC.
func TestAVentLetsVapourThrough(t *testing.T) {
	emission := func(vent string) (mg, ppm float64) {
		rv := reviewed(t, head+"places: {pot: {kind: bottle, material: PTFE, lid_material: PTFE, capacity: 250 mL, "+
			"closure: vented"+vent+"}}\nsteps:\n"+
			charges("{substance: hydrochloric acid, strength: 37 wt%, volume: 50 mL}")+
			"  - {do: hold, in: pot, time: 1 h, temperature: 20 degC}\n", true)
		e, p := figureOf(&rv, "air.emission@2/hcl"), figureOf(&rv, "air.saturated@2/hcl")
		if e == nil || p == nil {
			t.Fatalf("nothing leaves a vented bottle%s", vent)
		}
		return e.Value.V, p.Value.V
	}
	const bore, line, molar, gas = 3e-3, 0.1, 36.46, 8.314462618 // m, m, g/mol, J/mol/K
	got, ppm := emission(", vent: 3 mm, vent_line: 100 mm")
	const diffusion = 1.8e-5 // m2/s of hydrogen chloride in air, a handbook value, two sources within 5 %
	p := -101325 * math.Log1p(-ppm*1e-6)
	want := math.Pi * bore * bore / 4 * diffusion * p / (gas * 293.15) / (line + math.Pi*bore/4) * molar * 60000
	if !nearly.Share(got, want, 0.06) {
		t.Errorf("%g mg/min through the vent, %g by hand", got, want)
	}
	if wide, _ := emission(", vent: 6 mm, vent_line: 100 mm"); !(wide > 3.8*got && wide < 4*got) {
		t.Errorf("%g mg/min through 3 mm and %g through 6 mm", got, wide)
	}
	if _, high := rangeOf(t, ""); !(high > got) {
		t.Errorf("a vent of which nothing is stated lets at most %g through", high)
	}
}

// rangeOf is what a vented bottle of which the vent is described lets out, mg/min.
func rangeOf(t *testing.T, vent string) (low, high float64) {
	t.Helper()
	rv := reviewed(t, head+"places: {pot: {kind: bottle, material: PTFE, lid_material: PTFE, capacity: 250 mL, "+
		"closure: vented"+vent+"}}\nsteps:\n"+
		charges("{substance: hydrochloric acid, strength: 37 wt%, volume: 50 mL}")+
		"  - {do: hold, in: pot, time: 1 h, temperature: 20 degC}\n", true)
	f := figureOf(&rv, "air.emission@2/hcl")
	if f == nil {
		t.Fatal("no emission")
	}
	return f.Low().V, f.High().V
}
