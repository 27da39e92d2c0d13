package thermal_test

import (
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/figure"
	"etchbound/hazards/thermal"
	"etchbound/hazards/vessel"
	"etchbound/schemas/nearly"
)

// accumulated are the runs of steps in which nothing has reacted when cooling fails.
func accumulated(steps ...int) []vessel.Run {
	var out []vessel.Run
	for _, n := range steps {
		out = append(out, vessel.Run{Plan: vessel.Plan{Step: n, Law: vessel.Accumulated}})
	}
	return out
}

// A dump vessel holds the liquor and its water to the stated share. By hand, of a gram in 20
// mL of 10 wt% HF: V = (0.020 L + m/0.99705)/0.7, and the water is never less than that of
// the quench.
func TestDumpVesselHoldsLiquorAndWater(t *testing.T) {
	b := bench.Steps(t, bench.Etch)
	figs := thermal.Read(b.Case, nil, b.Walk, accumulated(2), b.Courses)
	of := func(id string) float64 { return bench.Find(t, figs, id).Value.V }
	m := of("heat.dump.water@2")
	if !(m >= of("heat.quench_water@2")) || !(m < 1.5*of("heat.quench_water@2")) {
		t.Errorf("%g kg of dump water, %g of quench water", m, of("heat.quench_water@2"))
	}
	if v := of("heat.dump.volume@2"); !nearly.To(v, (0.020+m/0.99705)/0.7, 1e-9) {
		t.Errorf("a dump vessel of %g L for %g kg", v, m)
	}
}

// A liquid of which no heat of mixing is held leaves the water unknown, and the vessel.
func TestDumpOfWhatIsNotHeldIsUnknown(t *testing.T) {
	b := bench.Steps(t, bench.Etch, "  - {do: charge, in: pot, what: [{substance: odd, formula: C9H9O9, not_held: true, "+
		"volume: 2 mL}], temperature: 20 degC}\n")
	seen := 0
	for _, f := range thermal.Read(b.Case, nil, b.Walk, accumulated(2, 3), b.Courses) {
		if f.Place == figure.Step(3) && (f.Quantity == "heat.dump.water" || f.Quantity == "heat.dump.volume") {
			seen++
			if !f.Value.Unknown() {
				t.Errorf("%s is %g", f.ID, f.Value.V)
			}
		}
	}
	if seen != 2 {
		t.Errorf("%d figures of a dump vessel, want two that are not known", seen)
	}
}
