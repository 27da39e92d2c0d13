package ode_test

import (
	"math"
	"testing"

	"etchbound/hazards/ode"
	"etchbound/schemas/nearly"
)

// waves is not linear, depends on time and has a closed solution, so that no
// order condition is left out: y = (exp(sin t), cos t, 1/(1+9 exp(-t))).
func waves() ode.Problem {
	return ode.Problem{
		To:    6,
		Start: []float64{1, 1, 0.1},
		Rate: func(_ int, t float64, y, dy []float64) {
			dy[0] = y[0] * y[1]
			dy[1] = -0.5 * (math.Sin(t) + math.Log(y[0]))
			dy[2] = y[2] * (1 - y[2]) * (1 + y[0] - math.Exp(math.Sin(t)))
		},
	}
}

func exact(t float64) []float64 {
	s, c := math.Sincos(t)
	return []float64{math.Exp(s), c, 1 / (1 + 9*math.Exp(-t))}
}

// fixed runs with steps of To/n: a tolerance that never binds.
func fixed(t *testing.T, p ode.Problem, m ode.Method, n int) ode.Result {
	h := (p.To - p.From) / float64(n)
	res := solved(t, p, ode.Options{RelTol: 0.1, AbsTol: []float64{1}, Method: m, InitialStep: h, MaxStep: h})
	if res.Stats.Steps < n || res.Stats.Steps > n+1 {
		t.Fatalf("%d steps, asked for %d", res.Stats.Steps, n)
	}
	return res
}

func distance(a, b []float64) (d float64) {
	for i := range a {
		d = max(d, math.Abs(a[i]-b[i])/math.Max(1, math.Abs(b[i])))
	}
	return d
}

// errorAt is the greatest error over all steps at the given parts of a step.
func errorAt(t *testing.T, m ode.Method, n int, parts ...float64) (d float64) {
	res, y := fixed(t, waves(), m, n), make([]float64, 3)
	h := 6 / float64(n)
	for i := range n {
		for _, f := range parts {
			u := (float64(i) + f) * h
			if err := res.At(u, y); err != nil {
				t.Fatal(err)
			}
			d = max(d, distance(y, exact(u)))
		}
	}
	return d
}

func endError(t *testing.T, m ode.Method, n int) float64 { return errorAt(t, m, n, 0) }

func denseError(t *testing.T, m ode.Method, n int) float64 {
	return errorAt(t, m, n, 0.25, 0.5, 0.75)
}

// The order seen over two halvings lies within 0.2 of the order of the
// method. An interpolant of order q has a local error of order q+1, which is
// what shows as long as it is above the error of the steps.
func TestOrderOfConvergence(t *testing.T) {
	for _, c := range []struct {
		name  string
		m     ode.Method
		error func(*testing.T, ode.Method, int) float64
		n     int
		order float64
	}{
		{"explicit", ode.Explicit, endError, 120, 5},
		{"implicit", ode.Implicit, endError, 60, 4},
		{"explicit, inside steps", ode.Explicit, denseError, 60, 5},
		{"implicit, inside steps", ode.Implicit, denseError, 60, 4},
	} {
		coarse, fine := c.error(t, c.m, c.n), c.error(t, c.m, 4*c.n)
		order := math.Log2(coarse/fine) / 2
		t.Logf("%s: errors %.2e, %.2e, order %.2f", c.name, coarse, fine, order)
		if !nearly.To(order, c.order, 0.2) {
			t.Errorf("%s: order %.2f, want %g", c.name, order, c.order)
		}
	}
}

// A stiff linear problem with a known smooth solution: y' = -1e6 (y - sin t) +
// cos t. The implicit method must neither blow up nor need steps of 1e-6.
func TestStiffForcing(t *testing.T) {
	p := ode.Problem{
		To: 10, Start: []float64{0},
		Rate: func(_ int, t float64, y, dy []float64) { dy[0] = -1e6*(y[0]-math.Sin(t)) + math.Cos(t) },
	}
	for _, m := range []ode.Method{ode.Automatic, ode.Implicit} {
		res := solved(t, p, ode.Options{RelTol: 1e-6, AbsTol: []float64{1e-8}, Method: m})
		if d := off(res.Y[0], math.Sin(10)); d > 1e-6 {
			t.Errorf("method %d: off by %.2e", m, d)
		}
		if res.Stats.Steps > 1000 {
			t.Errorf("method %d: %d steps", m, res.Stats.Steps)
		}
	}
}

// Ten times the tolerance, about ten times the error.
func TestErrorFollowsTolerance(t *testing.T) {
	for label, m := range methods {
		last := math.Inf(1)
		for _, rtol := range []float64{1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9} {
			res := solved(t, waves(), ode.Options{RelTol: rtol, AbsTol: []float64{rtol}, Method: m})
			d := distance(res.Y, exact(6))
			if d > 100*rtol {
				t.Errorf("%s, rtol %g: off by %.2e", label, rtol, d)
			}
			if d > last {
				t.Errorf("%s, rtol %g: off by %.2e, more than the %.2e of ten times the tolerance", label, rtol, d, last)
			}
			last = d
		}
	}
}
