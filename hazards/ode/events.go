package ode

import "math"

// openEvents takes the event functions at the start of a piece. A sign that a
// switch changed is an event at the switch.
func (r *run) openEvents() Status {
	stop := false
	for i := range r.p.Events {
		e := &r.p.Events[i]
		v := e.Of(r.piece, r.t, r.y)
		if !isFinite(v) {
			return r.badScalar("event", i)
		}
		if r.piece > 0 && e.crosses(r.guards[i], v) {
			r.hit(i, r.t, r.y, v >= r.guards[i])
			stop = stop || e.Terminal
		}
		r.guards[i] = v
	}
	if stop {
		return Stopped
	}
	return Reached
}

func (r *run) badScalar(what string, i int) Status {
	r.detail = what + " " + itoa(i)
	return NonFiniteScalar
}

func (e *Event) crosses(a, b float64) bool {
	rising := a < 0 && b >= 0 && e.Direction != Falling
	falling := a > 0 && b <= 0 && e.Direction != Rising
	return rising || falling
}

func (r *run) hit(i int, t float64, y []float64, rising bool) {
	r.seen[i] = true
	r.hits = append(r.hits, Hit{Event: i, Piece: r.piece, T: t, Y: append([]float64(nil), y...), Rising: rising})
}

// events finds the zeros in the step, in order of time, up to the first
// terminal one, whose time it returns with Stopped.
func (r *run) events(made step) (float64, Status) {
	before := len(r.hits)
	for i := range r.p.Events {
		if !r.scan(i, made) {
			return 0, r.badScalar("event", i)
		}
	}
	found := r.hits[before:]
	insertionSort(found)
	for k, h := range found {
		if r.p.Events[h.Event].Terminal {
			r.hits = r.hits[:before+k+1]
			return h.T, Stopped
		}
	}
	return 0, Reached
}

// scan looks at event i in both halves of the step.
func (r *run) scan(i int, made step) bool {
	e := &r.p.Events[i]
	t, a := made.t, r.guards[i]
	for _, u := range [...]float64{made.t + float64(0.5*made.h), made.to} {
		b := r.scalar(e.Of, made, u)
		if !isFinite(b) {
			return false
		}
		if e.crosses(a, b) && !r.pin(i, made, t, u, a, b) {
			return false
		}
		t, a = u, b
	}
	r.guards[i] = a
	return true
}

// pin locates the zero between t and u.
func (r *run) pin(i int, made step, t, u, a, b float64) bool {
	of := r.p.Events[i].Of
	zero, ok := crossing(func(x float64) float64 { return r.scalar(of, made, x) }, t, u, a, b, 0)
	if !ok {
		return false
	}
	made.value(r.dense, zero, r.inside)
	r.hit(i, zero, r.inside, a < 0)
	return true
}

// scalar evaluates a function of the state inside the step.
func (r *run) scalar(of Scalar, made step, t float64) float64 {
	if t == made.to {
		return of(made.piece, t, r.z)
	}
	made.value(r.dense, t, r.inside)
	return of(made.piece, t, r.inside)
}

func insertionSort(h []Hit) {
	for i := 1; i < len(h); i++ {
		for k := i; k > 0 && h[k].T < h[k-1].T; k-- {
			h[k], h[k-1] = h[k-1], h[k]
		}
	}
}

// crossing returns the far end of a bracket of a few last bits around the
// change of sign between a and b, by the Ridders method: three points made
// exponential, with the bracket at least halved each time. False: the function
// is not finite. It ends sooner where the bracket is no wider than least.
func crossing(f func(float64) float64, a, b, fa, fb, least float64) (float64, bool) {
	for range 100 {
		m := 0.5 * (a + b)
		if fb == 0 || b-a <= least || b-a <= 0x1p-51*math.Abs(b) || m <= a || m >= b {
			return b, true
		}
		fm := f(m)
		if !isFinite(fm) {
			return 0, false
		}
		x := m
		if s := math.Sqrt(float64(fm*fm) - float64(fa*fb)); s > 0 {
			x = m + float64((m-a)*math.Copysign(fm/s, fa*fm))
		}
		if fm == 0 || !(x > a && x < b) {
			x = m
		}
		fx := fm
		if x != m {
			if fx = f(x); !isFinite(fx) {
				return 0, false
			}
		}
		a, b, fa, fb = narrowed(a, b, fa, fb, m, fm, x, fx)
	}
	return b, true
}

// narrowed is the least interval among a, m, x, b that holds the change of
// sign.
func narrowed(a, b, fa, fb, m, fm, x, fx float64) (float64, float64, float64, float64) {
	for _, c := range [...][2]float64{{m, fm}, {x, fx}} {
		if c[0] <= a || c[0] >= b {
			continue
		}
		if c[1] == 0 || math.Signbit(c[1]) == math.Signbit(fb) {
			b, fb = c[0], c[1]
		} else {
			a, fa = c[0], c[1]
		}
	}
	return a, b, fa, fb
}
