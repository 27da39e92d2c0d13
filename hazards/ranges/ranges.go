package ranges

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/assess"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/hazards/workers"
)

// variable is one datum, or one group of data that moves together.
type variable struct {
	id   datum.ID
	rows []chemicals.Datum
}

// at sets the rows of v to their low end (0), a quarter (1), three quarters
// (3) or their high end (4); 2 leaves them central.
func (v *variable) at(end byte, into map[int]float64) {
	for _, d := range v.rows {
		span := d.High - d.Low
		switch end {
		case 0:
			into[d.Index] = d.Low
		case 1:
			into[d.Index] = d.Low + span/4
		case 3:
			into[d.Index] = d.Low + 3*span/4
		case 4:
			into[d.Index] = d.High
		}
	}
}

const centre = 2

// Used lists the rows of a store that a traced run used, in its order.
func Used(st *chemicals.Store, w *working.Sheet) []chemicals.Datum {
	seen := map[datum.ID]bool{}
	var out []chemicals.Datum
	for i := range w.Lines {
		id, reads := w.Lines[i].Datum()
		if !reads || seen[id] {
			continue
		}
		seen[id] = true
		if d, ok := st.Row(id); ok {
			out = append(out, d)
		}
	}
	slices.SortStableFunc(out, func(a, b chemicals.Datum) int { return a.Index - b.Index })
	return out
}

// variables are the data the traced run read that have a range, in the order
// of the store, grouped.
func variables(used []chemicals.Datum) []variable {
	var out []variable
	group := map[string]int{}
	for _, d := range used {
		if !d.Swings() {
			continue
		}
		if d.Group != "" {
			if i, ok := group[d.Group]; ok {
				out[i].rows = append(out[i].rows, d)
				continue
			}
			group[d.Group] = len(out)
		}
		out = append(out, variable{id: d.ID, rows: []chemicals.Datum{d}})
	}
	return out
}

// ranger finds the range of every figure: each variable moved once to each of
// its ends, then for each figure the two corners where every variable stands
// at the end that moved this figure down, or up.
type ranger struct {
	c      route.Case
	vars   []variable
	base   []figure.Figure
	known  *course.Known
	lots   *lots
	loose  []loose
	hot    map[figure.Place]float64 // degC beyond which a step runs away in which something reacts
	gone   []figure.Place           // the steps that run away in some run
	tried  []float64                // the dangerous ends by the runs that were tried
	outer  map[int]key              // of the figures that end at a bound, the run that gives it
	bounds *lots                    // of runs whose peaks are bounds
	done   []tries
	about  func(*figure.Figure) bool // the figures whose ranges are asked for; nil: all
	moves  map[datum.ID]bool         // the variables that can move them; nil: all
	swings []found                   // [variable*4 + (low, quarter, three quarters, high)]

	corners tries             // of all figures but those that a search finds
	own     func(i int) []int // the corners of a figure, by their number
	failed  tries             // the runs in which what a search finds was looked for
}

// newRanger is for the figures of an assessment of a case, without what only a
// search gives.
func newRanger(c route.Case, vars []variable, a *assess.Assessment) *ranger {
	c.Brief = true
	known, ea := course.Know(a.Courses), 1000*c.Store.Num("kinetics.activation").V
	return &ranger{c: c, vars: vars, base: a.Figures, known: known, lots: newLots(assess.Keep(c, known), a),
		loose: looseOf(c, ea, a.Courses), hot: hotOf(ea, a.Courses)}
}

// tries are some runs with what each gave.
type tries struct {
	keys  []key
	found []found
}

// key is one run: the end of every variable.
type key string

// store is that of a run.
func (r *ranger) store(k key) *chemicals.Store {
	move := map[int]float64{}
	for i := range r.vars {
		r.vars[i].at(k[i], move)
	}
	return r.c.Store.With(move)
}

// all runs every key once, on every processor, as far as the parts that are wanted
// of it; the result does not depend on how many there are.
func (r *ranger) all(keys []key, want func(i int) wanted) []found {
	out := make([]found, len(keys))
	workers.Each(len(keys), func(i int) { out[i] = r.lots.asked(r.store(keys[i]), want(i)) })
	return out
}

// asks is what the figures asked for, those that say which way they go and those that they
// are like ask for of a run.
func (r *ranger) asks() wanted {
	if r.about == nil {
		return wanted{assess.All, figure.Everywhere}
	}
	var out wanted
	for i := range r.base {
		if r.about(&r.base[i]) {
			out = out.and(r.wants(i)).and(r.wants(r.likest(i)))
		}
	}
	return out
}

// partsOf is the set of those that figure i, the one that drives it and the temperatures
// that it goes with stand on.
func (r *ranger) partsOf(i int) assess.Set {
	out := r.made(i) | assess.Of(r.lots.part[r.driver(i)])
	for _, j := range r.peaks(i) {
		out |= assess.Of(r.lots.part[j])
	}
	return out
}

// made is the set of parts that figure i is made of.
func (r *ranger) made(i int) assess.Set {
	out := assess.Of(r.lots.part[i])
	if r.lots.part[i] == assess.Sums {
		out |= assess.GivenBy(r.base[i].Quantity)
	}
	return out
}

// wants is what figure i asks for of a run.
func (r *ranger) wants(i int) wanted { return wanted{r.partsOf(i), r.at(i)} }

// at is where figure i and the one that drives it hold. What is made of others of its
// part may stand on any place.
func (r *ranger) at(i int) figure.Asked {
	return figure.AskedAt(r.base[i].Place).And(figure.AskedAt(r.base[r.driver(i)].Place))
}

func (r *ranger) single(variable int, end byte) key {
	b := slices.Repeat([]byte{centre}, len(r.vars))
	b[variable] = end
	return key(b)
}

var ends = [...]byte{0, 1, 3, 4}

// swing moves each variable to its ends, and to the quarter points of those that
// move a kinked figure at all.
func (r *ranger) swing() {
	r.swings = make([]found, len(r.vars)*len(ends))
	want := r.asks()
	run := func(which func(variable, end int) wanted) {
		var keys []key
		var place []int
		var of []wanted
		for v := range r.vars {
			for e := range ends {
				if x := which(v, e); x.parts != 0 {
					keys, place, of = append(keys, r.single(v, ends[e])), append(place, v*len(ends)+e), append(of, x)
				}
			}
		}
		found := r.all(keys, func(i int) wanted { return of[i] })
		for i := range place {
			r.swings[place[i]] = found[i]
		}
		r.done = append(r.done, tries{keys, found})
	}
	quarter := func(e int) bool { return ends[e] == 1 || ends[e] == 3 }
	run(func(v, e int) wanted {
		if quarter(e) || r.moves != nil && !r.moves[r.vars[v].id] {
			return wanted{}
		}
		return want
	})
	bent := make([]wanted, len(r.vars))
	for v := range bent {
		bent[v] = r.bends(v)
		bent[v].parts &= want.parts
	}
	run(func(v, e int) wanted {
		if !quarter(e) {
			return wanted{}
		}
		return bent[v]
	})
	for i := range r.swings {
		if !r.swings[i].done {
			r.swings[i] = r.lots.still
		}
	}
}

// bends is the set of the parts with a kinked figure that an end of a variable moves.
// Where there is one, the search for the worst failure looks at the flows as well.
func (r *ranger) bends(v int) wanted {
	out := wanted{}
	for i := range r.base {
		q, _ := figure.Lookup(r.base[i].Quantity)
		if q.Kinked && (r.about == nil || r.about(&r.base[i])) && r.stirs(v, i) {
			out = out.and(r.wants(i)).and(wanted{assess.Of(assess.Gas), r.at(i)})
		}
	}
	return out
}

// Swung is what was found where each datum of a case was moved for itself.
type Swung struct {
	Data  []chemicals.Datum // what was moved: of data that move together, the first
	Leads *Leads            // nil of a brief case
	Away  []figure.Place    // the steps that run away in some run: their flows are bounds, and no runs
	r     *ranger
}

// Ends are the figures with a datum, by its number in Data, at its low and at its
// high end.
func (s *Swung) Ends(v int) (low, high []float64) {
	return s.r.lots.all(&s.r.swings[v*len(ends)]), s.r.lots.all(&s.r.swings[v*len(ends)+len(ends)-1])
}

// Set sets Low and High of every figure of an assessment of a case, by moving the
// data that its traced run used.
func Set(c route.Case, used []chemicals.Datum, a *assess.Assessment) *Swung {
	r := newRanger(c, variables(used), a)
	r.setAll(!c.Brief)
	out := &Swung{r: r, Away: r.gone}
	if !c.Brief {
		r.failures(newLots(assess.Keep(c, r.known), a))
		out.Leads = r.leadOf()
		r.base = slices.Clone(a.Figures) // who has them takes some out and puts others in
		r.lots.base = r.base
	}
	for v := range r.vars {
		out.Data = append(out.Data, r.vars[v].rows[0])
	}
	return out
}

// setAll sets Low and High of every figure of base but those that a search finds, which
// looks at the flows of all runs.
func (r *ranger) setAll(search bool) {
	r.swing()
	rivals := r.rivals()
	c := corners{at: map[key]int{}}
	want, more := make([][2]int, len(r.base)), map[int][]int{}
	for i := range r.base {
		if r.base[i].Searched {
			continue
		}
		for d, up := range []bool{false, true} {
			want[i][d] = c.add(r.corner(i, up), r.wants(i))
		}
		for _, k := range r.others(rivals, i) {
			more[i] = append(more[i], c.add(k, r.wants(i)))
		}
	}
	if search {
		c.also(assess.Of(assess.Gas))
	}
	r.own = func(i int) []int { return append([]int{want[i][0], want[i][1]}, more[i]...) }
	found := r.all(c.keys, c.want)
	found = r.pace(&c, found, more)
	r.done = append(r.done, tries{c.keys, found})
	r.corners = tries{c.keys, found}
	for i := range r.base {
		if r.base[i].Searched {
			continue
		}
		down, up := r.lots.at(&found[want[i][0]], i), r.lots.at(&found[want[i][1]], i)
		for _, k := range more[i] {
			down, up = r.beyond(i, down, up, r.lots.at(&found[k], i))
		}
		if r.unlike(i) {
			up = math.NaN()
		}
		r.set(i, down, up)
	}
	r.open()
	r.tried = make([]float64, len(r.base))
	for i := range r.base {
		r.tried[i] = r.base[i].Danger().V
	}
	r.bound()
}

// corners are runs, each once, with the parts that are wanted of each.
type corners struct {
	at   map[key]int
	keys []key
	of   []wanted
}

// add is the number of a run, of which something is wanted.
func (c *corners) add(k key, of wanted) int {
	i, ok := c.at[k]
	if !ok {
		i = len(c.keys)
		c.at[k] = i
		c.keys, c.of = append(c.keys, k), append(c.of, wanted{})
	}
	c.of[i] = c.of[i].and(of)
	return i
}

// also wants some parts of every run.
func (c *corners) also(parts assess.Set) {
	for i := range c.of {
		c.of[i].parts |= parts
	}
}

func (c *corners) want(i int) wanted { return c.of[i] }

// corner is the run in which every variable stands at the end that moved
// figure i down, or up. An end that made it unknown counts as moving it toward
// danger.
func (r *ranger) corner(i int, up bool) key {
	b := slices.Repeat([]byte{centre}, len(r.vars))
	q, _ := figure.Lookup(r.base[i].Quantity)
	towardDanger := up == (q.Danger == figure.High)
	j := r.driver(i)
	if d, _ := figure.Lookup(r.base[j].Quantity); d.Danger != q.Danger {
		up = !up
	}
	i = j
	x := r.base[i].Value.V
	for v := range r.vars {
		best := 0.0
		for e, end := range ends {
			if end == 1 || end == 3 {
				continue
			}
			y := r.lots.at(&r.swings[v*len(ends)+e], i)
			move := y - x
			switch {
			case math.IsNaN(y) && !math.IsNaN(x):
				if towardDanger {
					best, b[v] = math.Inf(1), end
				}
				continue
			case !up:
				move = -move
			}
			if move > best && move > 1e-12*math.Abs(x) {
				best, b[v] = move, end
			}
		}
	}
	return key(b)
}

// driver is the figure whose swings decide the corners of figure i. A time is its own
// driver unless it stands where it says not by then: no swing moves it there.
func (r *ranger) driver(i int) int {
	f := &r.base[i]
	row := figure.Row(f.Quantity)
	by := row.DrivenBy
	if by == "" || row.Never > 0 && f.Value.V < float64(row.Never) {
		return i
	}
	of := f.ID
	of.Quantity = by
	for j := range r.base {
		if g := &r.base[j]; g.ID == of && !g.Value.Unknown() {
			return j
		}
	}
	return i
}

// set takes the least and the greatest of the centre, the swings and the two
// corners. An unknown corner makes that end unknown.
func (r *ranger) set(i int, down, up float64) {
	f := &r.base[i]
	q, _ := figure.Lookup(f.Quantity)
	lo, hi := f.Value.V, f.Value.V
	for v := range r.vars {
		for e, end := range ends {
			if (end == 1 || end == 3) && !q.Kinked {
				continue
			}
			if y := r.lots.at(&r.swings[v*len(ends)+e], i); !math.IsNaN(y) {
				lo, hi = min(lo, y), max(hi, y)
			}
		}
	}
	f.SetRange(min(lo, down), max(hi, up))
}
