package upset

import (
	"cmp"
	"math"
	"slices"

	"etchbound/hazards/course"
	"etchbound/hazards/vessel"
)

// The kinds of worst.
const (
	hottest = iota
	mostGas
	soonest
	kinds
)

// mostRuns is how often a failure is run at most by one law.
const mostRuns = 60

// looking is the tolerance of the runs that only look for the worst moment, or
// for the ends of a range.
const looking = 1e-4

// search looks for the worst moments of a failure in the run it interrupts. What
// follows from a failure is the same for all that share a search, so that none of
// them finds what another misses; they differ in when they can happen.
type search struct {
	x     *course.Run
	f     *failure
	s     setting
	boils float64 // K; NaN where not known
	rough bool    // one of many runs, for a range
	spans []span  // when those that share it can happen, the widest first
	steps []span  // of the steps of the course

	runs  int
	tried []outcome // in order of time
	ended []outcome // the worst, run with their peaks sought
	err   error
}

// span is a stretch of time, s from the start of a course.
type span struct{ from, to float64 }

func (w span) holds(t float64) bool { return t >= w.from && t <= w.to }

// within is the part of a span that lies in another; false where none does.
func (w span) within(x span) (span, bool) {
	w = span{max(w.from, x.from), min(w.to, x.to)}
	return w, w.from <= w.to
}

// outcome is what a failure at a moment leads to.
type outcome struct {
	at    float64        // s from the start of the course
	run   vessel.Run     // where its peaks were sought
	boils float64        // s to boiling; as long as it is followed where it does not boil
	bad   [kinds]float64 // greater is worse
}

// tried names what follows from a failure of a course by one of its laws.
type tried struct {
	course  *course.Course
	law     int
	follows string
}

// search is that of a failure by one law, done once for all that share it.
func (r *reader) search(n *course.Course, law int, f *failure) *search {
	x := &n.Runs[law]
	p := &x.Vessel.Plan
	key := tried{n, law, f.follows(p)}
	if s := r.tried[key]; s != nil {
		return s
	}
	s := &search{x: x, f: f, s: r.setting(), boils: r.boils(n).V + kelvin, rough: r.w == nil}
	s.s.air = air(n)
	for i := range failures {
		g := &failures[i]
		if g.follows(p) != key.follows || g.needs != nil && !g.needs(n) {
			continue
		}
		if from, to, ok := g.when(n, p); ok {
			s.spans = append(s.spans, span{from, to})
		}
	}
	slices.SortStableFunc(s.spans, func(a, b span) int { return cmp.Compare(b.to-b.from, a.to-a.from) })
	for i := range n.Stages {
		from, to := window(p, n.Stages[i].Step.Number)
		s.steps = append(s.steps, span{from, to})
	}
	s.look()
	r.tried[key] = s
	return s
}

// look runs the failure at the moments that the run itself marks and at equal parts of
// the time, and then closer around the worst of each kind, over the whole of each span
// and, for the time to boiling, in each step.
func (s *search) look() {
	if w := s.spans[0]; w.from == w.to && len(s.spans) == 1 {
		s.tried = append(s.tried, s.end(w.from))
		return
	}
	for i, w := range s.spans {
		s.try(s.moments(w, i > 0))
	}
	for _, w := range s.spans {
		for k := range kinds {
			s.closer(k, w)
		}
		for _, x := range s.steps {
			if x, ok := x.within(w); ok {
				s.closer(soonest, x)
			}
		}
	}
}

// worst are the outcomes of the worst moments of each kind within a span.
func (s *search) worst(w span) ([kinds]outcome, error) {
	var out [kinds]outcome
	in := s.within(w)
	for k := range kinds {
		if s.err != nil {
			return out, s.err
		}
		out[k] = s.end(in[most(in, k)].at)
	}
	return out, s.err
}

// end is the outcome of a moment with its peaks sought.
func (s *search) end(t float64) outcome {
	i := slices.IndexFunc(s.ended, func(o outcome) bool { return o.at == t })
	if i < 0 {
		i = len(s.ended)
		var o outcome
		if o, s.err = s.at(t, false); s.err != nil {
			return o
		}
		s.ended = append(s.ended, o)
	}
	return s.ended[i]
}

// within are the outcomes tried within a span, in order of time.
func (s *search) within(w span) []outcome {
	from, _ := slices.BinarySearchFunc(s.tried, w.from, byTime)
	to, found := slices.BinarySearchFunc(s.tried, w.to, byTime)
	if found {
		to++
	}
	return s.tried[from:to]
}

func byTime(o outcome, t float64) int { return cmp.Compare(o.at, t) }

// most is the first of the worst of a kind.
func most(of []outcome, kind int) int {
	best := 0
	for i := range of {
		if of[i].bad[kind] > of[best].bad[kind] {
			best = i
		}
	}
	return best
}

// try runs the failure at some moments, and keeps what it leads to.
func (s *search) try(moments []float64) {
	for _, t := range moments {
		i, known := slices.BinarySearchFunc(s.tried, t, byTime)
		if known || s.err != nil || s.runs >= mostRuns {
			continue
		}
		var o outcome
		if o, s.err = s.at(t, true); s.err == nil {
			s.tried = slices.Insert(s.tried, i, o)
		}
	}
}

// at runs the failure from a moment on until nothing waits.
func (s *search) at(t float64, coarse bool) (outcome, error) {
	s.runs++
	from, err := s.x.Vessel.Path.State(t)
	if err != nil {
		return outcome{}, err
	}
	p := s.x.Vessel.Plan
	p.Begin, p.Coarse = &from, coarse
	if coarse || s.rough {
		p.Tolerance = looking
	}
	p.Pieces = s.f.then(&p, t, &s.s)
	last := vessel.Piece{Until: followed}
	if n := len(p.Pieces); n > 0 {
		last = p.Pieces[n-1]
		last.Until, last.Dose, last.Lift, last.Settled = max(followed, last.Until+1), 0, last.Settled, false
		last.Added, last.Pour = 0, 0
	}
	p.Pieces = append(p.Pieces, last)
	if s.f.uncooled {
		p.Pieces = limited(p.Pieces, p.Capacity(&from)/s.s.air) // without end where the loss is not known
	}
	run, err := vessel.Simulate(p)
	if err != nil {
		return outcome{}, err
	}
	o := outcome{at: t, boils: followed}
	o.bad[hottest], o.bad[mostGas], o.bad[soonest] = run.Peak.Value, run.Gas.Value, -run.Heat.At
	if run.Peak.Value >= s.boils {
		o.boils = boiling(&run, s.boils)
		o.bad[soonest] = followed - o.boils
	} else if !math.IsNaN(s.boils) {
		o.bad[soonest] = run.Peak.Value - s.boils // none boils: the one that comes closest
	}
	if !coarse {
		o.run = run
	}
	return o, nil
}
