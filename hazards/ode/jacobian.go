package ode

import "math"

// tight is the relative tolerance below which the error of one-sided
// differences would show; central ones cost twice the calls.
const tight = 1e-8

// linearise sets jac and ft at (t, y). False: not finite.
func (r *run) linearise() bool {
	r.stats.JacobianCalls++
	clear(r.jac)
	if r.p.Jacobian != nil {
		r.p.Jacobian(r.piece, r.t, r.y, r.jac)
		if !finite(r.jac) {
			return false
		}
	} else if !r.differences() {
		return false
	}
	r.linearised = true
	return r.p.Autonomous || r.timeDifference()
}

// differences fills jac by columns. The step is taken from the size at which a
// state begins to matter, so that a state near zero still has a slope.
func (r *run) differences() bool {
	copy(r.arg, r.y)
	for i := range r.n {
		size := math.Abs(r.y[i]) + r.abstol[i]/r.o.RelTol
		ok := false
		if r.o.RelTol < tight {
			ok = r.central(i, 0x1p-17*size)
		}
		if !ok && !r.oneSided(i, 0x1p-26*size) && !r.oneSided(i, -0x1p-26*size) {
			return false
		}
		r.arg[i] = r.y[i]
	}
	return true
}

func (r *run) oneSided(i int, d float64) bool {
	r.arg[i] = r.y[i] + d
	if !r.rate(r.t, r.arg, r.e) {
		return false
	}
	q := 1 / (r.arg[i] - r.y[i])
	for k := range r.n {
		r.jac[k*r.n+i] = (r.e[k] - r.f[k]) * q
	}
	return true
}

func (r *run) central(i int, d float64) bool {
	r.arg[i] = r.y[i] - d
	low := r.arg[i]
	if !r.rate(r.t, r.arg, r.k[0]) {
		return false
	}
	r.arg[i] = r.y[i] + d
	if !r.rate(r.t, r.arg, r.e) {
		return false
	}
	q := 1 / (r.arg[i] - low)
	for k := range r.n {
		r.jac[k*r.n+i] = (r.e[k] - r.k[0][k]) * q
	}
	return true
}

// timeDifference sets ft, the derivative of f by t at constant y.
func (r *run) timeDifference() bool {
	d := 0x1p-26 * max(math.Abs(r.t), r.end-r.t)
	if r.t+d > r.end {
		d = -d
	}
	t := r.t + d
	if !r.rate(t, r.y, r.ft) {
		return false
	}
	q := 1 / (t - r.t)
	for i := range r.ft {
		r.ft[i] = (r.ft[i] - r.f[i]) * q
	}
	return true
}
