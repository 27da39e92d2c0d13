package ranges

import (
	"etchbound/chemicals"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

// Leads say of the figures of a case on which run the dangerous end of each stands.
type Leads struct {
	vars []variable
	of   map[figure.ID]lead
	run  map[figure.ID]tried // the worst run that was tried, of those that end at a bound
	gone []int               // the steps whose peaks are bounds in runs that are one
}

// lead is one run; of a figure that ends at a bound, one in which the peaks are bounds.
type lead struct {
	key   key
	bound bool
}

// Stood is a datum with the value at which it stands in a run.
type Stood struct {
	chemicals.Datum
	At float64 // in the unit of the datum
}

// tried is a run with the value of a figure in it.
type tried struct {
	lead
	value float64
}

// leadOf finds the run of every figure whose dangerous end is known and is not its
// centre: a corner before a single swing, where both give the same.
func (r *ranger) leadOf() *Leads {
	out := &Leads{vars: r.vars, of: map[figure.ID]lead{}, run: map[figure.ID]tried{}, gone: steps(r.gone)}
	for i := range r.base {
		f := &r.base[i]
		end := f.Danger()
		if end.Unknown() || end.V == f.Value.V {
			continue
		}
		if k, there := r.outer[i]; there {
			out.of[f.ID] = lead{k, true}
			if k, there := r.gives(i, r.tried[i]); there {
				out.run[f.ID] = tried{lead{key: k}, r.tried[i]}
			}
		} else if k, there := r.gives(i, end.V); there {
			out.of[f.ID] = lead{key: k}
		}
	}
	return out
}

// gives is a run that gives figure i a value.
func (r *ranger) gives(i int, v float64) (key, bool) {
	if r.base[i].Searched {
		for k := range r.failed.keys {
			if r.lots.at(&r.failed.found[k], i) == v {
				return r.failed.keys[k], true
			}
		}
		return "", false
	}
	for _, k := range r.own(i) {
		if r.lots.at(&r.corners.found[k], i) == v {
			return r.corners.keys[k], true
		}
	}
	for s := range r.swings {
		if x := &r.swings[s]; x.done && r.lots.at(x, i) == v {
			return r.single(s/len(ends), ends[s%len(ends)]), true
		}
	}
	return "", false
}

// Case is the case with every datum where it stands at the dangerous end of a figure,
// and where that is; false where the end is the centre, is not known or was not found.
func (l *Leads) Case(c route.Case, id figure.ID) (route.Case, []Stood, bool) {
	if l == nil {
		return c, nil, false
	}
	x, there := l.of[id]
	if !there {
		return c, nil, false
	}
	c, out := l.at(c, x)
	return c, out, true
}

// Run is Case at the worst run that was tried of a figure, what tells it from another, and what
// the figure is there; its dangerous end is that or a bound.
func (l *Leads) Run(c route.Case, f *figure.Figure) (at route.Case, run string, value float64, there bool) {
	if l == nil {
		return c, "", 0, false
	}
	x := tried{l.of[f.ID], f.Danger().V}
	if f.Bounded {
		x = l.run[f.ID]
	}
	if x.key == "" {
		return c, "", 0, false
	}
	c, _ = l.at(c, x.lead)
	return c, string(x.key), x.value, true
}

// at is a case in a run.
func (l *Leads) at(c route.Case, x lead) (route.Case, []Stood) {
	k := x.key
	if x.bound {
		c.Gone = l.gone
	}
	move := map[int]float64{}
	var out []Stood
	for i := range l.vars {
		if k[i] == centre {
			continue
		}
		l.vars[i].at(k[i], move)
		for _, d := range l.vars[i].rows {
			out = append(out, Stood{d, move[d.Index]})
		}
	}
	c.Store = c.Store.With(move)
	return c, out
}

// Same reports whether the dangerous ends of two figures stand on the same run.
func (l *Leads) Same(a, b figure.ID) bool { return l.of[a] == l.of[b] }
