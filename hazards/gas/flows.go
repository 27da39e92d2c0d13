package gas

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/vessel"
)

// flows reports hydrogen in time: the bound of instantaneous reaction for every
// addition, and the peaks of each law that was integrated.
func (r *reader) flows(n *course.Course) {
	for i := range n.Stages {
		if s := &n.Stages[i]; s.Etches != nil {
			r.addition(n, s)
		}
	}
	for i := range n.Runs {
		r.law(n, &n.Runs[i])
	}
}

// addition is the flow if everything reacts as it goes in: all of the gas over
// the time of the addition.
func (r *reader) addition(n *course.Course, s *course.Stage) {
	v, t := r.litres(s.Gas), s.Reacts().As("t")
	q := r.w.Line("F", "L/min", "V/t*60", v.V/t.V*60, v, t).Worse(working.Bound)
	r.flow("gas.hydrogen.peak_rate.during_addition", n, s, figure.By(string(vessel.Instantaneous)), q,
		phrase.On(r.w, "gas.flow", s.AsItGoesIn()))
}

// flow reports a flow of a step, and keeps it for what has to let it out.
func (r *reader) flow(quantity string, n *course.Course, s *course.Stage, kase figure.Case, q working.Num,
	conditions phrase.Phrase) {
	r.put(quantity, figure.Step(s.Step.Number), "", kase, q, conditions)
	q = q.As("F")
	for i := range r.flowing {
		x := &r.flowing[i]
		if x.stage != s || x.kase != kase {
			continue
		}
		if q.Unknown() || !x.flow.Unknown() && q.V > x.flow.V {
			x.flow = q
		}
		return
	}
	r.flowing = append(r.flowing, flowing{n, s, kase, q})
}

// flowing is the largest flow of a step by one law, L/min.
type flowing struct {
	course *course.Course
	stage  *course.Stage
	kase   figure.Case
	flow   working.Num
}

// law reports the peak flows of one integrated law, during an addition and
// after it.
func (r *reader) law(n *course.Course, x *course.Run) {
	at := func(s *course.Stage, v float64) working.Num {
		if lacks := x.Lacks(s.Step.Number); lacks != nil {
			return working.Absent("F", "L/min", lacks...)
		}
		m := r.w.Model("F_n", "mol/s", x.Balance(), v, x.Inputs...)
		return r.w.Line("F", "L/min", "F_n*Vm*60", m.V*r.vm.V*60, m, r.vm)
	}
	cond, kase := phrase.On(r.w, "gas.flow", x.Conditions()), figure.By(string(x.Law))
	for i := range n.Stages {
		s := &n.Stages[i]
		during, after := x.Window(s.Step.Number)
		if s.Etches != nil {
			r.flow("gas.hydrogen.peak_rate.during_addition", n, s, kase, at(s, during.Gas.Value), cond)
		}
		if after.Step != 0 || x.Lacks(s.Step.Number) != nil && s.MayStand() {
			r.flow("gas.hydrogen.peak_rate.after_addition", n, s, kase, at(s, after.Gas.Value), cond)
		}
	}
}

// dilution reports the air that dilutes a flow to a quarter of the lower
// flammable limit:
//
//	air = F (1 - y)/y    [m3/h: L/min]
func (r *reader) dilution(x *flowing) {
	y, f := process.Flammable(r.c.Store, r.w), x.flow
	air := r.w.Line("F_air", "m3/h", "F*(1-y)/y*60/1000", f.V*(1-y.V)/y.V*60/1000, f, y)
	r.put("gas.hydrogen.dilution_air", figure.Step(x.stage.Step.Number), "", x.kase, air,
		phrase.Of("gas.dilution"))
}
