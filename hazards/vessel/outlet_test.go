package vessel_test

import (
	"math"
	"testing"

	"etchbound/hazards/vessel"
	"etchbound/schemas/nearly"
)

const litreAMinute = 1e-3 / 60

// Worked values of the reference data of the project, computed there: hydrogen
// of 0.0824 kg/m3 and 8.9e-6 Pa s at 25 degC and 101.325 kPa.
func TestOutletWorkedValues(t *testing.T) {
	h2 := vessel.Outlet{Discharge: 0.62, Density: 0.0823945, Viscosity: 8.9e-6}
	line := h2
	line.Line, line.Discharge = 2, 1e9
	bubbler := h2
	bubbler.Head = 998.0 * vessel.Gravity * 0.02
	for name, c := range map[string][3]float64{ // got, want, tolerance
		"3 mm orifice":        {h2.Drop(7.7047366*litreAMinute, 0.003), 35.33, 0.05},
		"10 mm orifice":       {h2.Drop(1511.1192*litreAMinute, 0.010), 11020, 15},
		"2 m of 4 mm tube":    {line.Drop(7.7047366*litreAMinute, 0.004), 363.56, 0.4},
		"20 mm water bubbler": {bubbler.Drop(litreAMinute, 1), 195.74, 0.02},
	} {
		if !nearly.To(c[0], c[1], c[2]) {
			t.Errorf("%s: %g Pa, want %g", name, c[0], c[1])
		}
	}
}

// The bore and the flow are each other's inverse, with and without a line.
func TestBoreAndFlowAreInverse(t *testing.T) {
	for _, l := range []float64{0, 0.5, 5} {
		for _, q := range []float64{0.01, 1, 100, 5000} {
			o := vessel.Outlet{Discharge: 0.62, Density: 1.2, Viscosity: 1.8e-5, Line: l, Head: 200}
			d := o.Bore(q*litreAMinute, 1000)
			if p := o.Drop(q*litreAMinute, d); !nearly.Share(p, 1000, 1e-6) {
				t.Errorf("%g L/min, %g m: %g Pa through the bore found", q, l, p)
			}
			if back := o.Flow(d, 1000) / litreAMinute; !nearly.Share(back, q, 1e-6) {
				t.Errorf("%g L/min, %g m: %g L/min back", q, l, back)
			}
		}
	}
	o := vessel.Outlet{Discharge: 0.62, Density: 1.2, Viscosity: 1.8e-5, Head: 1500}
	if d := o.Bore(litreAMinute, 1000); !math.IsNaN(d) {
		t.Errorf("a head above the pressure allowed has a bore of %g m", d)
	}
	if q := o.Flow(0.01, 1000); q != 0 {
		t.Errorf("a head above the pressure allowed lets %g m3/s through", q)
	}
}

// Worked values of the reference data: 50 mL, 0.0495 L/min passes 4 % at 2.474 s
// and 75 % at 84.02 s.
func TestHeadspaceWorkedValues(t *testing.T) {
	for _, c := range [][2]float64{{0.04, 2.474}, {0.75, 84.02}} {
		if got := vessel.VolumeFor(c[0], 0.050) / 0.0495 * 60; !nearly.To(got, c[1], 0.005) {
			t.Errorf("%g %% at %.4f s, want %.4f", 100*c[0], got, c[1])
		}
		if got := vessel.Share(vessel.VolumeFor(c[0], 0.05), 0.05); !nearly.To(got, c[0], 1e-12) {
			t.Errorf("%g comes back as %g", c[0], got)
		}
	}
}

// Table of the reference data: sigma 0.072 N/m, rho 1035 kg/m3, C0 1.2.
func TestVoidWorkedValues(t *testing.T) {
	rise := vessel.RiseVelocity(0.072, 1035)
	if !nearly.To(rise, 0.19070418, 1e-6) {
		t.Fatalf("rise velocity %.8f m/s, want 0.19070418", rise)
	}
	for _, c := range [][2]float64{{1, 0.0052659}, {10, 0.0548263}, {50, 0.3429685}, {100, 0.6655725}, {300, 0.7983}} {
		if got := vessel.Void(c[0]/1000, rise, 1.2); !nearly.To(got, c[1], 1e-4) {
			t.Errorf("%g mm/s: %.7f, want %.7f", c[0], got, c[1])
		}
	}
	if got := vessel.Void(0, rise, 1.2); got != 0 {
		t.Errorf("no gas makes a void of %g", got)
	}
}
