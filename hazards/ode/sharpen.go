package ode

// A maximum of a function that leans on a fast state carries the error of that
// state, which at a loose tolerance is far above that of the slow ones. So the
// neighbourhood of the maximum is integrated once more, more exactly, from a
// few steps before: what is fast has forgotten its error when the top is
// reached.

const (
	trailSteps  = 4
	sharper     = 100
	sharpEnough = 1e-8 // relative tolerance at and below which nothing is repeated
)

// trail remembers the starts of the last steps of the piece.
type trail struct {
	n, count int
	t        [trailSteps]float64
	y        []float64
}

func (l *trail) add(t float64, y []float64) {
	i := l.count % trailSteps
	l.t[i] = t
	copy(l.y[i*l.n:(i+1)*l.n], y)
	l.count++
}

// oldest copies the state of the oldest start and returns its time.
func (l *trail) oldest(y []float64) float64 {
	i := 0
	if l.count > trailSteps {
		i = l.count % trailSteps
	}
	copy(y, l.y[i*l.n:(i+1)*l.n])
	return l.t[i]
}

// sharpen repeats the neighbourhood of every maximum that is not at an edge.
// One that cannot be repeated, or is not found again, stays as it was.
func (r *run) sharpen() {
	if r.o.RelTol <= sharpEnough {
		return
	}
	for i := range r.watches {
		if w := &r.watches[i]; w.best.Found && !w.best.Edge {
			r.repeat(w, r.p.Peaks[i])
		}
	}
}

func (r *run) repeat(w *watch, peak Peak) {
	p, o := *r.p, r.o
	p.From, p.To, p.Start = w.start, min(w.until, r.t), w.from
	p.Switches, p.Events, p.Peaks = nil, nil, []Peak{peak}
	o.RelTol, o.Discard, o.InitialStep = max(o.RelTol/sharper, 0.1*sharpEnough), true, 0
	again := newRun(&p, o)
	for i := range again.abstol {
		again.abstol[i] = r.abstol[i] * (o.RelTol / r.o.RelTol)
	}
	again.piece = w.best.Piece
	status := again.pieces()
	r.stats.RateCalls += again.stats.RateCalls
	r.stats.JacobianCalls += again.stats.JacobianCalls
	r.stats.Factorisations += again.stats.Factorisations
	if top := again.watches[0].best; status == Reached && top.Found && !top.Edge {
		w.best = top
	}
}
