package ode

import "math"

// outcome of a step tried.
type outcome int8

const (
	tried       outcome = iota // the error is known
	nonFinite                  // a stage was not finite; a shorter step may help
	singular                   // the matrix could not be factored; a shorter step may help
	badJacobian                // the Jacobian is not finite, whatever the step
)

// failure is the status of an outcome that a shorter step did not mend.
func (o outcome) failure() Status {
	switch o {
	case nonFinite, badJacobian:
		return NonFiniteRate
	case singular:
		return SingularMatrix
	}
	return StepTooSmall
}

// march steps from t to the end of the piece.
func (r *run) march() Status {
	h := r.firstStep()
	for r.t < r.end {
		var s Status
		if h, s = r.step(h); s != Reached {
			return s
		}
	}
	return Reached
}

// step tries steps until one is accepted and returns the next to try.
func (r *run) step(h float64) (float64, Status) {
	last := tried
	for {
		if r.stats.Steps+r.stats.Rejected >= r.o.MaxSteps {
			return h, TooManySteps
		}
		h = r.fit(h)
		if h < r.resolution() && r.t+h < r.end {
			return h, last.failure()
		}
		err, out := r.try(h)
		if out == tried && err <= 1 {
			return r.accept(h, err)
		}
		r.stats.Rejected++
		switch last = out; {
		case out == badJacobian:
			return h, NonFiniteRate
		case out == tried:
			h = r.after(h, err)
		default:
			r.control.rejected = true
			h *= 0.25
		}
	}
}

// fit shortens a step so that the piece is met exactly, without a tiny last
// step, and makes t+h-t equal to h.
func (r *run) fit(h float64) float64 {
	if r.o.MaxStep > 0 {
		h = min(h, r.o.MaxStep)
	}
	left := r.end - r.t
	switch {
	case h >= 0.999*left:
		return left
	case 2*h > left:
		h = 0.5 * left
	}
	return r.t + h - r.t
}

func (r *run) try(h float64) (err float64, out outcome) {
	if r.implicit {
		err, out = r.implicitStep(h)
	} else {
		err, out = r.explicitStep(h)
	}
	if out == tried && (math.IsNaN(err) || math.IsInf(err, 0) || !finite(r.z)) {
		return 0, nonFinite
	}
	if out == tried && err <= 1 && r.implicit && !r.rate(r.t+h, r.z, r.g) {
		return 0, nonFinite
	}
	return err, out
}

// accept looks into the step, keeps it and moves on.
func (r *run) accept(h, err float64) (float64, Status) {
	made := step{t: r.t, h: h, piece: r.piece, implicit: r.implicit}
	if r.t+h >= r.end || h == r.end-r.t {
		made.to = r.end
	} else {
		made.to = r.t + h
	}
	next := r.next(h, err)
	r.judge(h)
	if r.looks() {
		r.interpolant(made)
		if s := r.look(made); s != Reached {
			return 0, s
		}
	}
	r.advance(made)
	return next, Reached
}

// looks tells whether anybody wants to see inside the step.
func (r *run) looks() bool {
	return !r.o.Discard || len(r.p.Events) > 0 || len(r.p.Peaks) > 0
}

func (r *run) interpolant(made step) {
	if made.implicit {
		r.dense = r.dense[:implicitTerms*r.n]
		r.implicitDense(r.dense)
	} else {
		r.dense = r.dense[:explicitTerms*r.n]
		r.explicitDense(made.h, r.dense)
	}
}

func (r *run) advance(made step) {
	r.stats.accept(made.h)
	if made.implicit {
		r.stats.ImplicitSteps++
	}
	if !r.o.Discard {
		r.path.add(made, r.dense)
	}
	r.t = made.to
	r.y, r.z = r.z, r.y
	r.f, r.g = r.g, r.f
	r.linearised = false
}

// look finds events first, since a terminal one cuts the step short; peaks are
// looked for in what remains.
func (r *run) look(made step) Status {
	cut, s := r.events(made)
	if s != Reached && s != Stopped {
		return s
	}
	if s == Stopped {
		made.to = cut
		made.value(r.dense, made.to, r.z)
		if len(r.watches) > 0 && !r.rate(made.to, r.z, r.g) {
			return NonFiniteRate
		}
	}
	if p := r.peaks(made); p != Reached {
		return p
	}
	if s == Stopped {
		r.advance(made)
	}
	return s
}
