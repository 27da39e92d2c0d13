package ode

import "math"

// The loops of the stages, written out by number of terms: a loop over terms
// inside a loop over states costs twice as much at six states.

func add1(dst, y []float64, a float64, u []float64) {
	y, u = y[:len(dst)], u[:len(dst)]
	for i := range dst {
		dst[i] = y[i] + float64(a*u[i])
	}
}

func add2(dst, y []float64, a float64, u []float64, b float64, v []float64) {
	y, u, v = y[:len(dst)], u[:len(dst)], v[:len(dst)]
	for i := range dst {
		dst[i] = y[i] + (float64(a*u[i]) + float64(b*v[i]))
	}
}

func add3(dst, y []float64, a float64, u []float64, b float64, v []float64, c float64, w []float64) {
	y, u, v, w = y[:len(dst)], u[:len(dst)], v[:len(dst)], w[:len(dst)]
	for i := range dst {
		dst[i] = y[i] + (float64(a*u[i]) + float64(b*v[i]) + float64(c*w[i]))
	}
}

func add4(dst, y []float64, a float64, u []float64, b float64, v []float64, c float64, w []float64, d float64,
	x []float64) {
	y, u, v, w, x = y[:len(dst)], u[:len(dst)], v[:len(dst)], w[:len(dst)], x[:len(dst)]
	for i := range dst {
		dst[i] = y[i] + (float64(a*u[i]) + float64(b*v[i]) + float64(c*w[i]) + float64(d*x[i]))
	}
}

func add5(dst, y []float64, a float64, u []float64, b float64, v []float64, c float64, w []float64, d float64,
	x []float64, e float64, z []float64) {
	y, u, v, w, x, z = y[:len(dst)], u[:len(dst)], v[:len(dst)], w[:len(dst)], x[:len(dst)], z[:len(dst)]
	for i := range dst {
		dst[i] = y[i] + (float64(a*u[i]) + float64(b*v[i]) + float64(c*w[i]) + float64(d*x[i]) + float64(e*z[i]))
	}
}

// finite is true if every value is: no exponent is all ones. Whole numbers are
// compared, since every stage of every step passes here.
func finite(v []float64) bool {
	const ones = 0x7FF << 52
	for _, x := range v {
		if math.Float64bits(x)&ones == ones {
			return false
		}
	}
	return true
}

// scale sets the weights of the error norm for a step from y to z.
func (r *run) scale(y, z []float64) {
	w := r.weight
	y, z, a := y[:len(w)], z[:len(w)], r.abstol[:len(w)]
	for i := range w {
		w[i] = 1 / (a[i] + float64(r.o.RelTol*max(math.Abs(y[i]), math.Abs(z[i]))))
	}
}

// norm is the root mean square of v in units of the tolerance.
func (r *run) norm(v []float64) float64 {
	w, s := r.weight[:len(v)], 0.0
	for i := range v {
		e := v[i] * w[i]
		s += float64(e * e)
	}
	return math.Sqrt(s / float64(len(v)))
}

// normDiff is norm(u - v).
func (r *run) normDiff(u, v []float64) float64 {
	w, s := r.weight[:len(u)], 0.0
	v = v[:len(u)]
	for i := range u {
		e := (u[i] - v[i]) * w[i]
		s += float64(e * e)
	}
	return math.Sqrt(s / float64(len(u)))
}
