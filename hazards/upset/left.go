package upset

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/vessel"
)

// left reports how long there is to boiling in every step of a course once
// something in the equipment fails in it: the shortest over those failures, of
// the moments tried in the step and of the nearest on either side.
func (r *reader) left(n *course.Course) {
	boils := r.boils(n)
	for i := range n.Runs {
		x := &n.Runs[i]
		for j := range n.Stages {
			place := figure.Step(n.Stages[j].Step.Number)
			t := r.soonest(n, i, j, boils)
			r.out = append(r.out, figure.Figure{ID: figure.ID{Quantity: "heat.time_left", Place: place,
				Case: figure.By(string(x.Law))}, Searched: true, Value: r.w.Keep(t),
				Conditions: phrase.On(r.w, "upset.time_left", x.Conditions())})
		}
	}
}

// soonest is that time by one law in one step, min.
func (r *reader) soonest(n *course.Course, law, stage int, boils working.Num) working.Num {
	x := &n.Runs[law]
	if lacks := x.Lacks(n.Stages[stage].Step.Number); lacks != nil || boils.Unknown() {
		return working.Absent("t_b", "min", working.Joined(lacks, boils.Missing())...)
	}
	s, missing := r.shortest(n, law, stage)
	if missing != nil {
		return working.Absent("t_b", "min", missing...)
	}
	return r.w.Model("t_b", "min", "heat and mass balance from the failure on, "+x.Balance(), s/60,
		append([]working.Num{boils}, x.Inputs...)...)
}

// shortest is the shortest time to boiling over the failures of
// equipment that strike in a stage, s; missing says what it lacks.
func (r *reader) shortest(n *course.Course, law, stage int) (t float64, missing []working.Missing) {
	from, to := window(&n.Runs[law].Vessel.Plan, n.Stages[stage].Step.Number)
	least := float64(followed)
	for k := range failures {
		f := &failures[k]
		found := r.tried[tried{n, law, f.follows(&n.Runs[law].Vessel.Plan)}]
		if f.mistake || found == nil || f.needs != nil && !f.needs(n) {
			continue
		}
		first, last, ok := f.when(n, &n.Runs[law].Vessel.Plan)
		if !ok || to < first || from > last {
			continue
		}
		for _, id := range f.uses {
			missing = append(missing, r.c.Store.Num(id).Missing()...)
		}
		if found.err != nil {
			missing = append(missing, working.Lacks("run", ""))
			continue
		}
		before, after := math.Inf(-1), math.Inf(1) // the nearest moments outside
		in := found.within(span{first, last})
		for _, o := range in {
			if o.at <= from {
				before = max(before, o.at)
			}
			if o.at >= to {
				after = min(after, o.at)
			}
		}
		for i := range in {
			if o := &in[i]; o.at >= before && o.at <= after {
				least = min(least, o.boils)
			}
		}
	}
	return least, missing
}

// window is when a step of a plan begins and ends, s; it has no time of its own
// where nothing is added and nothing held.
func window(p *vessel.Plan, step int) (from, to float64) {
	at := 0.0
	for _, x := range p.Pieces {
		switch {
		case x.Step/2 < step:
			from, to = x.Until, x.Until
		case x.Step/2 == step:
			from, to = min(from, at), x.Until
		}
		at = x.Until
	}
	return from, to
}
