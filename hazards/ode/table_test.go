package ode

import (
	"math"
	"testing"

	"etchbound/schemas/nearly"
)

// The conditions that the coefficients of the explicit pair must meet by
// themselves: rows add up to the times of the stages, the weights integrate
// powers of t up to the fourth, the weights of the error cancel.
func TestExplicitTable(t *testing.T) {
	for i, c := range []struct{ sum, want float64 }{
		{ea21, ec2}, {ea31 + ea32, ec3}, {ea41 + ea42 + ea43, ec4},
		{ea51 + ea52 + ea53 + ea54, ec5}, {ea61 + ea62 + ea63 + ea64 + ea65, 1},
		{eb1 + eb3 + eb4 + eb5 + eb6, 1}, {ee1 + ee3 + ee4 + ee5 + ee6 + ee7, 0},
		{ed1 + ed3 + ed4 + ed5 + ed6 + ed7, 0},
		{eb3*ec3 + eb4*ec4 + eb5*ec5 + eb6, 1.0 / 2},
		{eb3*ec3*ec3 + eb4*ec4*ec4 + eb5*ec5*ec5 + eb6, 1.0 / 3},
		{eb3*ec3*ec3*ec3 + eb4*ec4*ec4*ec4 + eb5*ec5*ec5*ec5 + eb6, 1.0 / 4},
		{eb3*ec3*ec3*ec3*ec3 + eb4*ec4*ec4*ec4*ec4 + eb5*ec5*ec5*ec5*ec5 + eb6, 1.0 / 5},
	} {
		if !nearly.To(c.sum, c.want, 1e-14) {
			t.Errorf("condition %d: %.17g, want %.17g", i, c.sum, c.want)
		}
	}
}

// The table of the implicit pair is kept in its transformed form. Turned back
// (G is the inverse of 1/gamma - C, and alpha = A G), the rows of alpha must add
// up to the times of the stages and those of G to the factors of df/dt.
// Solving Ordinary Differential Equations II, section IV.7.
func TestImplicitTable(t *testing.T) {
	c := [6][6]float64{
		{}, {rc21}, {rc31, rc32}, {rc41, rc42, rc43}, {rc51, rc52, rc53, rc54},
		{rc61, rc62, rc63, rc64, rc65},
	}
	a := [6][6]float64{
		{}, {ra21}, {ra31, ra32}, {ra41, ra42, ra43}, {ra51, ra52, ra53, ra54},
		{ra51, ra52, ra53, ra54, 1},
	}
	times := [6]float64{0, rt2, rt3, rt4, 1, 1}
	factors := [6]float64{rd1, rd2, rd3, rd4, 0, 0}
	// x = G 1 solves (1/gamma - C) x = 1 forward, row by row.
	var x [6]float64
	for i := range x {
		x[i] = 1
		for k := range i {
			x[i] += c[i][k] * x[k]
		}
		x[i] *= rgamma
		if !nearly.To(x[i], factors[i], 1e-12) {
			t.Errorf("stage %d: factor of df/dt %.16g, want %g", i+1, x[i], factors[i])
		}
		alpha := 0.0
		for k := range i {
			alpha += a[i][k] * x[k]
		}
		if !nearly.To(alpha, times[i], 1e-12) {
			t.Errorf("stage %d: time %.16g, want %g", i+1, alpha, times[i])
		}
	}
	// The last stage closes the step: alpha of the new value, U6 included, is 1.
	sum := ra51*x[0] + ra52*x[1] + ra53*x[2] + ra54*x[3] + x[4] + x[5]
	if !nearly.To(sum, 1, 1e-12) {
		t.Errorf("weights add up to %.16g", sum)
	}
}

// On y' = z y a step multiplies y by P(z) / (1 - z/4)^6. The first five
// coefficients of P are those of exp(z) (1 - z/4)^6, or the order is not 4;
// its degree is 5, or the method does not damp what is infinitely stiff. Every
// coefficient of the table takes part.
func TestImplicitStabilityFunction(t *testing.T) {
	grow := func(z float64) float64 {
		p := Problem{
			To: 1, Start: []float64{1}, Autonomous: true,
			Rate:     func(_ int, _ float64, y, dy []float64) { dy[0] = z * y[0] },
			Jacobian: func(_ int, _ float64, _, j []float64) { j[0] = z },
		}
		r := newRun(&p, Options{RelTol: 0.1, AbsTol: []float64{1}, Method: Implicit})
		r.end = 1
		if !r.rate(0, r.y, r.f) {
			t.Fatal(z)
		}
		if _, out := r.implicitStep(1); out != tried {
			t.Fatal(z)
		}
		return r.z[0]
	}
	const n = 7 // one more than the degree needs, to see that it is 5
	m, p := newMatrix(n), make([]float64, n)
	for i := range n {
		z := -2 * float64(i+1) / n
		for k := range n {
			m.a[i*n+k] = math.Pow(z, float64(k))
		}
		p[i] = grow(z) * math.Pow(1-z/4, 6)
	}
	if !m.factor() {
		t.Fatal("matrix")
	}
	m.solve(p)
	// Taylor coefficients of exp(z) (1 - z/4)^6 by the binomial theorem.
	binomial, factorial := []float64{1, -6.0 / 4, 15.0 / 16, -20.0 / 64, 15.0 / 256}, []float64{1, 1, 2, 6, 24}
	for k := range 5 {
		want := 0.0
		for i := 0; i <= k; i++ {
			want += binomial[i] / factorial[k-i]
		}
		if !nearly.To(p[k], want, 1e-9) {
			t.Errorf("coefficient %d: %.12g, want %.12g", k, p[k], want)
		}
	}
	if !nearly.To(p[6], 0, 1e-9) {
		t.Errorf("degree 6: %g", p[6])
	}
	if r := grow(-1e9); !nearly.To(r, 0, 1e-7) {
		t.Errorf("not damped: %g", r)
	}
}
