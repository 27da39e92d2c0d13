package course

import (
	"fmt"
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/vessel"
)

// Window is the part of a run in which a step adds, and the part in which it
// goes on once everything is in. One that is not there is of no step, and its
// peaks are zero.
func (x *Run) Window(step int) (during, after vessel.Window) {
	for _, w := range x.Vessel.Windows {
		switch w.Step {
		case 2 * step:
			during = w
		case 2*step + 1:
			after = w
		}
	}
	return during, after
}

// Waiting is the share of the layered phase that has gone in by the end of a
// window and has not reacted.
func (x *Run) Waiting(w vessel.Window) float64 {
	in := w.End.Waiting + w.End.Conversion*x.Vessel.Plan.Slow.Amount
	return w.End.Waiting / in
}

// names of the laws, as a line of the working has them.
var names = map[vessel.Law]string{
	vessel.FirstOrder: "first-order law", vessel.Contracting: "law of contracting grains",
	vessel.SelfAccelerating: "self-accelerating law", vessel.Measured: "measured curve",
}

// Balance names the model of a run, with its steps and how well it closes.
func (x *Run) Balance() string { return x.balance }

func balanceOf(x *Run) string {
	return fmt.Sprintf("heat and mass balance, %s, tolerance %s, %d steps, energy closes to %s", names[x.Law],
		power(tolerance), len(x.Vessel.Path.Times())-1, power(x.Vessel.Closure))
}

// power is the power of ten that a share is no more than.
func power(share float64) string {
	return fmt.Sprintf("10^%.0f", math.Ceil(math.Log10(max(share, 1e-16))-1e-9))
}

// conditions are the keys of what a figure of a run by each law holds for.
var conditions = map[vessel.Law]string{
	vessel.FirstOrder: "course.first_order", vessel.Contracting: "course.contracting",
	vessel.SelfAccelerating: "course.self_accelerating", vessel.Measured: "course.measured",
}

// Conditions says what a figure of the run holds for.
func (x *Run) Conditions() phrase.Phrase { return phrase.Of(conditions[x.Law]) }

// AsItGoesIn says how a stage reacts where nothing waits.
func (s *Stage) AsItGoesIn() phrase.Phrase {
	if s.AtOnce {
		return phrase.Of("course.tipped_in")
	}
	if n := s.Portions(); n > 1 {
		return phrase.Of("course.in_portions", n)
	}
	return phrase.Of("course.as_it_goes_in")
}

// coolings are the keys of what cools, by its kind.
var coolings = map[string]string{"ice_bath": "course.ice_bath", "water_bath": "course.water_bath",
	"jacket": "course.jacket"}

// Around says what is around the vessel in a stage, where a sheet keeps the working.
func (s *Stage) Around(w *working.Sheet) phrase.Phrase {
	if w == nil || s.Cooled.IsZero() || s.Coolant.Unknown() {
		return s.Cooled
	}
	if s.Unheated {
		return phrase.Of("course.around_unheated", s.Cooled, s.Coolant.V)
	}
	return phrase.Of("course.around", s.Cooled, s.Coolant.V)
}
