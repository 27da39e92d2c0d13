package thermal

import (
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// Read gives the heat figures of a walk and its runs.
func Read(c route.Case, w *working.Sheet, k process.Walk, runs []vessel.Run, courses []course.Course) []figure.Figure {
	r := reader{out: make([]figure.Figure, 0, usual), c: c, w: w, k: &k, courses: courses,
		comesTo: map[figure.Place]*comesTo{}}
	for i := range c.Route.Steps {
		r.etch(c.Route.Steps[i].Number)
	}
	for i := range runs {
		if runs[i].Plan.Law == vessel.Accumulated {
			r.accumulated(&runs[i])
		}
	}
	for i := range k.Steps {
		r.mix(&k.Steps[i])
		r.quenched(&k.Steps[i])
	}
	for i := range courses {
		r.course(&courses[i])
	}
	for i := range runs {
		if runs[i].Plan.Law == vessel.Accumulated {
			r.limits(r.done(runs[i].Plan.Step))
		}
	}
	return r.out
}

// done is the step of that number as it went.
func (r *reader) done(step int) *process.Done {
	i := slices.IndexFunc(r.k.Steps, func(d process.Done) bool { return d.Number == step })
	return &r.k.Steps[i]
}

// usual is room for the figures of a usual route.
const usual = 80

type reader struct {
	c   route.Case
	w   *working.Sheet
	k   *process.Walk
	out []figure.Figure

	courses []course.Course
	comesTo map[figure.Place]*comesTo
}

// comesTo is what the liquor of a step boils at, and the highest it comes to by full
// accumulation and by each law, as it was reported.
type comesTo struct {
	boils, all working.Num
	byLaw      []byLaw
}

type byLaw struct {
	law figure.Case
	top working.Num
}

// at is what the liquor of a step comes to.
func (r *reader) at(place figure.Place) *comesTo {
	x := r.comesTo[place]
	if x == nil {
		x = &comesTo{}
		r.comesTo[place] = x
	}
	return x
}

func (r *reader) put(quantity string, place figure.Place, v working.Num, conditions phrase.Phrase) working.Num {
	return r.add(quantity, place, figure.Case{}, v, conditions)
}

// etch reports the etches of one step together; there is more than one where
// a step sends liquor on to powder in another place.
func (r *reader) etch(step int) {
	var heat, bound []working.Num
	var powder working.Num
	says := phrase.Of("thermal.etch")
	for i := range r.k.Etches {
		e := &r.k.Etches[i]
		if e.Step != step {
			continue
		}
		heat, powder = append(heat, course.HeatOf(r.w, e)), e.Powder
		switch {
		case e.Family == process.Current:
			says = phrase.Of("thermal.current")
		case e.Family == process.Oxidising:
			says = phrase.Of("thermal.oxidant")
		case !e.StandIns && e.Family != process.FluorideAcid && !e.N.None() && !e.Heat.None() &&
			!e.Heat.Unknown():
			says = phrase.Of("thermal.etch_stated")
		case e.StandIns && e.Family == process.Molten:
			says = phrase.Of("thermal.melt_stand_ins")
		case e.StandIns:
			says = phrase.Of("thermal.etch_stand_ins")
		}
		if e.Family == process.FluorideAcid && !e.N.None() {
			bound = append(bound, r.dissolution(e))
		}
		if e.Family == process.Unheld {
			bound = append(bound, e.Heat)
		}
	}
	if heat == nil {
		return
	}
	place := figure.Step(step)
	q, m := r.w.Sum("Q", "kJ", heat...), powder.As("m")
	r.put("heat.etch.total", place, q, says)
	if !powder.None() { // a current heats where there is none
		r.put("heat.etch.per_gram", place, r.w.Line("q", "kJ/g", "Q/m", q.V/m.V, q, m), phrase.Of("thermal.per_gram"))
	}
	if bound != nil {
		r.put("heat.etch.dissolution_bound", place, r.w.Sum("Q", "kJ", bound...), phrase.Of("thermal.dissolved"))
	}
}

// accumulated reports a run by full accumulation:
//
//	rise = heat * 1000 / heat capacity    [K, kJ, J/K]
//	mtsr = highest temperature set + rise [degC]
func (r *reader) accumulated(run *vessel.Run) {
	place := figure.Step(run.Plan.Step)
	d := r.done(run.Plan.Step)
	var heat []working.Num
	for _, e := range d.Etches {
		heat = append(heat, course.HeatOf(r.w, &r.k.Etches[e]))
	}
	q, c, t := r.w.Sum("Q", "kJ", heat...), d.Contents().HeatCapacity(r.w), d.Hot.As("T")
	how := phrase.Of("thermal.rise")
	if s := r.stage(d.Number); s != nil && s.Onto != nil {
		c = s.Onto.Capacity
		how = phrase.Of("thermal.rise_onto")
	}
	rise := r.w.Line("dT", "K", "Q*1000/C", q.V*1000/c.V, q, c)
	r.put("heat.adiabatic_rise", place, rise, how)
	at := r.at(place)
	at.all = r.put("heat.mtsr", place, r.w.Line("T_peak", "degC", "T+dT", t.V+rise.V, t, rise), phrase.Of("thermal.mtsr"))
	v, cond := r.boiling(d)
	at.boils = r.put("heat.boiling_point", place, v, cond)
	if p := r.c.Route.Place(d.Place); p != nil && (p.Closure != route.Closed || !p.ClosureStated) {
		r.boiledOff(d, place, overheated{t, rise, v, c})
	}
}

// stage is the step of that number in its course; nil where it is in none.
func (r *reader) stage(step int) *course.Stage {
	for i := range r.courses {
		for j := range r.courses[i].Stages {
			if s := &r.courses[i].Stages[j]; s.Done.Number == step {
				return s
			}
		}
	}
	return nil
}

// boiling is the boiling point of the liquor of a step, as its course has it.
func (r *reader) boiling(d *process.Done) (working.Num, phrase.Phrase) {
	if s := r.stage(d.Number); s != nil {
		return s.Boils, s.Boiling
	}
	return course.Boiling(r.c, r.w, d)
}
