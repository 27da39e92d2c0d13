package ranges

import (
	"slices"

	"etchbound/chemicals/datum"
	"etchbound/hazards/assess"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
)

// quickest are the data of which the low end makes a reaction quickest, whatever else holds: the
// share of a hold in which it is really done, the time of its metal, and the seed, as the less
// begins a self-accelerating etch the faster it has to grow to be done with the hold.
var quickest = [...]datum.ID{"kinetics.hold_share", "kinetics.metal_time", "kinetics.seed"}

// steep is the datum either end of which may be worst: a rate is convex in it.
const steep datum.ID = "kinetics.activation"

// bound takes the dangerous ends of what goes with the run of a step that runs away to where no
// run comes: no heat is lost and all powder waits (vessel.Plan.Bound), with the data that heat
// most at those ends, as a temperature is bounded by all of its heat.
func (r *ranger) bound() {
	if r.gone == nil {
		return
	}
	c, of := corners{at: map[key]int{}}, make([][]int, len(r.base))
	for i := range r.base {
		if !r.asked(i) || !r.rises(i) || r.base[i].Open() != nil {
			continue
		}
		for _, k := range r.outermost(i) {
			of[i] = append(of[i], c.add(k, wanted{r.made(i), figure.AskedAt(r.base[i].Place)}))
		}
	}
	away := *r
	away.c.Gone = steps(r.gone)
	r.bounds, r.outer = r.lots.of(assess.Keep(away.c, r.known)), map[int]key{}
	away.lots = r.bounds
	found := away.all(c.keys, c.want)
	for i := range r.base {
		for _, k := range of[i] {
			if widened(&r.base[i], r.lots.at(&found[k], i)) {
				r.outer[i] = c.keys[k]
			}
		}
	}
}

// widened takes a bound into the range of a figure; false where its end lies as far out.
func widened(f *figure.Figure, v float64) bool {
	if f.Danger().Unknown() || !farther(f, v, f.Danger().V) {
		return false
	}
	if dangerUp(f) {
		f.SetRange(f.Low().V, v)
	} else {
		f.SetRange(v, f.High().V)
	}
	if !f.Bounded {
		f.Bounded, f.Conditions = true, f.Conditions.And(phrase.Of("course.bounded"))
	}
	return true
}

// rises reports whether a figure goes with the run of a step that runs away, as it is meant, or
// is of the air of a hood, where all the gas there is comes at once into a room.
func (r *ranger) rises(i int) bool {
	f := &r.base[i]
	if f.Quantity == "air.hydrogen_share" && f.Place == figure.Hood {
		return true
	}
	return f.Quantity != "heat.mtsr" && slices.Contains(r.gone, f.Place) && !f.Case.Supposed() && r.goes(i)
}

// outermost are the corners in which the run of a figure is bounded: what heats most stands there,
// then what boils latest and what gives most gas, what else moves the figure as in its own corner,
// and what sets the pace at its quick end. Of a highest temperature they are the corners of the
// one that is reached if cooling fails, which it never passes.
func (r *ranger) outermost(i int) []key {
	if of := r.base[i].ID; of.Quantity == "heat.temperature_peak" {
		of.Quantity = "heat.mtsr"
		for j := range r.base {
			if r.base[j].ID == of {
				return append(append(r.hottest(j), r.corner(j, true)), r.paced(j, r.gone)...)
			}
		}
	}
	out := slices.Repeat([]byte{centre}, len(r.vars))
	fill := func(with key) {
		for v := range out {
			if out[v] == centre {
				out[v] = with[v]
			}
		}
	}
	for _, q := range [...]string{"heat.mtsr", "heat.adiabatic_rise", "heat.boiling_point", "gas.hydrogen.total"} {
		for j := range r.base {
			f := &r.base[j]
			if f.Quantity == q && f.Case.IsZero() && (f.Place == r.base[i].Place || f.Place.IsZero()) {
				fill(r.corner(j, true))
			}
		}
	}
	fill(r.corner(i, dangerUp(&r.base[i])))
	other := slices.Clone(out)
	for v := range r.vars {
		switch id := r.vars[v].id; {
		case slices.Contains(quickest[:], id):
			out[v], other[v] = 0, 0
		case id == steep:
			out[v], other[v] = 0, 4
		}
	}
	if slices.Equal(out, other) {
		return []key{key(out)}
	}
	return []key{key(out), key(other)}
}

func steps(places []figure.Place) []int {
	var out []int
	for _, p := range places {
		if n, is := p.Step(); is {
			out = append(out, n)
		}
	}
	return out
}
