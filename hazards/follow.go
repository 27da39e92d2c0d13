package hazards

import (
	"math"
	"slices"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Trail leads the dangerous ends of figures from some cases to others of the same
// route: which corners of the data they stood in is found in those cases, by all
// the swings of a review, and elsewhere these corners alone are assessed. It is
// safe for use by several goroutines.
type Trail struct {
	corners []corner
	of      map[string][]int // of a figure by its id, into corners; never empty
}

// corner is one run, for any size of the route.
type corner struct {
	vars []variable
	key  key
}

// Blaze reviews cases of one route and remembers the corners of its dangerous
// ends. Failures are left out.
func Blaze(cases ...route.Case) (*Trail, error) {
	t := &Trail{of: map[string][]int{}}
	seen := map[string]int{}
	for _, c := range cases {
		if err := t.blaze(c, seen); err != nil {
			return nil, err
		}
	}
	return t, nil
}

func (t *Trail) blaze(c route.Case, seen map[string]int) error {
	c.Brief = true
	w := working.NewSheet()
	a := Assess(c, w)
	if a.Err != nil {
		return a.Err
	}
	r := ranges(c, variables(read(c.Store, w)), a.Figures, a.Courses)
	for i := range r.base {
		q, _ := figure.Lookup(r.base[i].Quantity)
		up := q.Danger != figure.Low
		t.add(r, i, r.corner(i, up), seen)
		if k, found := r.extremest(i, up); found {
			t.add(r, i, k, seen)
		}
	}
	return nil
}

// add remembers a corner of figure i, once.
func (t *Trail) add(r *ranger, i int, k key, seen map[string]int) {
	at, there := seen[r.words(k)]
	if !there {
		at = len(t.corners)
		seen[r.words(k)] = at
		t.corners = append(t.corners, corner{r.vars, k})
	}
	if id := r.base[i].ID(); !slices.Contains(t.of[id], at) {
		t.of[id] = append(t.of[id], at)
	}
}

// words names a corner by what stands where, whatever else another size reads.
func (r *ranger) words(k key) string {
	var b strings.Builder
	for i := range r.vars {
		if k[i] != centre {
			b.WriteString(r.vars[i].id)
			b.WriteByte(k[i])
		}
	}
	return b.String()
}

// extremest is the run in which a figure came to its dangerous end: that in which
// it was unknown, if there is one.
func (r *ranger) extremest(i int, up bool) (key, bool) {
	best, at := r.base[i].Value.V, key("")
	for _, t := range r.done {
		for k := range t.keys {
			v := t.found[k][i]
			switch {
			case math.IsNaN(v) && !math.IsNaN(best):
				return t.keys[k], true
			case up && v > best || !up && v < best:
				best, at = v, t.keys[k]
			}
		}
	}
	return at, at != ""
}

// Sized is a case at another size, with its dangerous ends.
type Sized struct {
	Case    route.Case
	Walk    process.Walk
	Courses []course.Course
	Figures []figure.Figure // the end that is not dangerous is the central value
	leads   map[string]int  // the corner that leads each figure by its id; -1: none
}

// At assesses a case with the dangerous ends of those figures of it that are
// wanted. The other figures have their central value at both ends.
func (t *Trail) At(c route.Case, wanted func(*figure.Figure) bool) (Sized, error) {
	c.Brief = true
	a := Assess(c, nil)
	if a.Err != nil {
		return Sized{}, a.Err
	}
	r := ranger{c: c, base: a.Figures, known: a.Courses, brief: true}
	found, leads := t.run(&r, wanted), map[string]int{}
	for i := range a.Figures {
		f := &a.Figures[i]
		low, high := f.Value.V, f.Value.V
		if wanted(f) {
			low, high, leads[f.ID()] = t.ends(f, i, found)
		}
		f.Low, f.High = f.End("low", low), f.End("high", high)
	}
	return Sized{Case: c, Walk: a.Walk, Courses: a.Courses, Figures: a.Figures, leads: leads}, nil
}

// run assesses the corners of the figures that are wanted, by their number.
func (t *Trail) run(r *ranger, wanted func(*figure.Figure) bool) [][]float64 {
	var todo []int
	found := make([][]float64, len(t.corners))
	for i := range r.base {
		if !wanted(&r.base[i]) {
			continue
		}
		for _, at := range t.cornersOf(&r.base[i]) {
			if found[at] == nil {
				found[at] = []float64{}
				todo = append(todo, at)
			}
		}
	}
	Each(len(todo), func(i int) {
		x := t.corners[todo[i]]
		here := *r
		here.vars = rowsHere(x.vars, r.c)
		found[todo[i]] = here.run(x.key)
	})
	return found
}

// cornersOf are those of a figure; all of them where no case had it.
func (t *Trail) cornersOf(f *figure.Figure) []int {
	if k, there := t.of[f.ID()]; there {
		return k
	}
	all := make([]int, len(t.corners))
	for i := range all {
		all[i] = i
	}
	return all
}

// ends are those of figure i over its corners, and the corner that leads the
// dangerous one, -1 for the central values. An unknown corner makes the dangerous
// end unknown.
func (t *Trail) ends(f *figure.Figure, i int, found [][]float64) (low, high float64, lead int) {
	q, _ := figure.Lookup(f.Quantity)
	low, high, lead = f.Value.V, f.Value.V, -1
	for _, at := range t.cornersOf(f) {
		v := found[at][i]
		switch {
		case math.IsNaN(v) && q.Danger == figure.Low:
			return v, high, at
		case math.IsNaN(v):
			return low, v, at
		}
		if q.Danger == figure.Low && v < low || q.Danger != figure.Low && v > high {
			lead = at
		}
		low, high = min(low, v), max(high, v)
	}
	return low, high, lead
}

// Between is a trail for sizes between two: of every figure it has the corners
// that lead at one of them.
func (t *Trail) Between(a, b *Sized) *Trail {
	out := &Trail{corners: t.corners, of: map[string][]int{}}
	for _, s := range []*Sized{a, b} {
		for id, at := range s.leads {
			have := out.of[id]
			if at >= 0 && !slices.Contains(have, at) {
				have = append(have, at)
			}
			out.of[id] = have
		}
	}
	return out
}

// rowsHere are variables with the rows another case has of them.
func rowsHere(vars []variable, c route.Case) []variable {
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

// Findings holds every figure of a case against its limits.
func (s *Sized) Findings() []figure.Finding {
	figs := bare(withoutTraces(slices.Clone(s.Figures)))
	return judge(s.Case, figs, &s.Walk)
}

// Watch picks the figures that a finding of a figure stands on: that figure, what
// may be judged in its place, and the figures that its limits are made of.
func Watch(id string) func(*figure.Figure) bool {
	quantity, place, _ := strings.Cut(id, "@")
	if i := strings.IndexAny(place, "/:"); i >= 0 {
		place = place[:i]
	}
	stands := standsOn[quantity]
	return func(f *figure.Figure) bool {
		return f.ID() == id || f.Place == place && slices.Contains(stands, f.Quantity)
	}
}

// standsOn are the quantities of the same place that the limits of another are
// made of, or that may be judged in its place.
var standsOn = map[string][]string{
	"heat.mtsr":             {"heat.mtsr", "heat.boiling_point", "heat.technical_limit", "air.hood_limit"},
	"heat.temperature_peak": {"heat.boiling_point"},
}

// Wanted reports whether a figure has, or may have, a verdict, or is a limit of one
// that has.
func Wanted(f *figure.Figure) bool {
	return !beside[f.Quantity] || hasLimit[f.Quantity]
}

// hasLimit are figures that stand beside others and are limits, are held against
// what the route or the site says, or say what has to be had.
var hasLimit = map[string]bool{"heat.boiling_point": true, "heat.technical_limit": true, "air.hood_limit": true, "heat.ice": true,
	"heat.cooling.required": true, "gas.hydrogen.dilution_air": true, "air.exhaust_required": true, "air.emission": true}

// Stand is a finding with how far it is from turning.
type Stand struct {
	figure.Finding
	Danger float64 // the dangerous end that was judged
	Near   float64 // where near begins, in the same unit
	Low    bool    // danger lies below the limit
}

// Judge is the finding of one figure against one of its limits, by their ids. It
// is false where there is no such figure or limit at this size.
func (s *Sized) Judge(id, limitID string) (Stand, bool) {
	for i := range s.Figures {
		f := &s.Figures[i]
		if !strings.HasPrefix(id, f.Quantity) || f.ID() != id || !judged(s.Figures, f) {
			continue
		}
		ls := heldBy(s.Case, s.Figures, &s.Walk, f, nil)
		for j := range ls {
			if ls[j].ID == limitID {
				return s.stand(f, &ls[j]), true
			}
		}
	}
	return Stand{}, false
}

func (s *Sized) stand(f *figure.Figure, l *limit.Limit) Stand {
	q, _ := figure.Lookup(f.Quantity)
	low := q.Danger == figure.Low
	danger := f.Danger().V
	if f.Quantity == "heat.mtsr" {
		danger, _ = highest(s.Figures, f.Place)
	}
	return Stand{Finding: finding(s.Case, s.Figures, f, l), Danger: danger, Near: l.NearFrom(low), Low: low}
}
