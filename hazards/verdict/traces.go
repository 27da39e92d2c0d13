package verdict

import (
	"slices"

	"etchbound/hazards/figure"
)

// traceOfMost is the share of the largest fluoride of the route below which that of
// another place is not reported: ideal dilution says nothing about so little.
const traceOfMost = 1e-6

// Vapour of less than this over a liquor, or less that leaves it, is nothing a
// person or an instrument could tell: ppm, mg/min and shares of a limit.
const traceOver, traceLeaving, traceShare = 1e-3, 1e-6, 1e-6

// WithoutTraces drops the fluoride figures of places that hold a trace at the
// most, and the air of steps that give off no more. It looks at whole ranges, so
// a figure does not come and go within one.
func WithoutTraces(figs []figure.Figure) []figure.Figure {
	trace := Traces(figs)
	return slices.DeleteFunc(figs, func(f figure.Figure) bool { return trace(&f) })
}

// Traces tells which figures are of traces, by the whole of them.
func Traces(figs []figure.Figure) func(*figure.Figure) bool {
	most, high, nothing := 0.0, map[figure.Place]float64{}, map[figure.ID]bool{}
	for i := range figs {
		switch f := &figs[i]; f.Quantity {
		case "fluoride.total":
			high[f.Place] = f.High().V
			most = max(most, f.High().V)
		case "air.emission":
			nothing[figure.ID{Place: f.Place, Agent: f.Agent}] = f.High().V < traceLeaving && f.Open() == nil
		case "air.boiled_off":
			none := boilsOff(f) && f.High().V < traceLeaving && f.Open() == nil
			all := figure.ID{Place: f.Place, Case: f.Case}
			was, seen := nothing[all]
			nothing[all] = none && (was || !seen)
			nothing[figure.ID{Place: f.Place, Agent: f.Agent, Case: f.Case}] = none
		}
	}
	return func(f *figure.Figure) bool {
		if f.Open() != nil {
			return false
		}
		switch f.Quantity {
		case "air.saturated":
			return f.High().V < traceOver
		case "air.additive":
			return f.High().V < traceShare || boilsOff(f) && nothing[figure.ID{Place: f.Place, Case: f.Case}]
		case "heat.boiled_off.share":
			return boilsOff(f) && f.High().V < traceShare
		}
		switch figure.Row(f.Quantity).Family {
		case "fluoride":
			return high[f.Place] < traceOfMost*most
		case "air":
			at := figure.ID{Place: f.Place, Agent: f.Agent}
			if boilsOff(f) {
				at.Case = f.Case
				at.Case.Over = 0
			}
			return nothing[at]
		}
		return false
	}
}
