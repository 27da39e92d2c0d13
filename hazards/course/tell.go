package course

import (
	"fmt"

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
	return fmt.Sprintf("heat and mass balance, %s, tolerance %.0e, %d steps, energy closes to %.0e", names[x.Law],
		tolerance, len(x.Vessel.Path.Times())-1, x.Vessel.Closure)
}

// Conditions says what a figure of the run holds for.
func (x *Run) Conditions() string {
	if x.Law == vessel.Measured {
		return "measured curve, with free metal first"
	}
	return names[x.Law] + " done at the end of the stated hold, with free metal first"
}
