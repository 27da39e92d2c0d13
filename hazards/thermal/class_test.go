package thermal_test

import (
	"math"
	"testing"

	"etchbound/hazards/roots"
	"etchbound/hazards/thermal"
	"etchbound/schemas/nearly"
)

// td24 is the temperature in degC from which a reaction of order zero takes a
// day to its greatest rate: cp R T^2/(q E) = 86400 s, with q by Arrhenius from
// 10 W/kg at 150 degC.
func td24(t *testing.T, cp, ea float64) float64 {
	t.Helper()
	const gas, ref, power = 8.314462618, 423.15, 10.0
	r, err := roots.Find(func(x float64) float64 {
		return cp*gas*x*x/(power*math.Exp(-ea/gas*(1/x-1/ref))*ea) - 86400
	}, 250, 500, 1e-9)
	if err != nil {
		t.Fatal(err)
	}
	return r.X - 273.15
}

// One chain that reaches every class, computed for the reference data of the
// project: 120 kJ/kg, 2000 J/kg/K, 60 degC, so 60 K of rise; decomposition of
// 10 W/kg at 150 degC and 100 kJ/mol, so 102.34978 degC.
func TestClassChain(t *testing.T) {
	d := td24(t, 2000, 100000)
	if !nearly.To(d, 102.34978, 1e-4) {
		t.Fatalf("%.5f degC, want 102.34978", d)
	}
	for _, c := range []struct {
		accumulated, limit float64
		class              float64
	}{{0.4, 100, 1}, {0.7, 100, 3}, {1, 100, 4}, {0.4, 110, 2}, {0.7, 110, 2}, {1, 110, 5}} {
		if got := thermal.Class(60, 60+60*c.accumulated, c.limit, d); got != c.class {
			t.Errorf("%.0f %% unreacted, limit %g degC: class %g, want %g", 100*c.accumulated, c.limit, got, c.class)
		}
	}
	// The 70 % row is 0.35 K from the next class.
	if m := thermal.Margin(3, 102, 100, d); !nearly.To(m, 0.34978, 1e-4) {
		t.Errorf("margin %.5f K, want 0.34978", m)
	}
}

// Highest temperatures of the reference integrations against boiling at 373.15 K
// with no decomposition near: class 1, or 3 where it boils; with one at 360 K the
// eighth case is class 5.
func TestClassOfReferenceRuns(t *testing.T) {
	const far = 1000
	for _, c := range []struct{ process, mtsr, td24, want float64 }{
		{275.15, 309.11, far, 1}, {275.15, 312.33, far, 1}, {308.15, 343.74, far, 1}, {278.15, 337.65, far, 1},
		{288.15, 317.23, far, 1},
		{298.15, 375.35, far, 3}, {298.15, 377.33, far, 3}, {298.15, 377.33, 360, 5},
	} {
		if got := thermal.Class(c.process, c.mtsr, 373.15, c.td24); got != c.want {
			t.Errorf("%+v: class %g", c, got)
		}
	}
}

// What is equal counts as the worse class, and what is unknown gives none.
func TestClassEdges(t *testing.T) {
	for _, c := range []struct{ mtsr, limit, td24, want float64 }{
		{100, 100, 120, 3}, {110, 120, 110, 5}, {90, 110, 110, 2}, {120, 100, 120, 4},
	} {
		if got := thermal.Class(60, c.mtsr, c.limit, c.td24); got != c.want {
			t.Errorf("%+v: class %g", c, got)
		}
	}
	nan := math.NaN()
	for _, c := range [][4]float64{{nan, 90, 100, 110}, {60, nan, 100, 110}, {60, 90, nan, 110}, {60, 90, 100, nan}} {
		if got := thermal.Class(c[0], c[1], c[2], c[3]); !math.IsNaN(got) {
			t.Errorf("%v: class %g", c, got)
		}
	}
}
