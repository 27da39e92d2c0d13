package stock

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/classifying"
	"etchbound/chemicals/working"
	"etchbound/hazards/route"
)

// Bottle is one entry of the stock of a site at its upper end: all of it and its largest
// bottle, kg with their water, how many such bottles that is, rounded up, and what it is.
type Bottle struct {
	Stock    *route.Stock
	Whole    working.Num
	Strength working.Num // g/g
	Each     working.Num // unknown where no bottle is stated
	Count    working.Num
	Classes  []string // codes of their statements, each once; NotClassified where nobody knows them
	Signal   string   // danger, warning or none; empty where nobody knows
	Groups   []string // where it stands in a store; none where nobody knows
}

// NotClassified stands for the classes of what has none held.
const NotClassified = "not_known"

// bottles are the entries of a stock that are of a substance.
func (h *Holding) bottles(site *route.Site, st *chemicals.Store) {
	if site == nil {
		return
	}
	for i := range site.Stock {
		if x := &site.Stock[i]; x.Substance.Solution != "water" && named(x.Substance).key() == h.key() {
			h.Bottles = append(h.Bottles, bottleOf(x, st))
		}
	}
}

func bottleOf(x *route.Stock, st *chemicals.Store) Bottle {
	var w *working.Sheet
	all := bottled(st, x.Substance, x.Strength, x.Volume, x.Mass, upper)
	out := Bottle{Stock: x, Whole: all.whole, Strength: all.fraction,
		Each: working.Absent("m", "kg", working.Lacks(working.NotGiven, "stock.bottle"))}
	if x.Bottle.Set {
		out.Each = bottled(st, x.Substance, x.Strength, x.Bottle, x.Mass, upper).whole
	}
	out.Count = w.Line("N", "1", "ceil(m/b)", math.Ceil(out.Whole.V/out.Each.V-1e-9), out.Whole.As("m"), out.Each.As("b"))
	if !classifying.Held(x.Substance) {
		out.Classes = []string{NotClassified}
		return out
	}
	parts := []classifying.Part{{Sub: x.Substance, Share: 100 * all.fraction.V}}
	c := classifying.Mixture(parts)
	for i := range c.Classes {
		if code := c.Classes[i].Class.Code; !slices.Contains(out.Classes, code) {
			out.Classes = append(out.Classes, code)
		}
	}
	out.Signal = c.Signal()
	for _, in := range classifying.Stands(&c, parts) {
		out.Groups = append(out.Groups, in.Group)
	}
	return out
}
