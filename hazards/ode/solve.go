package ode

import "math"

// Solve integrates p from From to To.
//
// The error of every step is held below RelTol |y| + AbsTol in the root mean
// square over the states; the error at the end is usually one to ten times
// that. Meant for up to a dozen states (more work, slowly). p is not changed.
//
// The error is nil for the statuses Reached and Stopped, else a *Failure with
// the status and the time; the Result then holds what was reached before.
func Solve(p Problem, o Options) (Result, error) {
	if f := check(&p, &o); f != nil {
		return Result{Status: f.Status}, f
	}
	r := newRun(&p, o)
	status := r.pieces()
	if status == Reached {
		status = r.missing()
	}
	return r.finish(status)
}

// run is one integration under way.
type run struct {
	p      *Problem
	o      Options
	n      int
	abstol []float64

	piece  int
	t, end float64
	y, f   []float64 // state at t and its derivative
	z, g   []float64 // the same at the end of the step tried

	k      [6][]float64 // stages
	arg, e []float64    // argument of a stage; scratch, and the error
	weight []float64    // reciprocal of the tolerance of each state
	dense  []float64    // coefficients of the step just accepted
	inside []float64    // state inside it

	implicit   bool
	linearised bool // jac and ft belong to (t, y)
	w          matrix
	jac, ft    []float64

	control   control
	stiffness stiffness
	guards    []float64 // event functions at t
	watches   []watch
	trail     trail
	hits      []Hit
	seen      []bool
	stats     Stats
	path      path
	detail    string
}

func newRun(p *Problem, o Options) *run {
	n := len(p.Start)
	r := &run{p: p, o: o, n: n, t: p.From, implicit: o.Method == Implicit}
	store := make([]float64, 18*n+explicitTerms*n+n*n)
	take := func(size int) []float64 {
		s := store[:size:size]
		store = store[size:]
		return s
	}
	for _, v := range []*[]float64{&r.y, &r.f, &r.z, &r.g, &r.arg, &r.e, &r.weight, &r.inside, &r.ft, &r.abstol} {
		*v = take(n)
	}
	for i := range r.k {
		r.k[i] = take(n)
	}
	r.dense, r.jac = take(explicitTerms*n), take(n*n)
	r.w = newMatrix(n)
	copy(r.y, p.Start)
	for i := range r.abstol {
		r.abstol[i] = o.AbsTol[min(i, len(o.AbsTol)-1)]
	}
	r.stiffness = r.newStiffness(take(n))
	r.path.n = n
	r.guards = make([]float64, len(p.Events))
	r.seen = make([]bool, len(p.Events))
	r.watches = newWatches(p.Peaks, n)
	if len(p.Peaks) > 0 {
		r.trail = trail{n: n, y: make([]float64, trailSteps*n)}
	}
	return r
}

// pieces integrates from switch to switch.
func (r *run) pieces() Status {
	for ; ; r.piece++ {
		r.end = r.p.To
		if r.piece < len(r.p.Switches) {
			r.end = r.p.Switches[r.piece].At
		}
		if s := r.open(); s != Reached || r.t == r.p.To {
			return s
		}
		if s := r.march(); s != Reached || r.t == r.p.To {
			return s
		}
		if s := r.jump(); s != Reached {
			return s
		}
	}
}

// jump changes the state at the switch that ends the piece.
func (r *run) jump() Status {
	if jump := r.p.Switches[r.piece].Jump; jump != nil {
		copy(r.z, r.y)
		jump(r.piece+1, r.t, r.z)
		if !finite(r.z) {
			return NonFiniteJump
		}
		r.y, r.z = r.z, r.y
	}
	return Reached
}

// open begins a piece: f afresh, and the values of events and peaks.
func (r *run) open() Status {
	r.linearised = false
	r.control = control{first: true}
	if !r.rate(r.t, r.y, r.f) {
		if r.piece == 0 {
			return NonFiniteAtStart
		}
		return NonFiniteRate
	}
	if s := r.openEvents(); s != Reached {
		return s
	}
	return r.openPeaks()
}

// rate calls the right-hand side. False: not finite.
func (r *run) rate(t float64, y, dy []float64) bool {
	r.stats.RateCalls++
	r.p.Rate(r.piece, t, y, dy)
	return finite(dy)
}

// missing looks for required events that did not happen.
func (r *run) missing() Status {
	for i, e := range r.p.Events {
		if e.Required && !r.seen[i] {
			r.detail = "event " + itoa(i)
			return EventNotBracketed
		}
	}
	return Reached
}

func (r *run) finish(s Status) (Result, error) {
	if !r.o.Plain {
		r.sharpen()
	}
	res := Result{Status: s, T: r.t, Y: r.y, Hits: r.hits, Stats: r.stats, path: r.path}
	res.path.end = r.t
	for i := range r.watches {
		m := r.watches[i].best
		if s == Stopped && m.Found && m.T == r.t {
			m.Edge = true
		}
		res.Peaks = append(res.Peaks, m)
	}
	if s.Failed() {
		return res, &Failure{s, r.t, r.detail}
	}
	return res, nil
}

// resolution is the shortest step that t can tell from none.
func (r *run) resolution() float64 {
	return max(0x1p-50*math.Abs(r.t), 1e-30*(r.p.To-r.p.From))
}
