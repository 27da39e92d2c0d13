package ranges

import (
	_ "embed"
	"slices"
	"sync"

	"etchbound/chemicals/datum"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/vessel"
	"etchbound/schemas/columns"
)

//go:embed paces.csv
var pacesCSV string

// paces are the data that say how fast an etch goes, and not how much of it there is.
var paces = sync.OnceValue(func() []datum.ID {
	return columns.Must("hazards/ranges/paces.csv", pacesCSV, func(r columns.Row) datum.ID {
		_ = r.Named("source") + r.Named("status") + r.Named("note")
		return datum.ID(r.Named("datum"))
	})
})

// maybe reports whether a variable is of what sets the pace where it is there, and by best
// estimate is not.
func (v *variable) maybe() bool {
	d := &v.rows[0]
	return d.Value == d.Low && slices.Contains(paces(), v.id)
}

// hotOf are the steps in which something reacts, each with the temperature beyond which it runs
// away, degC. A vessel that loses what it makes stays below the temperature T around it
// and
//
//	T + R T^2/E_a
//
// and what gets hotter runs away (thermal explosion theory, common practice; memory). Where nobody
// states what cools it, T is what it is set to.
func hotOf(ea float64, courses []course.Course) map[figure.Place]float64 {
	out := map[figure.Place]float64{}
	for i := range courses {
		for j := range courses[i].Stages {
			s := &courses[i].Stages[j]
			out[figure.Step(s.Step.Number)] = hot(s, ea)
		}
	}
	return out
}

// hot is the temperature beyond which a stage runs away, degC, with E_a in J/mol.
func hot(s *course.Stage, ea float64) float64 {
	t := max(s.Set.V, s.Coolant.V) + kelvin
	if s.Loose != nil { // whatever keeps it at what it is set to
		t = s.Set.V + kelvin
	}
	return t + vessel.R*t*t/ea - kelvin
}

// away are the steps that run away in one of some runs.
func (r *ranger) away(runs []found) []figure.Place {
	var out []figure.Place
	for i := range r.base {
		f := &r.base[i]
		most, there := r.hot[f.Place]
		if !there || slices.Contains(out, f.Place) || f.Quantity != "heat.temperature_peak" || !law(f.Case) {
			continue
		}
		if slices.ContainsFunc(runs, func(x found) bool { return r.lots.at(&x, i) > most }) {
			out = append(out, f.Place)
		}
	}
	return out
}

// paced are the corners of figure i in which what sets the pace of the etch stands at its best
// estimate, and at the end that moves the figure less. Close to a runaway a pace works both ways:
// what is quicker gets hotter, and what is slower lets more wait that then reacts with the rest,
// which no swing from the best estimates shows. What may be there or not, and by best estimate is
// not, has a corner without it. It has none unless its step is one of those that run away.
func (r *ranger) paced(i int, away []figure.Place) []key {
	f := &r.base[i]
	if !slices.Contains(away, f.Place) || !r.runs(i) && !tellsRate(f) || !law(f.Case) || !dangerUp(f) {
		return nil
	}
	own := r.corner(i, true)
	still, other, without := []byte(own), []byte(own), []byte(own)
	for v := range r.vars {
		if own[v] != centre && slices.Contains(paces(), r.vars[v].id) {
			still[v], other[v] = centre, ends[len(ends)-1]-own[v]
			if r.vars[v].maybe() {
				without[v] = centre
			}
		}
	}
	if key(still) == own {
		return nil
	}
	out := []key{key(still), key(other)}
	if key(without) != own {
		out = append(out, key(without))
	}
	return out
}

// pace adds the paced corners to those of figures whose ends are asked for, each to more by its
// number, and gives what was found in all of them.
func (r *ranger) pace(c *corners, found []found, more map[int][]int) []found {
	r.gone = r.away(found)
	away := r.gone
	if away == nil {
		return found
	}
	first, next := len(c.keys), corners{at: map[key]int{}}
	for i := range r.base {
		if !r.asked(i) {
			continue
		}
		for _, k := range r.paced(i, away) {
			more[i] = append(more[i], first+next.add(k, r.wants(i)))
		}
	}
	c.keys, c.of = append(c.keys, next.keys...), append(c.of, next.of...)
	return append(found, r.all(next.keys, next.want)...)
}
