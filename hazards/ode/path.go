package ode

import (
	"errors"
	"sort"
	"strconv"
)

// step is one accepted step: from t to `to`, which is t+h, or less where an
// event ended the run.
type step struct {
	t, h, to float64
	piece    int
	implicit bool
	coef     []float64
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
	room  []float64 // for coefficients, a block at a time: a step is never moved
}

// usualSteps is room for the steps of most integrations.
const usualSteps = 64

func (p *path) add(s step, c []float64) {
	if p.steps == nil {
		p.steps = make([]step, 0, usualSteps)
	}
	if len(p.room)+len(c) > cap(p.room) {
		p.room = make([]float64, 0, usualSteps*len(c))
	}
	from := len(p.room)
	p.room = append(p.room, c...)
	s.coef = p.room[from:]
	p.steps = append(p.steps, s)
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
	s.value(s.coef, t, y[:p.n])
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
