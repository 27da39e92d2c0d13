package ode

import (
	"math"
	"math/rand/v2"
	"testing"

	"etchbound/schemas/nearly"
)

// The factors against the matrix itself: residual of random systems, and the
// exact inverse of the Hilbert matrix of order 5 (first row 25, -300, 1050,
// -1400, 630; memory, and fixed by H inv(H) = 1).
func TestFactorAndSolve(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for n := 1; n <= 12; n++ {
		m, a, b := newMatrix(n), make([]float64, n*n), make([]float64, n)
		for i := range a {
			a[i] = rng.NormFloat64() * math.Pow(10, float64(i/n%5))
			m.a[i] = a[i]
		}
		x := make([]float64, n)
		for i := range b {
			b[i] = rng.NormFloat64()
			x[i] = b[i]
		}
		if !m.factor() {
			t.Fatal(n)
		}
		m.solve(x)
		for i := range b {
			sum, size := -b[i], math.Abs(b[i])
			for k := range x {
				sum += a[i*n+k] * x[k]
				size += math.Abs(a[i*n+k] * x[k])
			}
			if !nearly.To(sum, 0, 1e-13*size) {
				t.Errorf("n %d, row %d: residual %g of %g", n, i, sum, size)
			}
		}
	}
	m := newMatrix(5)
	for i := range 5 {
		for k := range 5 {
			m.a[i*5+k] = 1 / float64(i+k+1)
		}
	}
	x := []float64{1, 0, 0, 0, 0}
	if !m.factor() {
		t.Fatal("Hilbert")
	}
	m.solve(x)
	for i, want := range []float64{25, -300, 1050, -1400, 630} {
		if !nearly.Share(x[i], want, 1e-10) {
			t.Errorf("Hilbert %d: %g, want %g", i, x[i], want)
		}
	}
}

func TestSingularMatrices(t *testing.T) {
	for _, a := range [][]float64{{0, 0, 0, 0}, {1, 2, 2, 4}, {math.NaN(), 1, 1, 1}, {math.Inf(1), 1, 1, 1}} {
		m := newMatrix(2)
		copy(m.a, a)
		if m.factor() {
			t.Errorf("%v was factored", a)
		}
	}
}

// Differences against a Jacobian in closed form, on states and slopes twelve
// decades apart.
func TestJacobianByDifferences(t *testing.T) {
	p := Problem{
		To: 1, Start: []float64{0.7, 2e-6, 0.3}, Autonomous: true,
		Rate: func(_ int, _ float64, y, dy []float64) {
			dy[0] = -0.04*y[0] + 1e4*y[1]*y[2]
			dy[2] = 3e7 * y[1] * y[1]
			dy[1] = -dy[0] - dy[2]
		},
	}
	want := []float64{-0.04, 3000, 0.02, 0.04, -3120, -0.02, 0, 120, 0}
	for rtol, tolerance := range map[float64]float64{1e-6: 1e-6, 1e-10: 1e-9} {
		r := newRun(&p, Options{RelTol: rtol, AbsTol: []float64{rtol * 1e-6}})
		r.end = 1
		if !r.rate(0, r.y, r.f) || !r.linearise() {
			t.Fatal("not finite")
		}
		for i, w := range want {
			if d := math.Abs(r.jac[i] - w); !(d <= tolerance*math.Max(math.Abs(w), 1)) {
				t.Errorf("rtol %g, entry %d: %g, want %g", rtol, i, r.jac[i], w)
			}
		}
	}
}

// The derivative by time, at the end of the piece too, where it must not look
// beyond.
func TestTimeDifference(t *testing.T) {
	p := Problem{
		To: 2, Start: []float64{1},
		Rate: func(_ int, u float64, y, dy []float64) { dy[0] = y[0] * math.Sqrt(2-u) },
	}
	for _, at := range []float64{0, 1.5} {
		r := newRun(&p, Options{RelTol: 1e-6, AbsTol: []float64{1e-9}})
		r.t, r.end = at, 2
		if !r.rate(r.t, r.y, r.f) || !r.timeDifference() {
			t.Fatal("not finite")
		}
		if want := -0.5 / math.Sqrt(2-at); !nearly.Share(r.ft[0], want, 1e-6) {
			t.Errorf("%g: %g, want %g", at, r.ft[0], want)
		}
	}
}

// Nothing is allocated in the loop: ten times the steps, the same number of
// allocations.
func TestLoopDoesNotAllocate(t *testing.T) {
	p := Problem{
		To: 1, Start: []float64{1, 1}, Autonomous: true,
		Rate:  func(_ int, _ float64, y, dy []float64) { dy[0], dy[1] = y[1], -y[0] },
		Peaks: []Peak{{Of: func(_ int, _ float64, y []float64) float64 { return y[0] }}},
	}
	for _, m := range []Method{Explicit, Implicit} {
		count := func(step float64) float64 {
			o := Options{RelTol: 1e-8, AbsTol: []float64{1}, Method: m, MaxStep: step, Discard: true}
			return testing.AllocsPerRun(10, func() { _, _ = Solve(p, o) })
		}
		if few, many := count(0.1), count(0.001); many > few {
			t.Errorf("method %d: %g allocations, and %g with a hundred times the steps", m, few, many)
		}
	}
}
