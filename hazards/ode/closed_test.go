package ode_test

import (
	"math"
	"strings"
	"testing"

	"etchbound/hazards/ode"
)

// closed gives the values of closed_forms.csv for one problem: quantity and
// argument (0 where there is none) to value.
func closed(t *testing.T, problem string) map[string]map[float64]float64 {
	got := map[string]map[float64]float64{}
	for _, r := range table(t, "closed_forms.csv") {
		if r["problem"] != problem {
			continue
		}
		at := 0.0
		if r["at"] != "" {
			at = r.num(t, "at")
		}
		if got[r["quantity"]] == nil {
			got[r["quantity"]] = map[float64]float64{}
		}
		got[r["quantity"]][at] = r.num(t, "value")
	}
	if len(got) == 0 {
		t.Fatalf("no rows for %s", problem)
	}
	return got
}

// compareScalar integrates one state and compares along the trajectory. The values
// are printed to twelve digits.
func compareScalar(t *testing.T, name string, p ode.Problem, want map[float64]float64) {
	t.Helper()
	for label, m := range methods {
		for _, rtol := range []float64{1e-6, 1e-10} {
			res := solved(t, p, ode.Options{RelTol: rtol, AbsTol: []float64{1e-3 * rtol}, Method: m})
			y := make([]float64, len(p.Start))
			for at, v := range want {
				if err := res.At(at, y); err != nil {
					t.Fatal(err)
				}
				if d := off(y[0]/v, 1); d > 10*rtol+2e-12 {
					t.Errorf("%s, %s, rtol %g, %g s: %.12g, want %.12g", name, label, rtol, at, y[0], v)
				}
			}
		}
	}
}

// A1: first-order reaction dosed for 600 s, then left alone.
func TestIsothermalDosing(t *testing.T) {
	const dose, k = 1e-4, 2e-3
	want := closed(t, "A1")
	p := ode.Problem{
		To: 1200, Start: []float64{0}, Autonomous: true, Switches: []ode.Switch{{At: 600}},
		Rate: func(piece int, _ float64, y, dy []float64) {
			dy[0] = -k * y[0]
			if piece == 0 {
				dy[0] += dose
			}
		},
	}
	points := want["unreacted_mol"]
	points[1200] = want["unreacted_1200_s_mol"][0]
	compareScalar(t, "A1", p, points)
	fraction := points[600] / (dose * 600)
	if d := off(fraction, want["accumulated_fraction_600_s"][0]); d > 1e-11 {
		t.Errorf("table: accumulated fraction %g", fraction)
	}
}

// A2: shrinking core, surface reaction. The rate has no slope at the end,
// X = 1, so the integration stays short of it.
func TestShrinkingCoreSurface(t *testing.T) {
	p := ode.Problem{
		To: 3240, Start: []float64{0}, Autonomous: true,
		Rate: func(_ int, _ float64, y, dy []float64) {
			c := math.Cbrt(1 - y[0])
			dy[0] = 3 * c * c / 3600
		},
	}
	compareScalar(t, "A2", p, closed(t, "A2")["conversion"])
}

// A3: shrinking core, diffusion through the product layer. The rate is
// infinite at X = 0: started from X = 1e-6 at its own time.
func TestShrinkingCoreDiffusion(t *testing.T) {
	elapsed := func(x float64) float64 { // 1 - 3 c^2 + 2 c^3 with c = (1-x)^(1/3), without cancellation
		d := -math.Expm1(math.Log1p(-x) / 3)
		return 3600 * d * d * (3 - 2*d)
	}
	p := ode.Problem{
		From: elapsed(1e-6), To: 3240, Start: []float64{1e-6}, Autonomous: true,
		Rate: func(_ int, _ float64, y, dy []float64) {
			c := math.Cbrt(1 - y[0])
			dy[0] = c / (1 - c) / 7200
		},
	}
	compareScalar(t, "A3", p, closed(t, "A3")["conversion"])
}

// A4: nucleation and growth with exponent 2, which depends on time.
func TestAvrami(t *testing.T) {
	p := ode.Problem{
		To: 20000, Start: []float64{0},
		Rate: func(_ int, u float64, y, dy []float64) { dy[0] = (1 - y[0]) * 2e-8 * u },
	}
	compareScalar(t, "A4", p, closed(t, "A4")["conversion"])
}

// A5: self-accelerating. Its rate has its maximum at a known time.
func TestSelfAccelerating(t *testing.T) {
	want := closed(t, "A5")
	peak := want["peak_s"][0]
	points := want["conversion"]
	half := points[0]
	delete(points, 0)
	rate := func(x float64) float64 { return 1e-4 * (1 - x) * (0.01 + x) }
	p := ode.Problem{
		To: 100000, Start: []float64{0}, Autonomous: true,
		Rate:  func(_ int, _ float64, y, dy []float64) { dy[0] = rate(y[0]) },
		Peaks: []ode.Peak{{Of: func(_ int, _ float64, y []float64) float64 { return rate(y[0]) }}},
	}
	compareScalar(t, "A5", p, points)
	for _, rtol := range []float64{1e-6, 1e-10} {
		top := solved(t, p, ode.Options{RelTol: rtol, AbsTol: []float64{1e-3 * rtol}}).Peaks[0]
		// The relative error of time is that of the growth, about the tolerance.
		if off(top.T, peak) > 10*rtol*peak+1e-6 || off(top.Y[0], half) > 10*rtol || top.Edge {
			t.Errorf("rtol %g: %+v, want %g s at %g", rtol, top, peak, half)
		}
	}
}

// A6: cooling towards a bath; after one time constant 1/e is left.
func TestCooling(t *testing.T) {
	constant := closed(t, "A6")["time_constant_s"][0]
	p := ode.Problem{
		To: 2 * constant, Start: []float64{60}, Autonomous: true,
		Rate: func(_ int, _ float64, y, dy []float64) { dy[0] = -2 * y[0] / (0.207 * 3800) },
	}
	compareScalar(t, "A6", p, map[float64]float64{constant: 60 / math.E, 2 * constant: 60 / math.E / math.E})
}

// R6 is adiabatic, so that its times follow from an integral over conversion.
// Each is an event, and one run finds them all.
func TestTimesToConversion(t *testing.T) {
	want := closed(t, "R6")
	c := references(t)["R6"]
	p := c.problem()
	var times []float64
	for x, at := range want["time_to_conversion_s"] {
		target := x * c.p["ntot"]
		p.Events = append(p.Events, ode.Event{Required: true,
			Of: func(_ int, _ float64, y []float64) float64 { return y[2] - target }})
		times = append(times, at)
	}
	for label, m := range methods {
		for rtol, seconds := range map[float64]float64{1e-10: 1e-4, 1e-6: 0.05} {
			res := solved(t, p, c.options(rtol, m))
			if len(res.Hits) != len(times) {
				t.Fatalf("%s: %d hits", label, len(res.Hits))
			}
			for _, h := range res.Hits {
				if d := off(h.T, times[h.Event]); d > seconds || !h.Rising {
					t.Errorf("%s, rtol %g: %.7f s, want %.7f", label, rtol, h.T, times[h.Event])
				}
			}
			if d := off(res.Y[3]-c.p["T0"], want["rise_k"][0]); d > 1e3*rtol {
				t.Errorf("%s, rtol %g: rise off by %.2e K", label, rtol, d)
			}
		}
	}
}

// Time to the maximum rate of an adiabatic batch, laws of order n and
// self-accelerating, against integrals over temperature.
func TestTimeToMaximumRate(t *testing.T) {
	for _, r := range table(t, "runaway.csv") {
		start, power, cp := r.num(t, "start_k"), r.num(t, "power_w_kg"), r.num(t, "cp_j_kg_k")
		ea, rise, want := r.num(t, "ea_j_mol"), r.num(t, "rise_k"), r.num(t, "time_to_max_rate_s")
		kind, parameter, _ := strings.Cut(r["law"], " ")
		value := row{"v": parameter}.num(t, "v")
		rate := func(temperature float64) float64 {
			x := (temperature - start) / rise
			f := math.Pow(math.Max(0, 1-x), value)
			if kind != "order" {
				f = math.Max(0, 1-x) * (value + x) / value
			}
			return power / cp * math.Exp(-ea/gas*(1/temperature-1/start)) * f
		}
		p := ode.Problem{
			To: 1.5 * want, Start: []float64{start}, Autonomous: true,
			Rate:  func(_ int, _ float64, y, dy []float64) { dy[0] = rate(y[0]) },
			Peaks: []ode.Peak{{Of: func(_ int, _ float64, y []float64) float64 { return rate(y[0]) }}},
		}
		top := solved(t, p, ode.Options{RelTol: 1e-11, AbsTol: []float64{1e-9}}).Peaks[0]
		if d := off(top.T, want); d > r.num(t, "tolerance_s") || top.Edge {
			t.Errorf("%v: %.5f s, want %.5f", r, top.T, want)
		}
	}
}
