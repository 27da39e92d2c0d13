package ranges

import (
	"etchbound/chemicals"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

// Leads say of the figures of a case on which run the dangerous end of each stands.
type Leads struct {
	vars []variable
	of   map[figure.ID]key
}

// Stood is a datum with the value at which it stands in a run.
type Stood struct {
	chemicals.Datum
	At float64 // in the unit of the datum
}

// leadOf finds the run of every figure whose dangerous end is known and is not its
// centre: a corner before a single swing, where both give the same.
func (r *ranger) leadOf() *Leads {
	out := &Leads{vars: r.vars, of: map[figure.ID]key{}}
	for i := range r.base {
		f := &r.base[i]
		end := f.Danger()
		if end.Unknown() || end.V == f.Value.V {
			continue
		}
		if k, there := r.gives(i, end.V); there {
			out.of[f.ID] = k
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
	k, there := l.of[id]
	if !there {
		return c, nil, false
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
	return c, out, true
}

// Same reports whether the dangerous ends of two figures stand on the same run.
func (l *Leads) Same(a, b figure.ID) bool { return l.of[a] == l.of[b] }
