package upset

import (
	"math"
	"slices"
)

// How many equal parts of the time and of the steps of the integration, which stand
// close where much happens, are looked at first.
const parts, stride = 4, 8

// moments are where to look first in a span: its ends, where the run changes and has
// its peaks, equal parts of the time, and some of the steps of the integration. Of a
// span that lies in one looked at before the ends are, and a few between.
func (s *search) moments(w span, again bool) []float64 {
	out := []float64{w.from, w.to}
	add := func(t float64, apart float64) {
		near := func(u float64) bool { return math.Abs(u-t) <= apart*(w.to-w.from) }
		if w.holds(t) && !slices.ContainsFunc(out, near) {
			out = append(out, t)
		}
	}
	if again {
		for i := 1; i < parts; i++ {
			t := w.from + (w.to-w.from)*float64(i)/parts
			if !slices.ContainsFunc(s.tried, func(o outcome) bool { return math.Abs(o.at-t) < (w.to-w.from)/parts }) {
				add(t, 0)
			}
		}
		return out
	}
	v := &s.x.Vessel
	for i := range v.Windows {
		x := &v.Windows[i]
		for _, t := range [...]float64{x.To, x.MTSR.At, x.Heat.At, x.Gas.At} {
			add(t, mark)
		}
	}
	for i := 1; i < parts; i++ {
		add(w.from+(w.to-w.from)*float64(i)/parts, gap)
	}
	times := v.Path.Times()
	for i := 1; i < stride; i++ {
		add(times[i*(len(times)-1)/stride], gap)
	}
	return out
}

// mark and gap are how close two moments are taken for one, as shares of the span:
// those that the run marks, and others.
const mark, gap = 1e-4, 1e-2

// rounds is how often the search looks closer around the worst of a kind, and fewer how
// often in one of many runs for a range.
const rounds, fewer = 6, 2

// closer looks closer around the worst of a kind within a span, where a parabola through
// it and its neighbours has its top, until that promises nothing worth a run.
func (s *search) closer(kind int, w span) {
	n := rounds
	if s.rough {
		n = fewer
	}
	for range n {
		in := s.within(w)
		if s.err != nil || len(in) < 2 {
			return
		}
		i := most(in, kind)
		if kind == soonest && !(in[i].boils > 0 && in[i].boils < followed) {
			return
		}
		t, more := top(in, i, kind)
		if kind == soonest && !boilBeside(in, i) {
			t, more = cliff(in, i)
		}
		if !(more > s.worth(kind, &in[i])) {
			return
		}
		s.try([]float64{t})
	}
}

// boilBeside reports whether the neighbours of an outcome boil.
func boilBeside(in []outcome, i int) bool {
	return in[max(i-1, 0)].boils < followed && in[min(i+1, len(in)-1)].boils < followed
}

// cliff is half-way from an outcome to the neighbour that boils no more, where no parabola
// leads to, and by how much sooner it can boil there: what fails later boils later, so
// that it is by no more than the time between them. Before the outcome, while powder
// still goes in, it is taken for a tenth of that.
func cliff(in []outcome, i int) (at, more float64) {
	if i < len(in)-1 && !(in[i+1].boils < followed) {
		return 0.5 * (in[i].at + in[i+1].at), in[i+1].at - in[i].at
	}
	return 0.5 * (in[i].at + in[i-1].at), 0.1 * (in[i].at - in[i-1].at)
}

// worth is what a kind of worst has to come to more, to be worth a run.
func (s *search) worth(kind int, o *outcome) float64 {
	switch kind {
	case hottest:
		return 0.05
	case mostGas:
		return 0.03 * o.bad[mostGas] // the runs that only look are no better
	}
	return 3 + 0.01*o.boils
}

// lopsided is how many times further away than the other the neighbour of the worst is
// where a parabola through the three says little.
const lopsided = 3

// top is where a kind of badness is greatest by the parabola through the i-th of some
// outcomes, the worst, and its neighbours, and by how much more. Of an end they are the
// next two, and of two outcomes the middle is to be looked at. Where one neighbour is much
// further away it is the middle on that side, for half of what the slope up to the worst
// leads to by there.
func top(in []outcome, i, kind int) (at, more float64) {
	n := len(in)
	if n == 2 {
		return 0.5 * (in[0].at + in[1].at), math.Inf(1)
	}
	a, b, c := &in[max(0, min(i, n-2)-1)], &in[max(1, min(i, n-2))], &in[max(2, min(i, n-2)+1)]
	first := (b.bad[kind] - a.bad[kind]) / (b.at - a.at)
	second := (c.bad[kind] - b.bad[kind]) / (c.at - b.at)
	if l, r := b.at-a.at, c.at-b.at; b == &in[i] {
		switch {
		case r > lopsided*l:
			return 0.5 * (b.at + c.at), 0.5 * first * r
		case l > lopsided*r:
			return 0.5 * (a.at + b.at), -0.5 * second * l
		}
	}
	bend := (first - second) / (c.at - a.at)
	slope := first - bend*(b.at-a.at) // at b
	x := slope / (2 * bend)
	if at = b.at + x; !(bend > 0) || at <= in[max(0, i-1)].at || at >= in[min(n-1, i+1)].at {
		return 0, 0
	}
	return at, b.bad[kind] + 0.5*slope*x - in[i].bad[kind]
}
