package upset

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
)

// fail reports one failure of a course by every law it is run by.
func (r *reader) fail(n *course.Course, f *failure) {
	if f.needs != nil && !f.needs(n) {
		return
	}
	boils := r.boils(n)
	for i := range n.Runs {
		x := &n.Runs[i]
		if x.Missing != nil {
			r.missing(n, f.key, x)
			continue
		}
		from, to, ok := f.when(n, &x.Vessel.Plan)
		if !ok {
			continue
		}
		worst, err := r.search(n, i, f).worst(span{from, to})
		if err != nil {
			m := *x
			m.Missing = []working.Missing{working.Lacks("run", "")}
			r.missing(n, f.key, &m)
			continue
		}
		r.tell(n, f, x, boils, worst)
	}
}

// air is what the vessel of a course loses to still air, W/K; 0 where that is not
// known. A stirrer that goes on heats it to P/UA above the air within C/UA.
func air(n *course.Course) float64 {
	still := n.Still
	if still.None() || still.Unknown() {
		return 0
	}
	return max(still.V, 0)
}

// missing reports that what a failure does is not known.
func (r *reader) missing(n *course.Course, key string, x *course.Run) {
	place, kase := figure.Step(n.Stages[0].Step.Number), figure.If(key).By(string(x.Law))
	cond := x.Conditions()
	r.put("heat.temperature_peak", place, kase, working.Absent("T_max", "degC", x.Missing...), cond)
	r.put("gas.hydrogen.peak_rate", place, kase, working.Absent("F", "L/min", x.Missing...), cond)
	r.put("heat.time_to_boil", place, kase, working.Absent("t_b", "min", x.Missing...), cond)
}

// tell reports the worst of each kind, each with the moment it follows from.
func (r *reader) tell(n *course.Course, f *failure, x *course.Run, boils working.Num, worst [kinds]outcome) {
	place, kase := figure.Step(n.Stages[0].Step.Number), figure.If(f.key).By(string(x.Law))
	in := r.inputs(x, f)
	model := func(symbol, unit string, v float64, more ...working.Num) working.Num {
		return r.w.Model(symbol, unit, "heat and mass balance from the failure on, "+x.Balance(), v, append(more, in...)...)
	}
	cond := func(key string, o *outcome) phrase.Phrase {
		return phrase.On(r.w, key, says(r.w, f.key), when(r.w, o.at), x.Conditions())
	}
	hot, gas, soon := &worst[hottest], &worst[mostGas], &worst[soonest]
	r.put("heat.temperature_peak", place, kase, model("T_max", "degC", hot.run.Peak.Value-kelvin),
		cond("upset.from_peak", hot))
	r.put("gas.hydrogen.peak_rate", place, kase, r.flow(model("F_n", "mol/s", gas.run.Gas.Value)),
		cond("upset.from_gas", gas))
	r.put("heat.time_to_maximum_rate", place, kase, model("t_max", "min", hot.run.Heat.At/60), cond("upset.from", hot))
	if boils.Unknown() {
		r.put("heat.time_to_boil", place, kase, working.Absent("t_b", "min", boils.Missing()...), cond("upset.from", soon))
		return
	}
	r.put("heat.time_to_boil", place, kase, model("t_b", "min", boiling(&soon.run, boils.V+kelvin)/60, boils),
		cond("upset.from_boils", soon))
}

// says is what a failure, or something done wrong, is taken to be.
func says(w *working.Sheet, key string) phrase.Phrase {
	if w == nil {
		return phrase.Phrase{}
	}
	return phrase.Of("upset.how." + key)
}

// when is a moment of a course, in s, as words that the start of the powder follows.
func when(w *working.Sheet, t float64) phrase.Phrase {
	switch {
	case t == 0:
		return phrase.Of("upset.from_when")
	case t < 5400:
		return phrase.On(w, "upset.minutes_after", t/60)
	}
	return phrase.On(w, "upset.hours_after", t/3600)
}
