package air_test

import (
	"testing"

	"etchbound/hazards/air"
	"etchbound/hazards/bench"
	"etchbound/schemas/nearly"
)

// Isopropanol has 44 hPa at 20 degC (common practice: safety data sheets, of 1013.25 hPa).
// By hand, 200 mL of it in an open 250 mL beaker as high as wide (D 0.0683 m, A 0.003662 m2,
// 0.01368 m below the rim) in 0.5 m/s of air: p' 4.504 kPa, k1 0.00261 and k2 0.00297 m/s with
// D 1.1e-5 m2/s, so 4.28e-6 mol/s of 60.1 g/mol, 15.4 mg/min. A tenth of it in water
// is 0.0256 of the mol, which counts twenty times: 0.512 of the pure liquid.
func TestSolventsAreBreathed(t *testing.T) {
	const pure = "{substance: isopropanol, volume: 200 mL}"
	const mixed = "{substance: water, volume: 180 mL}, {substance: isopropanol, volume: 20 mL}"
	for _, row := range []struct {
		what, id   string
		want, near float64
	}{
		{pure, "air.saturated@1/isopropanol", 44 / 1013.25 * 1e6, 0.02},
		{pure, "air.emission@1/isopropanol", 15.4, 0.01},
		{mixed, "air.saturated@1/isopropanol", 0.512 * 44 / 1013.25 * 1e6, 0.02},
	} {
		b := bench.Steps(t, "  - {do: charge, in: pot, what: ["+row.what+"], temperature: 20 degC}\n")
		f := bench.Find(t, air.Read(b.Case, nil, b.Walk, nil, b.Courses), row.id)
		if !nearly.Share(f.Value.V, row.want, row.near) {
			t.Errorf("%s: %s is %g %s, want %g", row.what, row.id, f.Value.V, f.Value.Unit, row.want)
		}
	}
}

// What is breathed of a liquid that is not held is not known, whether or not anybody says
// what it is made of.
func TestALiquidNobodyHoldsIsBreathedUnknown(t *testing.T) {
	for _, formula := range []string{"", "formula: C5H10O, "} {
		b := bench.Steps(t, "  - {do: charge, in: pot, what: [{substance: pleasant oil, "+formula+
			"not_held: true, volume: 50 mL}], temperature: 20 degC}\n")
		slug := b.Case.Route.Steps[0].What[0].Substance.Slug
		f := bench.Find(t, air.Read(b.Case, nil, b.Walk, nil, b.Courses), "air.breathing_zone@1/"+slug)
		if !f.Value.Unknown() {
			t.Errorf("%q: %g %s", formula, f.Value.V, f.Value.Unit)
		}
	}
}
