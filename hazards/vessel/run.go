// Package vessel knows one vessel in time: a Plan of what goes in and what
// takes heat away gives a Run of temperature, heat and gas. It must not know
// which step of a route it serves.
//
// Without a kinetic law two closed-form bounds bracket every reaction, and
// they are what Simulate returns for the laws Instantaneous and Accumulated.
package vessel

import (
	"fmt"

	"etchbound/chemicals/working"
)

// Law is how the reaction is taken to proceed.
type Law string

// The laws. Instantaneous bounds what happens while powder goes in;
// Accumulated bounds how hot everything together can get.
const (
	Instantaneous Law = "instantaneous"
	Accumulated   Law = "accumulated"
)

// Plan is one vessel and what is done to it.
type Plan struct {
	Step         int // only handed back
	Law          Law
	Start        working.Num // degC, the highest temperature set
	Dose         working.Num // min over which the powder goes in; unknown if tipped in at once
	Heat         working.Num // kJ released by the whole charge
	Gas          working.Num // mol of gas from the whole charge
	HeatCapacity working.Num // J/K of everything in the vessel, low end
}

// Run is what a plan gives. Power and Flow are those while the charge goes in;
// under Accumulated they are unknown, since full accumulation bounds no rate.
type Run struct {
	Plan   Plan
	Rise   working.Num // K, if nothing is lost
	Peak   working.Num // degC, if nothing is lost
	Power  working.Num // W
	Flow   working.Num // mol/min of gas
	Points []Point     // dense output; empty for a closed-form bound
}

// Point is one moment of a run.
type Point struct {
	Time        float64 // min
	Temperature float64 // degC
	Heat        float64 // W
	Gas         float64 // L/min at 25 degC and 101.325 kPa
	Conversion  float64 // 1
}

// Simulate runs a plan. The two closed-form laws need no integration:
//
//	rise = heat * 1000 / heat capacity     [K, kJ, J/K]
//	peak = start + rise                    [degC]
//	power = heat * 1000 / (dose * 60)      [W, kJ, min]
//	flow = gas / dose                      [mol/min]
//
// It returns an error for a law it does not know.
func Simulate(p Plan, w *working.Sheet) (Run, error) {
	if p.Law != Instantaneous && p.Law != Accumulated {
		return Run{}, fmt.Errorf("vessel: law %q is not one of %s, %s", p.Law, Instantaneous, Accumulated)
	}
	r := Run{Plan: p}
	q, c, t := p.Heat.As("Q"), p.HeatCapacity.As("C"), p.Start.As("T")
	r.Rise = w.Line("dT", "K", "Q*1000/C", q.V*1000/c.V, q, c)
	r.Peak = w.Line("T_peak", "degC", "T+dT", t.V+r.Rise.V, t, r.Rise)
	none := "no rate follows from full accumulation"
	r.Power, r.Flow = working.Absent("P", "W", none), working.Absent("F", "mol/min", none)
	if p.Law == Instantaneous {
		d, n := p.Dose.As("t"), p.Gas.As("n")
		r.Power = w.Line("P", "W", "Q*1000/(t*60)", q.V*1000/(d.V*60), q, d)
		r.Flow = w.Line("F", "mol/min", "n/t", n.V/d.V, n, d)
	}
	return r, nil
}
