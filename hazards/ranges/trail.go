package ranges

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"etchbound/hazards/assess"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/hazards/workers"
)

// Trail leads the dangerous ends of figures between two sizes of the same route: of
// every figure it has the corners of the data that a review of either size stands
// on. It is safe for use by several goroutines.
type Trail struct {
	corners []corner
	of      map[figure.ID][]int // of a figure, into corners
	given   map[figure.ID]assess.Set
}

// corner is one run, for any size of the route.
type corner struct {
	vars []variable
	key  key
	gone []int // the steps whose peaks are bounds there
}

// words names a corner by what stands where, whatever else another size reads.
func (c *corner) words() string {
	var b strings.Builder
	for i := range c.vars {
		if c.key[i] != centre {
			b.WriteString(string(c.vars[i].id))
			b.WriteByte(c.key[i])
		}
	}
	for _, n := range c.gone {
		b.WriteString(" @" + strconv.Itoa(n))
	}
	return b.String()
}

// At assesses a case as far as a finding of a figure stands on it, with the dangerous
// ends of the figures that Watch picks. Others have their central value at both ends,
// or are left out.
func (t *Trail) At(c route.Case, id figure.ID) (Sized, error) {
	c.Brief = true
	wanted, kept := Watch(id), assess.Keep(c, course.Know(nil))
	a := kept.Assessment(c.Store, t.standOn(id), figure.AskedAt(id.Place))
	if a.Err != nil {
		return Sized{}, a.Err
	}
	r := &ranger{c: c, base: a.Figures, lots: newLots(kept, &a)}
	found := t.run(r, wanted)
	for i := range a.Figures {
		f := &a.Figures[i]
		low, high := f.Value.V, f.Value.V
		if wanted(f) {
			low, high = t.ends(r, i, found)
		}
		f.SetRange(low, high)
	}
	return Sized{Case: c, Walk: a.Walk, Courses: a.Courses, Figures: a.Figures}, nil
}

// run assesses the corners of the figures that are wanted, by their number.
func (t *Trail) run(r *ranger, watched func(*figure.Figure) bool) []found {
	var todo []int
	of := make([]wanted, len(t.corners))
	out := make([]found, len(t.corners))
	for i := range r.base {
		if !watched(&r.base[i]) {
			continue
		}
		for _, at := range t.cornersOf(&r.base[i]) {
			if of[at].parts == 0 {
				todo = append(todo, at)
			}
			of[at] = of[at].and(wanted{r.made(i), figure.AskedAt(r.base[i].Place)})
		}
	}
	workers.Each(len(todo), func(i int) {
		x := t.corners[todo[i]]
		here := *r
		here.vars = rowsOf(x.vars, r.c)
		if x.gone != nil {
			here.c.Gone = x.gone
			here.lots = r.lots.of(assess.Keep(here.c, nil))
		}
		out[todo[i]] = here.lots.asked(here.store(x.key), of[todo[i]])
	})
	return out
}

// cornersOf are those of a figure; all of them where no case had it.
func (t *Trail) cornersOf(f *figure.Figure) []int {
	if k, there := t.of[f.ID]; there {
		return k
	}
	all := make([]int, len(t.corners))
	for i := range all {
		all[i] = i
	}
	return all
}

// ends are those of figure i over its corners. An unknown corner makes the
// dangerous end unknown.
func (t *Trail) ends(r *ranger, i int, found []found) (low, high float64) {
	f := &r.base[i]
	low, high = f.Value.V, f.Value.V
	for _, at := range t.cornersOf(f) {
		v := r.lots.at(&found[at], i)
		switch {
		case math.IsNaN(v) && dangerUp(f):
			return low, v
		case math.IsNaN(v):
			return v, high
		}
		low, high = min(low, v), max(high, v)
	}
	return low, high
}

// Between is a trail for sizes between two.
func Between(a, b *Sized) *Trail {
	out := &Trail{of: map[figure.ID][]int{}, given: map[figure.ID]assess.Set{}}
	seen := map[string]int{}
	for _, s := range []*Sized{a, b} {
		for id, of := range s.given {
			out.given[id] |= of.itself
		}
		for _, id := range slices.SortedFunc(maps.Keys(s.leads), figure.ID.Compare) {
			leads := s.leads[id]
			if len(leads) > 1 && SameLead(a, b, id) {
				leads = leads[:1] // what leads at both leads between them
			}
			for _, x := range leads {
				w := x.words()
				at, there := seen[w]
				if !there {
					at = len(out.corners)
					seen[w] = at
					out.corners = append(out.corners, x)
				}
				if !slices.Contains(out.of[id], at) {
					out.of[id] = append(out.of[id], at)
				}
			}
		}
	}
	return out
}

// standOn is the set of parts that give what a finding of a figure stands on.
func (t *Trail) standOn(id figure.ID) assess.Set {
	out := t.given[id]
	if out == 0 {
		out = assess.GivenBy(id.Quantity)
	}
	for _, q := range figure.Row(id.Quantity).StandsOn {
		out |= assess.GivenBy(q)
	}
	return out
}

// rowsOf are variables with the rows another case has of them.
func rowsOf(vars []variable, c route.Case) []variable {
	out := slices.Clone(vars)
	for i := range out {
		rows := slices.Clone(out[i].rows)
		for j := range rows {
			if d, ok := c.Store.Row(rows[j].ID); ok {
				rows[j] = d
			}
		}
		out[i].rows = rows
	}
	return out
}
