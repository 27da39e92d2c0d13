package ode

import (
	"errors"
	"slices"
	"sort"
	"strconv"
)

// step is one accepted step: from t to `to`, which is t+h, or less where an
// event ended the run.
type step struct {
	t, h, to float64
	piece    int
	implicit bool
	at       int // where its coefficients begin
}

// value evaluates the interpolant c of the step at time t.
func (s *step) value(c []float64, t float64, out []float64) {
	f := (t - s.t) / s.h
	if s.implicit {
		implicitValue(c, f, out)
	} else {
		explicitValue(c, f, out)
	}
}

// path is the trajectory kept.
type path struct {
	n     int
	end   float64
	steps []step
	coef  []float64
}

// usualSteps is room for the steps of most integrations.
const usualSteps = 64

func (p *path) add(s step, c []float64) {
	if p.steps == nil {
		p.steps, p.coef = make([]step, 0, usualSteps), make([]float64, 0, usualSteps*len(c))
	}
	if len(p.coef)+len(c) > cap(p.coef) {
		p.coef = slices.Grow(p.coef, max(len(p.coef), len(c)))
	}
	s.at = len(p.coef)
	p.steps = append(p.steps, s)
	p.coef = append(p.coef, c...)
}

// ErrNoTrajectory is the error of At and After where no step was kept.
var ErrNoTrajectory = errors.New("ode: no trajectory was kept")

// ErrOutside is the error of At and After for a time outside the run.
var ErrOutside = errors.New("ode: time is outside the integration")

// At writes the state at time t into y, which has one place a state. At a
// switch it is the state just before. Accuracy: that of the steps, by an
// interpolant of order 4 (explicit) or 3 (implicit).
func (r *Result) At(t float64, y []float64) error {
	p := &r.path
	i := sort.Search(len(p.steps), func(i int) bool { return p.steps[i].to >= t })
	return p.evaluate(i, t, y)
}

// After is At with the state just after a switch.
func (r *Result) After(t float64, y []float64) error {
	p := &r.path
	i := sort.Search(len(p.steps), func(i int) bool { return p.steps[i].t > t })
	return p.evaluate(max(i-1, 0), t, y)
}

func (p *path) evaluate(i int, t float64, y []float64) error {
	if len(p.steps) == 0 {
		return ErrNoTrajectory
	}
	if !(t >= p.steps[0].t && t <= p.end) {
		return ErrOutside
	}
	s := &p.steps[i]
	s.value(p.coef[s.at:], t, y[:p.n])
	return nil
}

// Times returns the start and the end of every step kept, rising, each once.
func (r *Result) Times() []float64 {
	if len(r.path.steps) == 0 {
		return nil
	}
	times := make([]float64, 0, len(r.path.steps)+1)
	for _, s := range r.path.steps {
		times = append(times, s.t)
	}
	return append(times, r.path.end)
}

func itoa(i int) string { return strconv.Itoa(i) }
