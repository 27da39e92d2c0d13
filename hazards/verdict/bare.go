package verdict

import (
	"iter"
	"math"
	"slices"

	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
)

// Bare adds what always exists: for each failure the worst of its laws at the centre and
// at either end, for each place the worst of its cases and agents, and for each quantity
// the worst of its members, each naming the member it repeats, or the law whose dangerous
// end it has. Sums are there already.
func Bare(figs []figure.Figure) []figure.Figure {
	set := figure.NewSet(figs)
	have := make(map[figure.ID]bool, 2*len(figs))
	for i := range figs {
		have[figs[i].ID] = true
	}
	var out []figure.Figure
	add := func(id figure.ID, members iter.Seq[*figure.Figure], in func(*figure.Figure) bool) {
		if have[id] {
			return
		}
		if of := worst(members, in); of != nil {
			have[id] = true
			out = append(out, of.RepeatedAs(id))
		}
	}
	for i := range figs {
		f := &figs[i]
		all := figure.If(f.Case.Failure)
		if all.IsZero() || f.Case == all || f.Case.State == figure.Closed {
			continue
		}
		id := figure.ID{Quantity: f.Quantity, Place: f.Place, Case: all}
		if have[id] {
			continue
		}
		have[id] = true
		out = append(out, overLaws(id, set))
	}
	for i := range figs {
		f := &figs[i]
		if !f.Place.IsZero() && (f.Agent != "" || !f.Case.IsZero()) {
			add(figure.ID{Quantity: f.Quantity, Place: f.Place}, set.At(f.Quantity, f.Place), whichever)
		}
	}
	for i := range figs {
		f := &figs[i]
		add(figure.ID{Quantity: f.Quantity}, set.Of(f.Quantity), func(x *figure.Figure) bool { return x.Of().IsZero() })
	}
	return sorted(append(figs, out...))
}

// overLaws is the figure of a failure without a law. Nobody knows which of the laws
// holds, so that each of its three numbers is the worst that one of them gives.
func overLaws(id figure.ID, set *figure.Set) figure.Figure {
	law := func(x *figure.Figure) bool {
		return x.Case.Failure == id.Case.Failure && x.Case.State != figure.Closed
	}
	of := worst(set.At(id.Quantity, id.Place), law)
	sum := of.RepeatedAs(id)
	one := true
	for x := range set.At(id.Quantity, id.Place) {
		if law(x) && x != of {
			sum.Covers(x)
			one = false
		}
	}
	if !one && !sum.Conditions.IsZero() {
		sum.Conditions = sum.Conditions.And(phrase.Of("upset.over_laws"))
	}
	return sum
}

func whichever(*figure.Figure) bool { return true }

// worst is the member whose dangerous end is worst. Unknown outranks every
// number; what is only so if a container were shut or something went wrong ranks
// behind what is so as the route means it, and an outer bound behind what is estimated.
func worst(members iter.Seq[*figure.Figure], in func(*figure.Figure) bool) *figure.Figure {
	var w *figure.Figure
	for f := range members {
		if in(f) && (w == nil || worse(f, w)) {
			w = f
		}
	}
	return w
}

func worse(f, than *figure.Figure) bool {
	if real := notAsMeant(than); real != notAsMeant(f) {
		return real
	}
	if outer := than.Case.Branch == figure.OuterBound; outer != (f.Case.Branch == figure.OuterBound) {
		return outer
	}
	q, _ := figure.Lookup(f.Quantity)
	x, y := f.Danger().V, than.Danger().V
	switch {
	case math.IsNaN(y):
		return false
	case math.IsNaN(x):
		return true
	case q.Danger == figure.Low:
		return beyond(y, x)
	}
	return beyond(x, y)
}

// beyond reports whether x is greater than y by more than rounding, so that of what
// is the same the first stands for all, whatever the size.
func beyond(x, y float64) bool { return x > y && x-y > 1e-9*math.Abs(y) }

// notAsMeant reports whether a figure is of a shut container or of a failure.
func notAsMeant(f *figure.Figure) bool {
	return f.Case == shut || f.Case == shut.By(figure.OwnHeat) || f.Case.Failure != ""
}

// shut is what would be so if a container were shut.
var shut = figure.Case{State: figure.Closed}

// sorted is figures in the order of the catalogue, the bare figure first, then as they came.
func sorted(figs []figure.Figure) []figure.Figure {
	rank := map[string]int{}
	for i, q := range figure.Catalogue() {
		rank[q.Name] = i
	}
	slices.SortStableFunc(figs, func(a, b figure.Figure) int {
		if d := rank[a.Quantity] - rank[b.Quantity]; d != 0 {
			return d
		}
		return depth(&a) - depth(&b)
	})
	return figs
}

func depth(f *figure.Figure) int {
	if f.Bare() {
		return 0
	}
	return 1
}
