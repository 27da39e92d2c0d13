package ode

import "math"

// watch follows one Peak. value is that at t.
type watch struct {
	best  Maximum
	value float64
	at    [5]float64 // at the quarters of the step
	start float64    // a few steps before the best, from where to sharpen it
	from  []float64  // state there
	until float64    // a step after it
}

func newWatches(peaks []Peak, n int) []watch {
	w := make([]watch, len(peaks))
	for i := range w {
		w[i].best.Y, w[i].from = make([]float64, n), make([]float64, n)
	}
	return w
}

// consider keeps a value if it is the greatest so far.
func (r *run) consider(w *watch, made step, t, v float64, y []float64, edge bool) {
	b := &w.best
	if b.Found && v <= b.Value {
		return
	}
	copy(b.Y, y)
	b.Found, b.Piece, b.T, b.Value, b.Edge = true, made.piece, t, v, edge
	if r.o.Plain {
		return
	}
	w.start, w.until = r.trail.oldest(w.from), min(made.to+made.h, r.end)
}

func (r *run) openPeaks() Status {
	if len(r.watches) > 0 {
		r.trail.count = 0
		r.trail.add(r.t, r.y)
	}
	for i := range r.watches {
		w := &r.watches[i]
		v := r.p.Peaks[i].Of(r.piece, r.t, r.y)
		if !isFinite(v) {
			return r.badScalar("peak", i)
		}
		w.value = v
		r.consider(w, step{t: r.t, to: r.t, piece: r.piece}, r.t, v, r.y, true)
	}
	return Reached
}

// peaks looks for maxima in the step.
func (r *run) peaks(made step) Status {
	if len(r.watches) > 0 {
		r.trail.add(r.t, r.y)
	}
	for i := range r.watches {
		r.watches[i].at[0] = r.watches[i].value
	}
	for quarter := 1; quarter < 4; quarter++ {
		t := made.quarter(quarter)
		made.value(r.dense, t, r.inside)
		if s := r.climb(made, quarter, t, r.inside); s != Reached {
			return s
		}
	}
	if s := r.climb(made, 4, made.to, r.z); s != Reached {
		return s
	}
	for i := range r.watches {
		w := &r.watches[i]
		slopes := quarterSlopes(w.at)
		for k := range 4 {
			if slopes[k] > 0 && slopes[k+1] <= 0 {
				r.summit(w, r.p.Peaks[i].Of, made, made.quarter(k), made.quarter(k+1))
			}
		}
		w.value = w.at[4]
	}
	return Reached
}

// quarter is the time of one of the quarters of a step.
func (s *step) quarter(i int) float64 { return s.t + float64(0.25*float64(i)*(s.to-s.t)) }

// climb looks at every function at a quarter of the step. The quartic through
// its five values tells whether a maximum is worth looking for.
func (r *run) climb(made step, quarter int, t float64, y []float64) Status {
	for i := range r.watches {
		w := &r.watches[i]
		v := r.p.Peaks[i].Of(made.piece, t, y)
		if !isFinite(v) {
			return r.badScalar("peak", i)
		}
		w.at[quarter] = v
		r.consider(w, made, t, v, y, quarter == 4 && made.to == r.end)
	}
	return Reached
}

// quarterSlopes are the slopes, but for a common factor, of the quartic through
// five evenly spaced values.
func quarterSlopes(v [5]float64) [5]float64 {
	return [5]float64{
		float64(-25*v[0]) + float64(48*v[1]) - float64(36*v[2]) + float64(16*v[3]) - float64(3*v[4]),
		float64(-3*v[0]) - float64(10*v[1]) + float64(18*v[2]) - float64(6*v[3]) + v[4],
		v[0] - float64(8*v[1]) + float64(8*v[3]) - v[4],
		-v[0] + float64(6*v[1]) - float64(18*v[2]) + float64(10*v[3]) + float64(3*v[4]),
		float64(3*v[0]) - float64(16*v[1]) + float64(36*v[2]) - float64(48*v[3]) + float64(25*v[4]),
	}
}

// plainly is how close, as a share of a quarter of a step, a maximum is placed
// that is taken as the dense output has it: its value is then good to the square
// of that.
const plainly = 1e-3

// summit places a maximum between two times where the slope falls through zero.
func (r *run) summit(w *watch, of Scalar, made step, from, to float64) {
	at := func(t float64) float64 {
		made.value(r.dense, t, r.inside)
		if !r.rate(t, r.inside, r.arg) {
			return math.NaN()
		}
		return r.slope(of, made, t)
	}
	a, b := at(from), at(to)
	if !(a > 0 && b <= 0) {
		return
	}
	least := 0.0
	if r.o.Plain {
		least = plainly * (to - from)
	}
	top, ok := crossing(at, from, to, a, b, least)
	if !ok {
		return
	}
	made.value(r.dense, top, r.inside)
	if v := of(made.piece, top, r.inside); isFinite(v) {
		r.consider(w, made, top, v, r.inside, false)
	}
}

// slope is the derivative of a function along the solution at the state in
// inside with the derivative in arg, by differences of order 4 along the
// tangent. Where a point on one side is outside the domain of the function the
// other side is taken; zero if both are.
func (r *run) slope(of Scalar, made step, t float64) float64 {
	d := (made.to - made.t) / 512
	at := func(m float64) float64 {
		add1(r.e, r.inside, m*d, r.arg)
		return of(made.piece, t+float64(m*d), r.e)
	}
	s := (float64(8*(at(1)-at(-1))) - (at(2) - at(-2))) / (12 * d)
	if isFinite(s) {
		return s
	}
	here := of(made.piece, t, r.inside)
	for _, side := range [...]float64{1, -1} {
		s = side * (float64(4*at(side)) - at(2*side) - float64(3*here)) / (2 * d)
		if isFinite(s) {
			return s
		}
	}
	return 0
}

// isFinite reports whether a number is neither infinite nor NaN.
func isFinite(x float64) bool { return x-x == 0 }
