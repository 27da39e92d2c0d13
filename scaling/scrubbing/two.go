package scrubbing

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
)

// Two is a number at the best estimate and at the end where danger lies; not a number where
// one is not known.
type Two struct{ Best, Most float64 }

func same(v float64) Two { return Two{v, v} }

func unknown() Two { return same(math.NaN()) }

func (x Two) by(k float64) Two { return Two{x.Best * k, x.Most * k} }

func (x Two) plus(y Two) Two { return Two{x.Best + y.Best, x.Most + y.Most} }

// worse is the greater of two at each end; what is not known of either is not known.
func (x Two) worse(y Two) Two { return Two{math.Max(x.Best, y.Best), math.Max(x.Most, y.Most)} }

func (x Two) each(do func(float64) float64) Two { return Two{do(x.Best), do(x.Most)} }

// Known reports whether both are.
func (x Two) Known() bool { return !math.IsNaN(x.Best) && !math.IsNaN(x.Most) }

// reader reads figures and keeps what is missing of those it read.
type reader struct {
	figs    *figure.Set
	missing []working.Missing
}

func (r *reader) lacks(kind, subject string) {
	m := working.Lacks(kind, subject)
	for _, have := range r.missing {
		if have == m {
			return
		}
	}
	r.missing = append(r.missing, m)
}

// of is a figure at both ends.
func (r *reader) of(f *figure.Figure) Two {
	out := Two{math.NaN(), math.NaN()}
	if !f.Value.Unknown() {
		out.Best = f.Value.V
	}
	end := f.Danger()
	if !end.Unknown() && !end.None() {
		out.Most = end.V
	}
	if !out.Known() {
		for _, m := range working.Joined(f.Value.Missing(), end.Missing()) {
			r.lacks(m.Kind, m.Subject)
		}
	}
	return out
}

// most is the worst over the figures of a quantity at some steps that are wanted; false
// where there is none.
func (r *reader) most(quantity string, steps []int, wanted func(figure.ID) bool) (Two, bool) {
	out, there := Two{}, false
	for _, n := range steps {
		for f := range r.figs.At(quantity, figure.Step(n)) {
			if !wanted(f.ID) {
				continue
			}
			if x := r.of(f); there {
				out = out.worse(x)
			} else {
				out, there = x, true
			}
		}
	}
	return out, there
}

func every(figure.ID) bool { return true }
