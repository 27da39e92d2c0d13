package ranges

import (
	"math"
	"sync"

	"etchbound/chemicals"
	"etchbound/hazards/assess"
	"etchbound/hazards/figure"
)

// lots assesses a case with other data and lays what it gives beside the figures of
// its centre. Of lots that are the same the values are kept once.
type lots struct {
	kept  *assess.Kept
	base  []figure.Figure
	begin [assess.Parts + 1]int // of the figures of each part in base
	part  []assess.Part         // of each figure of base
	still found                 // of the centre

	mu     sync.Mutex
	values map[lot][]float64
}

// lot names a lot of figures.
type lot struct {
	part   assess.Part
	number int
}

// found are the values of one run, by part, in the order of the centre. Those of a
// part that was left out are of the centre.
type found struct {
	of   [assess.Parts][]float64
	done bool
}

// newLots is for what is kept of a case, beside an assessment of it.
func newLots(kept *assess.Kept, a *assess.Assessment) *lots {
	out := &lots{kept: kept, base: a.Figures, values: map[lot][]float64{}}
	for p, n := range a.Counts {
		from := out.begin[p]
		out.begin[p+1] = from + n
		v := make([]float64, n)
		for i := range v {
			v[i] = a.Figures[from+i].Value.V
			out.part = append(out.part, assess.Part(p))
		}
		out.still.of[p] = v
	}
	return out
}

// of lays what another case with the same figures gives beside the same centre.
func (l *lots) of(kept *assess.Kept) *lots {
	return &lots{kept: kept, base: l.base, begin: l.begin, part: l.part, still: l.still, values: map[lot][]float64{}}
}

// at is the value of figure i of the centre in a run.
func (l *lots) at(x *found, i int) float64 {
	p := l.part[i]
	return x.of[p][i-l.begin[p]]
}

// all are the values of a run in the order of the centre.
func (l *lots) all(x *found) []float64 {
	out := make([]float64, 0, len(l.base))
	for p := range x.of {
		out = append(out, x.of[p]...)
	}
	return out
}

// with assesses the case with other data, as far as the parts that are wanted.
func (l *lots) with(st *chemicals.Store, want assess.Set) found {
	return l.asked(st, wanted{want, figure.Everywhere})
}

// wanted is what is asked for of a run: some parts, and of those some places. What was
// not asked for is as in the centre.
type wanted struct {
	parts assess.Set
	at    figure.Asked
}

// and is what one or the other asks for; nothing asks for nothing.
func (w wanted) and(other wanted) wanted {
	switch {
	case w.parts == 0:
		return other
	case other.parts == 0:
		return w
	}
	return wanted{w.parts | other.parts, w.at.And(other.at)}
}

// asked is with as far as some places.
func (l *lots) asked(st *chemicals.Store, of wanted) found {
	out, want, got := l.still, of.parts, l.kept.At(st, of.parts, of.at)
	out.done = true
	for p := range got.Of {
		if want.Has(assess.Part(p)) {
			out.of[p] = l.align(assess.Part(p), &got.Of[p])
		}
	}
	return out
}

// align are the values of a lot in the order of the centre.
func (l *lots) align(p assess.Part, of *assess.Lot) []float64 {
	name := lot{p, of.Number}
	l.mu.Lock()
	out, there := l.values[name]
	l.mu.Unlock()
	if there {
		return out
	}
	out = align(l.base[l.begin[p]:l.begin[p+1]], of.Figures, of.Asked)
	l.mu.Lock()
	defer l.mu.Unlock()
	l.values[name] = out
	return out
}

// align returns the values of figs in the order of base; a figure that is not
// there is unknown, and one of a place that was not asked for is as in base.
func align(base, figs []figure.Figure, asked figure.Asked) []float64 {
	out := make([]float64, len(base))
	var where map[figure.ID]int // made once the two lists part
	next := 0
	for i := range base {
		if !asked.Has(base[i].Place) {
			out[i] = base[i].Value.V
			continue
		}
		if next < len(figs) && base[i].ID == figs[next].ID {
			out[i] = figs[next].Value.V
			next++
			continue
		}
		if where == nil {
			where = placesOf(figs)
		}
		at, there := where[base[i].ID]
		if !there {
			out[i] = math.NaN()
			continue
		}
		out[i], next = figs[at].Value.V, at+1
	}
	return out
}

// placesOf is where each figure first stands in a list.
func placesOf(figs []figure.Figure) map[figure.ID]int {
	out := make(map[figure.ID]int, len(figs))
	for i := range figs {
		if _, there := out[figs[i].ID]; !there {
			out[figs[i].ID] = i
		}
	}
	return out
}
