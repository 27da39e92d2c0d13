// Package assess joins the walk, the vessels and the readers into one pure
// function of a case, its central figures. It must not know a range, a verdict or
// how anything is printed, nor read a clock, a file or the environment.
package assess

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/air"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/fluoride"
	"etchbound/hazards/gas"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/thermal"
	"etchbound/hazards/upset"
	"etchbound/hazards/vessel"
	"etchbound/hazards/wash"
	"etchbound/hazards/waste"
)

// Assessment is what one set of central values gives.
type Assessment struct {
	Figures  []figure.Figure // with bare sums; ranges not set
	Walk     process.Walk
	Runs     []vessel.Run
	Courses  []course.Course
	Warnings []string
	Err      error // the route cannot be walked
}

// Case works out one case on its central values. It is a pure function: the
// same case gives the same assessment, and nothing outside the case is read.
// w keeps the working, or nothing if it is nil. Err is set where the route
// cannot be walked at all.
func Case(c route.Case, w *working.Sheet) Assessment { return Known(c, w, nil) }

// Known is Case with the runs that are known already.
func Known(c route.Case, w *working.Sheet, known []course.Course) Assessment {
	a := walked(c, w, known, readers[:])
	if a.Err != nil {
		return a
	}
	as := upset.Base{Walk: &a.Walk, Courses: a.Courses, Figures: a.Figures, Again: again}
	a.Figures = append(a.Figures, upset.Read(c, w, as)...)
	a.Figures = append(a.Figures, figure.Figure{ID: figure.ID{Quantity: "account.error"}, Value: a.Walk.Error,
		Conditions: "every element of the route; what is not modelled counts as held"})
	a.Figures = addSums(w, a.Figures)
	return a
}

// walked walks a case, runs its vessels and reads them.
func walked(c route.Case, w *working.Sheet, known []course.Course, by []reader) Assessment {
	k, err := process.Go(c, w)
	if err != nil {
		return Assessment{Err: err}
	}
	a := Assessment{Walk: k, Warnings: k.Warnings, Runs: runs(&k), Courses: course.Find(c, w, &k, known)}
	read, n := make([][]figure.Figure, len(by)), roomForMore
	for i := range by {
		read[i] = by[i](c, w, k, a.Runs, a.Courses)
		n += len(read[i])
	}
	a.Figures = make([]figure.Figure, 0, n)
	for i := range read {
		a.Figures = append(a.Figures, read[i]...)
	}
	return a
}

// roomForMore is room for the figures of a usual route that no reader of a hazard
// gives: what a brief case says of failures, and sums.
const roomForMore = 56

// again assesses a route that went wrong: the same walk and the same runs, read
// for what a failure is told by, which is heat and gas.
func again(c route.Case) ([]figure.Figure, []course.Course, error) {
	a := walked(c, nil, nil, []reader{gas.Read, thermal.Read})
	return a.Figures, a.Courses, a.Err
}

// reader turns states and runs into the figures of one hazard.
type reader func(route.Case, *working.Sheet, process.Walk, []vessel.Run, []course.Course) []figure.Figure

// readers turn states and runs into figures, one a hazard.
var readers = [...]reader{
	gas.Read, thermal.Read, fluoride.Read, air.Read, wash.Read, waste.Read,
}

// runs builds the plan of every step whose vessel still holds the liquor of an
// etch and runs it by full accumulation: nothing has reacted yet.
func runs(k *process.Walk) []vessel.Run {
	var out []vessel.Run
	for i := range k.Steps {
		d := &k.Steps[i]
		if len(d.Etches) == 0 {
			continue
		}
		if r, err := vessel.Simulate(plan(k, d)); err == nil {
			out = append(out, r)
		}
	}
	return out
}

// plan is the vessel of a step in SI: the layered phase as the slow solid, what
// else reacts as the fast one.
func plan(k *process.Walk, d *process.Done) vessel.Plan {
	p := vessel.Plan{Step: d.Number, Law: vessel.Accumulated, Start: d.Hot.V + kelvin}
	p.Slow, p.Fast = course.Solids(k, d.Etches)
	s := d.Contents()
	p.Slow.Capacity = s.SolidCapacity(nil).V
	p.Liquor.Capacity = s.HeatCapacity(nil).V - p.Slow.Capacity
	return p
}

const kelvin = 273.15

// addSums adds the bare figure of every quantity whose bare id is the sum of
// its members, in the order of the catalogue.
func addSums(w *working.Sheet, figs []figure.Figure) []figure.Figure {
	for i := range figure.Catalogue() {
		q := &figure.Catalogue()[i]
		if q.Bare != "sum" {
			continue
		}
		var terms []working.Num
		for j := range figs {
			if figs[j].Quantity == q.Name && !figs[j].Place.IsZero() && figs[j].Case.IsZero() {
				terms = append(terms, figs[j].Value)
			}
		}
		if terms != nil {
			sum := w.Sum("sum", q.Unit, terms...)
			figs = append(figs, figure.Figure{ID: figure.ID{Quantity: q.Name}, Value: sum, Conditions: "sum over the route"})
		}
	}
	return figs
}
