package verdict

import (
	"math"
	"slices"

	"etchbound/hazards/figure"
)

// Bare adds what always exists: for each failure the worst of its laws, for each
// place the worst of its cases and agents, and for each quantity the worst of its
// members, each naming the member it repeats. Sums are there already.
func Bare(figs []figure.Figure) []figure.Figure {
	have := map[figure.ID]bool{}
	for i := range figs {
		have[figs[i].ID] = true
	}
	var out []figure.Figure
	add := func(id figure.ID, of *figure.Figure) {
		if !have[id] {
			have[id] = true
			out = append(out, figure.Figure{ID: id, Value: of.Value, Low: of.Low, High: of.High,
				Conditions: of.Conditions, Of: of.ID})
		}
	}
	for i := range figs {
		f := &figs[i]
		all := figure.If(f.Case.Failure)
		if all.IsZero() || f.Case == all || f.Case.State == figure.Closed {
			continue
		}
		w := worst(figs, func(x *figure.Figure) bool {
			return x.Quantity == f.Quantity && x.Place == f.Place &&
				x.Case.Failure == all.Failure && x.Case.State != figure.Closed
		})
		add(figure.ID{Quantity: f.Quantity, Place: f.Place, Case: all}, w)
	}
	for i := range figs {
		f := &figs[i]
		if !f.Place.IsZero() && (f.Agent != "" || !f.Case.IsZero()) {
			w := worst(figs, func(x *figure.Figure) bool { return x.Quantity == f.Quantity && x.Place == f.Place })
			add(figure.ID{Quantity: f.Quantity, Place: f.Place}, w)
		}
	}
	for i := range figs {
		f := &figs[i]
		if w := worst(figs, func(x *figure.Figure) bool { return x.Quantity == f.Quantity && x.Of.IsZero() }); w != nil {
			add(figure.ID{Quantity: f.Quantity}, w)
		}
	}
	return order(append(figs, out...))
}

// worst is the member whose dangerous end is worst. Unknown outranks every
// number; what is only so if a container were shut or something went wrong ranks
// behind what is so as the route means it.
func worst(figs []figure.Figure, in func(*figure.Figure) bool) *figure.Figure {
	var w *figure.Figure
	for i := range figs {
		if f := &figs[i]; in(f) && (w == nil || worse(f, w)) {
			w = f
		}
	}
	return w
}

func worse(f, than *figure.Figure) bool {
	if real := notAsMeant(than); real != notAsMeant(f) {
		return real
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
func notAsMeant(f *figure.Figure) bool { return f.Case == shut || f.Case.Failure != "" }

// shut is what would be so if a container were shut.
var shut = figure.Case{State: figure.Closed}

// order sorts by the catalogue, the bare figure first, then as they came.
func order(figs []figure.Figure) []figure.Figure {
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
