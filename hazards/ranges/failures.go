package ranges

import (
	"math"
	"slices"

	"etchbound/hazards/assess"
	"etchbound/hazards/figure"
	"etchbound/hazards/vessel"
	"etchbound/hazards/workers"
)

// failures sets the ranges of what a search found. It is not swung datum by
// datum: it is worked out in some corners, and its range is the least and the
// greatest of them and of the centre. In one half of them the data stand at the
// ends that give much or little heat for the liquor, in the other at those that
// give much or little gas; what moves neither stands at the ends that make the
// runs slow or fast. With them go the runs in which a step gave most gas as it is
// meant to go: the fastest is not always the worst. Where a stirrer may heat, those
// in which a step got hottest go with them.
func (r *ranger) failures(searched *lots) {
	heat, gas := []kind{tellsHeat, tellsGas, tellsRate, tellsShut, tellsBreath},
		[]kind{tellsGas, tellsHeat, tellsRate, tellsShut}
	keys := []key{r.extreme(heat, true, true), r.extreme(heat, true, false),
		r.extreme(heat, false, true), r.extreme(heat, false, false),
		r.extreme(gas, true, true), r.extreme(gas, false, false)}
	keys = append(keys, r.worstRuns(isFlow)...)
	if slices.ContainsFunc(r.vars, func(v variable) bool { return v.maybe() }) {
		keys = append(keys, r.worstRuns(isPeak)...)
	}
	slices.Sort(keys)
	keys = slices.Compact(keys)
	found := make([]found, len(keys))
	workers.Each(len(keys), func(i int) { found[i] = searched.with(r.store(keys[i]), assess.Of(assess.Upset)) })
	r.failed = tries{keys, found}
	for i := range r.base {
		if r.base[i].Searched {
			r.between(i, found)
		}
	}
}

// between takes the least and the greatest of the centre and the corners. A
// corner that is unknown makes the dangerous end unknown.
func (r *ranger) between(i int, corners []found) {
	f := &r.base[i]
	q, _ := figure.Lookup(f.Quantity)
	lo, hi := f.Value.V, f.Value.V
	unknown := false
	for c := range corners {
		v := r.lots.at(&corners[c], i)
		if math.IsNaN(v) {
			unknown = true
			continue
		}
		lo, hi = min(lo, v), max(hi, v)
	}
	if unknown && q.Danger == figure.Low {
		lo = math.NaN()
	} else if unknown {
		hi = math.NaN()
	}
	f.SetRange(lo, hi)
}

// worstRuns are the runs in which some figures of the laws were greatest.
func (r *ranger) worstRuns(of kind) []key {
	var out []key
	for i := range r.base {
		if !tellsRate(&r.base[i]) || !of(&r.base[i]) {
			continue
		}
		best, at := r.base[i].Value.V, key("")
		for _, t := range r.done {
			for k := range t.keys {
				if v := r.lots.at(&t.found[k], i); v > best {
					best, at = v, t.keys[k]
				}
			}
		}
		if at != "" {
			out = append(out, at)
		}
	}
	return out
}

// kind picks figures by what they say.
type kind func(*figure.Figure) bool

// extreme is the corner in which every variable stands at the end that moves the
// first sort of figures it moves at all up, or down; those that say how fast a
// run goes may go the other way.
func (r *ranger) extreme(order []kind, up, fast bool) key {
	b := slices.Repeat([]byte{centre}, len(r.vars))
	for v := range r.vars {
		for i, of := range order {
			way := up
			if i == 2 {
				way = fast
			}
			if end, moves := r.toward(v, of, way); moves {
				b[v] = end
				break
			}
		}
	}
	return key(b)
}

// tellsHeat reports whether a figure says how much heat there is for its liquor.
func tellsHeat(f *figure.Figure) bool { return f.Quantity == "heat.adiabatic_rise" }

// tellsGas reports whether a figure says how much gas there is.
func tellsGas(f *figure.Figure) bool { return f.Quantity == "gas.hydrogen.total" }

// tellsShut reports whether a figure says what gas alone does in a shut container: one that is
// warm by its own heat follows the runs.
func tellsShut(f *figure.Figure) bool {
	return f.Quantity == "gas.closed.pressure" && f.Case.Failure == "" && f.Case.Branch != figure.OwnHeat
}

// tellsBreath reports whether a figure says what people breathe as it is meant: what moves
// nothing of the run moves that, and what boils off with it.
func tellsBreath(f *figure.Figure) bool { return f.Quantity == "air.breathing_zone" && f.Case.IsZero() }

// tellsRate reports whether a figure says how fast or how hot a run goes.
func tellsRate(f *figure.Figure) bool {
	if f.Case.Failure != "" || f.Case.IsZero() || f.Case == figure.By(string(vessel.Instantaneous)) {
		return false
	}
	return isFlow(f) || isPeak(f)
}

// isPeak reports whether a figure is how hot a run gets.
func isPeak(f *figure.Figure) bool { return f.Quantity == "heat.temperature_peak" }

// isFlow reports whether a figure is a flow of a run as it is meant.
func isFlow(f *figure.Figure) bool {
	switch f.Quantity {
	case "gas.hydrogen.peak_rate.during_addition", "gas.hydrogen.peak_rate.after_addition":
		return true
	}
	return false
}

// toward is the end of a variable that moves some figures most up, or down,
// each by its own size. An end at which one of them is unknown counts as most.
func (r *ranger) toward(v int, of kind, up bool) (end byte, moves bool) {
	end, best := byte(centre), 0.0
	for e, at := range ends {
		if at == 1 || at == 3 {
			continue
		}
		move := 0.0
		for i := range r.base {
			f := &r.base[i]
			if !of(f) || f.Value.Unknown() || f.Value.V == 0 {
				continue
			}
			d := (r.lots.at(&r.swings[v*len(ends)+e], i) - f.Value.V) / math.Abs(f.Value.V)
			if math.IsNaN(d) {
				d = math.Inf(1)
				if !up {
					d = math.Inf(-1)
				}
			}
			move += d
		}
		if !up {
			move = -move
		}
		if math.Abs(move) > 1e-12 {
			moves = true
		}
		if move > best {
			best, end = move, at
		}
	}
	return end, moves
}
