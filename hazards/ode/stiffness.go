package ode

import "math"

// stiffness decides between the methods in automatic mode. Solving Ordinary
// Differential Equations II, Springer, 1996, section IV.2: the explicit pair
// is held back by stability where h times the dominant eigenvalue stays near
// the border of its stability domain, 3.3 on the real axis.
//
// Both waits double with every change, up to a bound, so that a problem at the
// border does not go to and fro, and the wrong method costs no more than a
// share of the work done.
type stiffness struct {
	stiff, mild  int
	endure, wait int       // stiff steps before implicit; mild steps before explicit
	margin       float64   // |h lambda| of the implicit step below which explicit is cheaper
	v            []float64 // power iteration for the spectral radius
}

const (
	nearBorder  = 2.2 // a tight tolerance keeps h lambda well inside the domain
	firstEndure = 8
	firstWait   = 4
	longestWait = 512
	mildSteps   = 6 // away from the border, to forget
)

// newStiffness weighs the calls of Rate of an implicit step against the six of
// an explicit one, which can be as long as 2.8 over the dominant eigenvalue;
// the factors of a matrix count as half a call a state.
func (r *run) newStiffness(v []float64) stiffness {
	cost := 7 + float64(0.5*float64(r.n))
	if r.p.Jacobian == nil {
		cost += float64(r.n)
		if r.o.RelTol < tight {
			cost += float64(r.n)
		}
	}
	return stiffness{endure: firstEndure, wait: firstWait, margin: 0.8 * 2.8 * cost / 6, v: v}
}

// judge looks at the step just accepted, before the state moves on.
func (r *run) judge(h float64) {
	if r.o.Method != Automatic {
		return
	}
	if r.implicit {
		r.judgeImplicit(h)
	} else {
		r.judgeExplicit(h)
	}
}

// judgeExplicit uses the last two stages, both at the end of the step.
func (r *run) judgeExplicit(h float64) {
	s := &r.stiffness
	apart := r.normDiff(r.z, r.arg)
	if apart > 0 && h*r.normDiff(r.g, r.k[4]) > nearBorder*apart {
		s.mild = 0
		if s.stiff++; s.stiff >= s.endure {
			s.endure = min(2*s.endure, longestWait)
			r.change(true)
		}
		return
	}
	if s.mild++; s.mild >= mildSteps {
		s.stiff = 0
	}
}

func (r *run) judgeImplicit(h float64) {
	s := &r.stiffness
	if h*r.spectralRadius() > s.margin {
		s.mild = 0
		return
	}
	if s.mild++; s.mild >= s.wait {
		s.wait = min(2*s.wait, longestWait)
		r.change(false)
	}
}

func (r *run) change(implicit bool) {
	r.implicit = implicit
	r.stats.MethodChanges++
	r.stiffness.stiff, r.stiffness.mild = 0, 0
	r.control.first = true
}

// spectralRadius does one step of power iteration in units of the tolerance;
// the vector is kept from step to step.
func (r *run) spectralRadius() float64 {
	v, u := r.stiffness.v, r.arg
	size := r.norm(v)
	if size == 0 || !isFinite(size) {
		for i := range v {
			v[i] = 1 / r.weight[i]
		}
		size = 1
	}
	for i := range u {
		sum := 0.0
		for k, a := range r.jac[i*r.n : (i+1)*r.n] {
			sum += float64(a * v[k])
		}
		u[i] = sum / size
	}
	copy(v, u)
	radius := r.norm(u)
	if math.IsNaN(radius) {
		return math.Inf(1)
	}
	return radius
}
