// Package upset knows what can fail while a vessel reacts: a failure is the
// same vessel with other inputs from the moment it happens. Only the loss of
// cooling is worked out so far. It must not know how anything is printed.
package upset

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// day is how long a failure is followed, s.
const day = 86400

const kelvin = 273.15

// Read gives the figures of cooling lost in every course, by every law. boils
// is the boiling point of the liquor of a step, in degC.
func Read(c route.Case, w *working.Sheet, courses []course.Course, boils func(step int) working.Num) []figure.Figure {
	r := reader{c: c, w: w, vm: process.MolarVolume(c.Store, w)}
	for i := range courses {
		n := &courses[i]
		for j := range n.Runs {
			r.coolingLost(n, &n.Runs[j], boils(n.Stages[0].Step.Number).As("T_b"))
		}
	}
	return r.out
}

type reader struct {
	c   route.Case
	w   *working.Sheet
	vm  working.Num
	out []figure.Figure
}

func (r *reader) put(quantity, place, kase string, v working.Num, conditions string) {
	r.out = append(r.out, figure.Figure{Quantity: quantity, Place: place, Case: kase, Value: r.w.Keep(v), Conditions: conditions})
}

// coolingLost stops the cooling and the addition at the moment in which most
// heat waits, and lets nothing out: the highest temperature, the peak flow, and
// the minutes to boiling and to the greatest heat. A time of a whole day says
// that it is not reached within one.
func (r *reader) coolingLost(n *course.Course, x *course.Run, boils working.Num) {
	place, kase := figure.Step(n.Stages[0].Step.Number), "cooling_lost,"+string(x.Law)
	missing := x.Missing
	var run vessel.Run
	if missing == nil {
		var err error
		if run, err = lost(x); err != nil {
			missing = []string{err.Error()}
		}
	}
	name := "heat and mass balance without cooling from the worst moment on, " + x.Balance()
	at := func(symbol, unit string, v func() float64, more ...working.Num) working.Num {
		if missing != nil {
			return working.Absent(symbol, unit, missing...)
		}
		return r.w.Model(symbol, unit, name, v(), append(more, x.Inputs...)...)
	}
	cond := "cooling lost when most heat waits, addition stopped, nothing lost to the room, no vapour leaves; " + x.Conditions()
	r.put("heat.temperature_peak", place, kase, at("T_max", "degC", func() float64 { return run.Peak.Value - kelvin }), cond)
	f := at("F_n", "mol/s", func() float64 { return run.Gas.Value })
	r.put("gas.hydrogen.peak_rate.after_addition", place, kase, r.w.Line("F", "L/min", "F_n*Vm*60", f.V*r.vm.V*60, f, r.vm), cond+"; 25 degC, 101.325 kPa")
	r.put("heat.time_to_maximum_rate", place, kase, at("t_max", "min", func() float64 { return run.Heat.At / 60 }), cond)
	if boils.Unknown() {
		r.put("heat.time_to_boil", place, kase, working.Absent("t_b", "min", boils.Missing()...), cond)
		return
	}
	r.put("heat.time_to_boil", place, kase, at("t_b", "min", func() float64 { return boiling(&run, boils.V+kelvin) / 60 }, boils), cond+"; 1440 min: not within a day")
}

// lost is the run from the moment of the highest temperature that waiting heat
// could bring, without cooling for a day.
func lost(x *course.Run) (vessel.Run, error) {
	from, err := x.Vessel.Path.State(x.Vessel.MTSR.At)
	if err != nil {
		return vessel.Run{}, err
	}
	p := x.Vessel.Plan
	p.Begin, p.Ice = &from, vessel.Ice{}
	p.Pieces = []vessel.Piece{{Until: day}}
	return vessel.Simulate(p)
}

// boiling is the time to a temperature in K, s; a day where it is not reached.
func boiling(run *vessel.Run, t float64) float64 {
	if at, ok := run.Path.When(func(p vessel.Point) float64 { return p.Temperature }, t); ok {
		return at
	}
	return day
}
