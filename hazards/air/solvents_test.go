package air_test

import (
	"strings"
	"testing"

	"etchbound/hazards/air"
	"etchbound/hazards/bench"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
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

// By hand, 200 mL of it on the floor at 20 degC: 0.1 m2 of film of 2 mm in 0.1 m/s of air,
// p' 4.498 kPa (of 44 hPa), k1 0.000744 and k2 0.000705 m/s, so 1.373e-4 mol/s; in 180 m3/h, three
// tenths of 600 m3/h, 67.2 ppm, and 0.00336 of 2.0 vol% (IEC 60079-20-1:2010 as open data). A bottle of a
// litre at 25 degC, 0.5 m2 and p' 6.21 kPa (of 6.02): k2 0.000645 is less, so 9.32e-4 mol/s of
// 12.99 mol and in the end 456 ppm; in 50 m3 it is empty after 3.87 h, when that is reached.
func TestSpiltSolventsFillTheRoom(t *testing.T) {
	b := bench.Steps(t, "  - {do: charge, in: pot, what: [{substance: isopropanol, volume: 200 mL}], "+
		"temperature: 20 degC}\n")
	site, problems, err := route.LoadSite("site.yaml", strings.NewReader("site: etchbound/1\ntitle: check\n"+
		"room: {volume: 50 m3, flow: 600 m3/h}\nstock:\n  - {substance: isopropanol, volume: 1 L}\n"))
	if err != nil || site == nil {
		t.Fatal(err, problems)
	}
	b.Case.Site = site
	figs := air.Read(b.Case, nil, b.Walk, nil, b.Courses)
	for id, want := range map[string]float64{"air.room_peak@spill/isopropanol": 67.2,
		"air.room_flammable@spill/isopropanol": 0.00336, "air.room_peak@delivery/isopropanol": 456,
		"air.room_flammable@delivery/isopropanol": 0.0228} {
		if f := bench.Find(t, figs, id); !nearly.Share(f.Value.V, want, 0.01) {
			t.Errorf("%s is %g %s, want %g", id, f.Value.V, f.Value.Unit, want)
		}
	}
	for i := range figs { // which nothing is held against
		if f := &figs[i]; f.Place == figure.Yard {
			t.Errorf("%s: the yard", f.ID)
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
		g := bench.Find(t, air.Read(b.Case, nil, b.Walk, nil, b.Courses), "air.room_peak@spill/"+slug)
		if !f.Value.Unknown() || !g.Value.Unknown() {
			t.Errorf("%q: %g %s, %g in the room", formula, f.Value.V, f.Value.Unit, g.Value.V)
		}
	}
}
