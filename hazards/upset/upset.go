package upset

import (
	"slices"
	"sync"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// followed is how long a failure is followed, s: thirty days, in which the slowest
// etch of these routes is over and nothing waits.
const followed = 30 * 86400

// Followed is the same in min: a time that stands there was not reached.
const Followed = followed / 60

const kelvin = 273.15

// Base is what the failures start from.
type Base struct {
	Walk    *process.Walk
	Courses []course.Course
	Gas     *figure.Set // of the route as it is meant to go
	Heat    *figure.Set // likewise
	// Again assesses another route, without failures of its own.
	Again func(route.Case) (*figure.Set, []course.Course, error)
	// Breath tells what an acid that boils off does to the air; nil where nobody asks.
	Breath Breath
}

// Read gives the figures of every failure that can happen to a course:
//
//	heat.temperature_peak, gas.hydrogen.peak_rate, heat.time_to_boil and
//	heat.time_to_maximum_rate, each with the failure and the law as its case
//	heat.time_left            of every step, with the law as its case
//
// A brief case has the failures that a closed form bounds and no others. Times
// count from the failure. What a failure does not do has no figure, and
// what cannot be computed is unknown.
func Read(c route.Case, w *working.Sheet, b Base) []figure.Figure {
	room := usual
	if c.Brief {
		room = usualBrief
	}
	r := reader{out: make([]figure.Figure, 0, room), c: c, w: w, b: b, vm: process.MolarVolume(c.Store, w),
		tried: map[tried]*search{}, lots: map[lotOf]lot{}}
	for i := range b.Courses {
		r.bounds(&b.Courses[i])
		r.spaces(&b.Courses[i])
	}
	if c.Brief {
		r.airborne()
		return r.sorted()
	}
	r.searched = true
	for i := range b.Courses {
		n := &b.Courses[i]
		for j := range failures {
			r.fail(n, &failures[j])
		}
		r.left(n)
		r.changes(n)
		r.mistaken(n)
	}
	r.moved()
	r.airborne()
	return r.sorted()
}

// airborne reports what boils off of every course.
func (r *reader) airborne() {
	for i := range r.b.Courses {
		r.vapours(&r.b.Courses[i])
	}
}

// sorted are the figures in the order in which failures are reported.
func (r *reader) sorted() []figure.Figure {
	rank := ranks()
	at, next, rises := make([]int, len(r.out)), make([]int, len(rank)+1), true
	for i := range r.out {
		at[i] = rank[r.out[i].Case.Failure]
		next[at[i]+1]++
		rises = rises && (i == 0 || at[i-1] <= at[i])
	}
	if rises {
		return r.out
	}
	for i := 1; i < len(next); i++ {
		next[i] += next[i-1]
	}
	out := make([]figure.Figure, len(r.out))
	for i, k := range at {
		out[next[k]] = r.out[i]
		next[k]++
	}
	return out
}

// ranks are the places of the failures in that order; what is no failure by itself comes last.
var ranks = sync.OnceValue(func() map[string]int {
	rank := map[string]int{}
	for i, k := range Keys() {
		rank[k] = i
	}
	rank[""] = len(rank)
	return rank
})

// Keys lists the failures this package knows, in the order they are reported.
func Keys() []string {
	var out []string
	for i := range failures {
		out = append(out, failures[i].key)
	}
	for i := range changed {
		out = append(out, changed[i].key)
	}
	for i := range mistakes() {
		out = append(out, mistakes()[i].key)
	}
	return append(out, bounded...)
}

// Sudden lists the failures that strike while a vessel runs: those of equipment,
// in which somebody may have minutes left.
func Sudden() []string {
	var out []string
	for i := range failures {
		if f := &failures[i]; !f.mistake {
			out = append(out, f.key)
		}
	}
	return out
}

// AsMeant reports whether the reaction goes on as it is meant to in a failure, so
// that its temperature repeats that of the route.
func AsMeant(key string) bool { return slices.Contains(besides, key) }

// besides are failures around a vessel whose run they leave as it is.
var besides = []string{"lid_closed", "suck_back", "hood_fails", "ignition"}

// usual is room for the figures of a usual route, and of a brief case of it.
const usual, usualBrief = 336, 112

type reader struct {
	c   route.Case
	w   *working.Sheet
	b   Base
	vm  working.Num
	out []figure.Figure

	tried    map[tried]*search
	lots     map[lotOf]lot // of routes that were assessed again
	searched bool
}

func (r *reader) put(quantity string, place figure.Place, kase figure.Case, v working.Num,
	conditions phrase.Phrase) {
	r.of(quantity, place, "", kase, v, conditions)
}

// of is put of an agent.
func (r *reader) of(quantity string, place figure.Place, agent string, kase figure.Case, v working.Num,
	conditions phrase.Phrase) {
	id := figure.ID{Quantity: quantity, Place: place, Agent: agent, Case: kase}
	r.out = append(r.out, figure.Figure{ID: id, Searched: r.searched, Value: r.w.Keep(v),
		Conditions: conditions})
}

// flow is mol/s of gas as L/min at 25 degC and 101.325 kPa.
func (r *reader) flow(n working.Num) working.Num {
	f := n.As("F_n")
	return r.w.Line("F", "L/min", "F_n*Vm*60", f.V*r.vm.V*60, f, r.vm)
}

// boils is the boiling point of the liquor of a course as the review has it.
func (r *reader) boils(n *course.Course) working.Num {
	return boilsAt(r.b.Heat, figure.Step(n.Stages[0].Step.Number))
}

// boilsAt is the boiling point of a place; a route that cannot be walked has no figures.
func boilsAt(figs *figure.Set, place figure.Place) working.Num {
	if figs == nil {
		return working.Absent("T_b", "degC", working.Lacks("boiling_point", ""))
	}
	if f := figs.One("heat.boiling_point", place); f != nil {
		return f.Value.As("T_b")
	}
	return working.Absent("T_b", "degC", working.Lacks("boiling_point", ""))
}

// boiling is the time to a temperature in K, s; as long as it is followed where it is not
// reached.
func boiling(run *vessel.Run, t float64) float64 {
	if at, ok := run.Path.When(func(p vessel.Point) float64 { return p.Temperature }, t); ok {
		return min(at, followed)
	}
	return followed
}
