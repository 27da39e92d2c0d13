package ranges

import (
	"slices"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/assess"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Sized is a case at a size, with its dangerous ends.
type Sized struct {
	Case    route.Case
	Walk    process.Walk
	Courses []course.Course
	Figures []figure.Figure          // the end that is not dangerous need not be as far out
	leads   map[figure.ID][]corner   // what the dangerous end of each figure stands on
	moves   map[figure.ID][]datum.ID // the variables that move it
	given   map[figure.ID]given      // the parts that give it
}

// given are the parts that give a figure, and those that give its dangerous end as well: what
// drives it, and the temperatures that it goes with.
type given struct{ itself, end assess.Set }

// Size assesses a case for the dangerous ends of those figures of it that are
// wanted, each from the swings and its own corner, as a review has them. Failures
// are left out, and ends that are not dangerous need not be as far out as a review
// has them.
func Size(c route.Case, wanted func(*figure.Figure) bool) (Sized, error) {
	return size(c, nil, wanted, nil, assess.All)
}

// Nearby is Size for a case between two others, whose figures nothing moves there
// that moves them in neither of the two.
func Nearby(c route.Case, wanted func(*figure.Figure) bool, others ...*Sized) (Sized, error) {
	moves, parts := map[datum.ID]bool{}, assess.Set(0)
	for _, s := range others {
		for i := range s.Figures {
			f := &s.Figures[i]
			if !wanted(f) {
				continue
			}
			for _, id := range s.moves[f.ID] {
				moves[id] = true
			}
			if of, there := s.given[f.ID]; there {
				parts |= of.end
			} else {
				parts = assess.All
			}
		}
	}
	return size(c, nil, wanted, moves, parts)
}

// Lot is Size as far as some parts: nothing else of the case is worked out, and figures of
// other parts are left out. Common is what the route begins with as others do, nil where that
// is not known.
func Lot(c route.Case, parts assess.Set, wanted func(*figure.Figure) bool, common *process.Common) (Sized, error) {
	return size(c, common, wanted, nil, parts)
}

func size(c route.Case, common *process.Common, wanted func(*figure.Figure) bool, moves map[datum.ID]bool,
	parts assess.Set) (Sized, error) {
	c.Brief = true
	w := working.NewSheet()
	a := assess.Traced(c, w, parts)
	if a.Err != nil {
		return Sized{}, a.Err
	}
	r := newRanger(c, variables(Used(c.Store, w)), &a)
	r.lots.kept.From(common)
	r.about, r.moves = wanted, moves
	r.swing()
	rivals := r.rivals()
	ends, more := corners{at: map[key]int{}}, map[int][]int{}
	of := make([]int, len(r.base))
	for i := range r.base {
		if of[i] = -1; !wanted(&r.base[i]) {
			continue
		}
		of[i] = ends.add(r.corner(i, dangerUp(&r.base[i])), r.wants(i))
		for _, k := range r.others(rivals, i) {
			more[i] = append(more[i], ends.add(k, r.wants(i)))
		}
	}
	found := r.all(ends.keys, ends.want)
	found = r.pace(&ends, found, more)
	r.farthest(of, more, found)
	out := Sized{Case: c, Walk: a.Walk, Courses: a.Courses, leads: map[figure.ID][]corner{},
		moves: map[figure.ID][]datum.ID{}, given: map[figure.ID]given{}}
	for i := range r.base {
		f := &r.base[i]
		low, high := f.Value.V, f.Value.V
		switch {
		case of[i] < 0:
		case dangerUp(f):
			high = r.lots.at(&found[of[i]], i)
		default:
			low = r.lots.at(&found[of[i]], i)
		}
		r.set(i, low, high)
	}
	r.open()
	r.bound()
	for i := range r.base {
		f := &r.base[i]
		if of[i] < 0 {
			continue
		}
		out.given[f.ID] = given{r.made(i), r.partsOf(i)}
		out.moves[f.ID] = r.movers(append(r.peaks(i), r.driver(i), i, r.likest(i))...)
		out.leads[f.ID] = r.leads(i, ends.keys[of[i]], r.lots.at(&found[of[i]], i))
	}
	out.Figures = r.base
	return out, nil
}

// farthest takes of the runs of each figure that which lies farthest where danger is.
func (r *ranger) farthest(of []int, more map[int][]int, found []found) {
	for i := range r.base {
		for _, at := range more[i] {
			if f := &r.base[i]; farther(f, r.lots.at(&found[at], i), r.lots.at(&found[of[i]], i)) {
				of[i] = at
			}
		}
	}
}

// farther reports whether a value of a figure lies beyond another where danger is, or
// is not known.
func farther(f *figure.Figure, v, than float64) bool {
	if dangerUp(f) {
		return !(v <= than)
	}
	return !(v >= than)
}

// movers are the variables that move one of some figures at an end, by their ids.
func (r *ranger) movers(figures ...int) []datum.ID {
	var out []datum.ID
	for v := range r.vars {
		for _, i := range figures {
			of := r.swings[v*len(ends) : (v+1)*len(ends)]
			if slices.ContainsFunc(of, func(s found) bool { return r.lots.at(&s, i) != r.base[i].Value.V }) {
				out = append(out, r.vars[v].id)
				break
			}
		}
	}
	return out
}

func dangerUp(f *figure.Figure) bool {
	q, _ := figure.Lookup(f.Quantity)
	return q.Danger != figure.Low
}

// leads are what the dangerous end of figure i stands on, the farther first: its
// corner, with what it has there, and the single swing that goes farthest; before them the run
// of a bound.
func (r *ranger) leads(i int, k key, there float64) []corner {
	out := []corner{{r.vars, k, nil}}
	up, best, at := dangerUp(&r.base[i]), r.base[i].Value.V, -1
	q, _ := figure.Lookup(r.base[i].Quantity)
	for s := range r.swings {
		if end := ends[s%len(ends)]; (end == 1 || end == 3) && !q.Kinked {
			continue
		}
		if v := r.lots.at(&r.swings[s], i); up && v > best || !up && v < best {
			best, at = v, s
		}
	}
	if at >= 0 {
		out = append(out, corner{r.vars, r.single(at/len(ends), ends[at%len(ends)]), nil})
		if up && best > there || !up && best < there {
			slices.Reverse(out)
		}
	}
	if k, there := r.outer[i]; there {
		out = append([]corner{{r.vars, k, steps(r.gone)}}, out...)
	}
	return out
}

// Breaks reports whether the dangerous end of a figure is a bound in one of two sizes and none in
// the other: between them it does not go on smoothly.
func Breaks(a, b *Sized, id figure.ID) bool {
	bound := func(x []corner) bool { return len(x) > 0 && x[0].gone != nil }
	return bound(a.leads[id]) != bound(b.leads[id])
}

// SameLead reports whether the dangerous end of a figure stands on the same corner
// in two sizes, so that it does between them.
func SameLead(a, b *Sized, id figure.ID) bool {
	x, y := a.leads[id], b.leads[id]
	return len(x) == 0 && len(y) == 0 || len(x) > 0 && len(y) > 0 && x[0].words() == y[0].words()
}
