package pacing

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// Addition is what one step adds, and how it could be added.
type Addition struct {
	Step    int
	Onto    bool    // liquor is poured on to powder
	Set     float64 // degC
	Limit   float64 // degC that it is kept below
	Open    bool    // at what it boils or decomposes is not known: it is held to what else is known or stated
	Of      Limit
	Over    float64       // s as the route has it
	Whole   []course.Dose // if nothing of it has reacted
	Laws    []ByLaw
	Ways    []Way
	Stop    Stop
	Missing []working.Missing // why nothing can be said
}

// Limit is what an addition is kept below.
type Limit string

// The limits.
const (
	Boiling   Limit = "boiling"
	Technical Limit = "technical"
	Stated    Limit = "stated"
)

// ByLaw is an addition as the route has it, by one law.
type ByLaw struct {
	Law    vessel.Law
	Points []course.Dosing
}

// Way is one way of adding.
type Way struct {
	Kind  Kind
	Of    float64 // portions; degC at which it is held or stopped
	Takes float64 // s; not a number where it does not come to an end in two days
	In    float64 // share that is in by then
	Stays Hot     // highest while all goes as meant
	Could Hot     // if cooling is lost at the worst moment
}

// Hot is a temperature by the worst of the laws, degC: at the best estimate, and with the
// data where they stand at the dangerous end of the highest temperature of the step.
type Hot struct{ Best, Most float64 }

// Below reports whether it stays below a limit at both.
func (h Hot) Below(limit float64) bool { return h.Best < limit && h.Most < limit }

// Kind is a profile of addition.
type Kind string

// The profiles.
const (
	Written  Kind = "written"
	Constant Kind = "constant"
	Portions Kind = "portions"
	Stepped  Kind = "stepped" // the first third at a quarter of the rate
	Held     Kind = "held"    // to a temperature, by stopping and going on
	Resumed  Kind = "resumed" // stopped at a temperature, resumed once little waits
)

const kelvin = 273.15

// Of is how each addition of a review could be made; below is a temperature of the
// user's own in degC, or not a number.
func Of(r *hazards.Review, below float64) []Addition {
	var out []Addition
	for i := range r.Courses {
		n := &r.Courses[i]
		for j := range n.Stages {
			if s := &n.Stages[j]; s.Etches != nil && !s.Charged() {
				out = append(out, addition(r, i, j, below))
			}
		}
	}
	return out
}

// points is in how many equal parts of its time an addition is told.
const points = 40

// data are a case with its courses: at the best estimate, or at a dangerous end.
type data struct {
	c       route.Case
	courses []course.Course
}

// ends are the data of a review, and those at the dangerous end of the highest temperature
// of a step; false where nobody knows that end, or it cannot be worked out.
func ends(r *hazards.Review, step int) ([]data, bool) {
	out := []data{{r.Case, r.Courses}}
	id := r.Member(figure.ID{Quantity: "heat.temperature_peak", Place: figure.Step(step)})
	f := figure.NewSet(r.Figures).Get(id)
	if f == nil || f.Danger().Unknown() {
		return nil, false
	}
	c, _, there := r.Leads.Case(r.Case, id)
	if !there { // the best estimate is that end
		return out, f.Danger().V == f.Value.V
	}
	c.Brief = true
	got := hazards.Assess(c, nil)
	return append(out, data{c, got.Courses}), got.Err == nil && len(got.Courses) == len(r.Courses)
}

func addition(r *hazards.Review, of, stage int, below float64) Addition {
	n := &r.Courses[of]
	s := &n.Stages[stage]
	a := Addition{Step: s.Step.Number, Onto: s.Onto != nil, Set: s.Set.V, Over: s.Over.V, Whole: s.Dosed()}
	a.limit(r, below)
	for i := range n.Runs {
		x := &n.Runs[i]
		a.Missing = append(a.Missing, x.Missing...)
		if p := x.Dosing(s, points); p != nil {
			a.Laws = append(a.Laws, ByLaw{x.Law, p})
		}
	}
	if len(a.Laws) == 0 && a.Missing == nil {
		a.Missing = append(a.Missing, working.Lacks("run", ""))
	}
	if math.IsNaN(a.Limit) {
		a.Missing = append(a.Missing, working.Lacks("boiling_point", ""))
	}
	if a.Missing != nil {
		return a
	}
	all, known := ends(r, a.Step)
	if !known {
		a.Missing = append(a.Missing, working.Lacks("run", ""))
		return a
	}
	a.search(all, n)
	if a.Onto { // the first of the liquor wets all of the powder: nothing seen in time can govern it
		return a
	}
	for _, k := range []Kind{Stepped, Held, Resumed} {
		a.Ways = append(a.Ways, a.governed(all, of, k))
	}
	a.Stop = a.stop(n, s)
	return a
}

// limit is the lowest of what is stated, the technical limit and the boiling point, each at
// its low end. Where one of these is not known the stated one is left, and none without it.
func (a *Addition) limit(r *hazards.Review, below float64) {
	figs := figure.NewSet(r.Figures)
	low := func(quantity string) float64 {
		if f := figs.One(quantity, figure.Step(a.Step)); f != nil {
			return f.Low().V
		}
		return math.NaN()
	}
	a.Limit, a.Of, a.Open = lowest(low("heat.boiling_point"), low("heat.technical_limit"), below)
}

// lowest is the lowest of a boiling point, a technical limit and a stated temperature, degC, and
// which that is. Open is one where the first or the second is not known: without a stated one it is
// not a number then, since what is not known may be lower.
func lowest(boils, technical, stated float64) (v float64, of Limit, open bool) {
	open = math.IsNaN(boils) || math.IsNaN(technical)
	if open && math.IsNaN(stated) {
		return math.NaN(), Boiling, false
	}
	v, of = math.Inf(1), Boiling
	for _, x := range [...]struct {
		v  float64
		of Limit
	}{{boils, Boiling}, {technical, Technical}, {stated, Stated}} {
		if x.v < v {
			v, of = x.v, x.of
		}
	}
	return v, of, open
}
