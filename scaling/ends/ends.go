// Package ends knows a number at its best estimate and at the end where danger lies. It must
// not know what is counted with it.
package ends

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
)

// Two is a number at the best estimate and at the end where danger lies; not a number where
// one is not known.
type Two struct{ Best, Most float64 }

// Pair is a number of two ends.
func Pair(best, most float64) Two { return Two{best, most} }

// Same is a number without a scatter.
func Same(v float64) Two { return Two{v, v} }

// Unknown is a number that nobody knows.
func Unknown() Two { return Same(math.NaN()) }

// Of is a figure at both ends, in its unit; an end that is not known is not a number.
func Of(f *figure.Figure) Two { return Between(f.Value, f.Danger()) }

// Between is a number at its best estimate and at its dangerous end.
func Between(best, most working.Num) Two { return Two{value(best), value(most)} }

func value(n working.Num) float64 {
	if n.Unknown() || n.None() {
		return math.NaN()
	}
	return n.V
}

// By is both ends times a factor.
func (x Two) By(k float64) Two { return Two{x.Best * k, x.Most * k} }

// Plus adds end to end.
func (x Two) Plus(y Two) Two { return Two{x.Best + y.Best, x.Most + y.Most} }

// Over divides end by end.
func (x Two) Over(y Two) Two { return Two{x.Best / y.Best, x.Most / y.Most} }

// Worse is the greater of two at each end; what is not known of either is not known.
func (x Two) Worse(y Two) Two { return Two{math.Max(x.Best, y.Best), math.Max(x.Most, y.Most)} }

// Least is the lower of two at each end; what is not known of either is not known.
func (x Two) Least(y Two) Two { return Two{math.Min(x.Best, y.Best), math.Min(x.Most, y.Most)} }

// Each is what a function makes of both ends.
func (x Two) Each(do func(float64) float64) Two { return Two{do(x.Best), do(x.Most)} }

// Known reports whether both are.
func (x Two) Known() bool { return !math.IsNaN(x.Best) && !math.IsNaN(x.Most) }
