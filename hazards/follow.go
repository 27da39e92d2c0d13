package hazards

import (
	"maps"
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

// Trail leads the dangerous ends of figures between two sizes of the same route: of
// every figure it has the corners of the data that a review of either size stands
// on. It is safe for use by several goroutines.
type Trail struct {
	corners []corner
	of      map[string][]int // of a figure by its id, into corners
}

// corner is one run, for any size of the route.
type corner struct {
	vars []variable
	key  key
}

// words names a corner by what stands where, whatever else another size reads.
func (c *corner) words() string {
	var b strings.Builder
	for i := range c.vars {
		if c.key[i] != centre {
			b.WriteString(c.vars[i].id)
			b.WriteByte(c.key[i])
		}
	}
	return b.String()
}

// Sized is a case at a size, with its dangerous ends.
type Sized struct {
	Case    route.Case
	Walk    process.Walk
	Courses []course.Course
	Figures []figure.Figure     // the end that is not dangerous need not be as far out
	leads   map[string][]corner // what the dangerous end of each figure by its id stands on
	moves   map[string][]string // the variables that move it
}

// Size assesses a case for the dangerous ends of those figures of it that are
// wanted, each from the swings and its own corner, as a review has them. Failures
// are left out, and ends that are not dangerous need not be as far out as a review
// has them.
func Size(c route.Case, wanted func(*figure.Figure) bool) (Sized, error) {
	return size(c, wanted, nil)
}

// Nearby is Size for a case between two others, whose figures nothing moves there
// that moves them in neither of the two.
func Nearby(c route.Case, wanted func(*figure.Figure) bool, others ...*Sized) (Sized, error) {
	moves := map[string]bool{}
	for _, s := range others {
		for i := range s.Figures {
			if f := &s.Figures[i]; wanted(f) {
				for _, id := range s.moves[f.ID()] {
					moves[id] = true
				}
			}
		}
	}
	return size(c, wanted, moves)
}

func size(c route.Case, wanted func(*figure.Figure) bool, moves map[string]bool) (Sized, error) {
	c.Brief = true
	w := working.NewSheet()
	a := Assess(c, w)
	if a.Err != nil {
		return Sized{}, a.Err
	}
	r := &ranger{c: c, vars: variables(read(c.Store, w)), base: a.Figures, known: a.Courses, brief: true, about: wanted, moves: moves}
	r.swing()
	var keys []key
	at := map[key]int{}
	of := make([]int, len(r.base))
	for i := range r.base {
		if of[i] = -1; !wanted(&r.base[i]) {
			continue
		}
		k := r.corner(i, dangerUp(&r.base[i]))
		if _, there := at[k]; !there {
			at[k] = len(keys)
			keys = append(keys, k)
		}
		of[i] = at[k]
	}
	found := r.all(keys)
	out := Sized{Case: c, Walk: a.Walk, Courses: a.Courses, leads: map[string][]corner{}, moves: map[string][]string{}}
	for i := range r.base {
		f := &r.base[i]
		low, high := f.Value.V, f.Value.V
		switch {
		case of[i] < 0:
		case dangerUp(f):
			high = found[of[i]][i]
		default:
			low = found[of[i]][i]
		}
		r.set(i, low, high)
		if of[i] >= 0 {
			out.moves[f.ID()] = r.movers(r.driver(i), i)
			out.leads[f.ID()] = r.leads(i, keys[of[i]], found[of[i]][i])
		}
	}
	out.Figures = r.base
	return out, nil
}

// movers are the variables that move one of some figures at an end, by their ids.
func (r *ranger) movers(figures ...int) []string {
	var out []string
	for v := range r.vars {
		for _, i := range figures {
			if slices.ContainsFunc(r.swings[v*len(ends):(v+1)*len(ends)], func(s []float64) bool { return s[i] != r.base[i].Value.V }) {
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
// corner, with what it has there, and the single swing that goes farthest.
func (r *ranger) leads(i int, k key, there float64) []corner {
	out := []corner{{r.vars, k}}
	up, best, at := dangerUp(&r.base[i]), r.base[i].Value.V, -1
	q, _ := figure.Lookup(r.base[i].Quantity)
	for s := range r.swings {
		if end := ends[s%len(ends)]; (end == 1 || end == 3) && !q.Kinked {
			continue
		}
		if v := r.swings[s][i]; up && v > best || !up && v < best {
			best, at = v, s
		}
	}
	if at >= 0 {
		out = append(out, corner{r.vars, r.single(at/len(ends), ends[at%len(ends)])})
		if up && best > there || !up && best < there {
			slices.Reverse(out)
		}
	}
	return out
}

// SameLead reports whether the dangerous end of a figure stands on the same corner
// in two sizes, so that it does between them.
func SameLead(a, b *Sized, id string) bool {
	x, y := a.leads[id], b.leads[id]
	return len(x) == 0 && len(y) == 0 || len(x) > 0 && len(y) > 0 && x[0].words() == y[0].words()
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
	found := t.run(&r, wanted)
	for i := range a.Figures {
		f := &a.Figures[i]
		low, high := f.Value.V, f.Value.V
		if wanted(f) {
			low, high = t.ends(f, i, found)
		}
		f.Low, f.High = f.End("low", low), f.End("high", high)
	}
	return Sized{Case: c, Walk: a.Walk, Courses: a.Courses, Figures: a.Figures}, nil
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

// ends are those of figure i over its corners. An unknown corner makes the
// dangerous end unknown.
func (t *Trail) ends(f *figure.Figure, i int, found [][]float64) (low, high float64) {
	low, high = f.Value.V, f.Value.V
	for _, at := range t.cornersOf(f) {
		v := found[at][i]
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
	out := &Trail{of: map[string][]int{}}
	seen := map[string]int{}
	for _, s := range []*Sized{a, b} {
		for _, id := range slices.Sorted(maps.Keys(s.leads)) {
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
	return Stand{Finding: finding(s.Case, s.Figures, f, f.ID(), l), Danger: danger, Near: l.NearFrom(low), Low: low}
}
