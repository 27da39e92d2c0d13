package assess

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// Assessment is what one set of central values gives.
type Assessment struct {
	Figures  []figure.Figure // with bare sums; ranges not set
	Counts   [Parts]int      // how many of them each part gave, in their order
	Walk     process.Walk
	Runs     []vessel.Run // where a part that is there looks at them
	Courses  []course.Course
	Warnings []phrase.Phrase
	Err      error // the route cannot be walked
}

// Case works out one case on its central values. It is a pure function: the
// same case gives the same assessment, and nothing outside the case is read.
// w keeps the working, or nothing if it is nil. Err is set where the route
// cannot be walked at all.
func Case(c route.Case, w *working.Sheet) Assessment { return Known(c, w, course.Know(nil)) }

// Known is Case with the runs that are known already.
func Known(c route.Case, w *working.Sheet, known *course.Known) Assessment {
	return some(c, w, process.Met(c.Route), known, All)
}

// Some is Case as far as some of its parts, without a sheet: the figures of others
// are left out, and then a sum lacks their terms.
func Some(c route.Case, want Set) Assessment { return some(c, nil, process.Met(c.Route), nil, want) }

// Traced is Some with a sheet that keeps the working.
func Traced(c route.Case, w *working.Sheet, want Set) Assessment {
	return some(c, w, process.Met(c.Route), nil, want)
}

func some(c route.Case, w *working.Sheet, met process.Meetings, known *course.Known, want Set) Assessment {
	k := walk(c, w, met)
	if k.err != nil {
		return Assessment{Err: k.err}
	}
	a := Assessment{Walk: k.walk, Warnings: k.walk.Warnings}
	want = want.whole()
	if want.runs() {
		a.Runs = k.runs()
		a.Courses = course.Find(c, w, &k.walk, known)
	}
	var parts [Parts][]figure.Figure
	n := 0
	for p := range readers {
		if want.Has(Part(p)) {
			parts[p] = readers[p].of(c, w, k, a.Courses)
			n += len(parts[p])
		}
	}
	if want.Has(Upset) {
		parts[Upset] = failures(c, w, k, a.Courses, known, parts[Gas], parts[Thermal])
	}
	if want.Has(Account) {
		parts[Account] = k.account()
	}
	if want.Has(Sums) {
		parts[Sums] = sums(w, &parts)
	}
	a.Figures = make([]figure.Figure, 0, n+len(parts[Upset])+len(parts[Account])+len(parts[Sums]))
	for p := range parts {
		a.Figures, a.Counts[p] = append(a.Figures, parts[p]...), len(parts[p])
	}
	return a
}
