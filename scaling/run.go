package scaling

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/hazards/stock"
)

// Run is what one run of a reviewed route takes, held against what its site keeps. It is
// told from the review as it stands: nothing is assessed again.
type Run struct {
	Substances []stock.Holding // by CAS, then the powder
	Portions   []stock.Poured  // each material of each step, in the order of the route
	Tray       Tray
}

// Tray is what has to stand below the containers: the larger of the largest of them and a
// tenth of all, L. It is unknown while the capacity of one is.
type Tray struct {
	Volume  working.Num
	Largest string // key of the place
}

// RunOf is the run of a review.
func RunOf(r *hazards.Review) Run {
	c := &r.Case
	if c.Route == nil || c.Store == nil {
		return Run{}
	}
	out := Run{Tray: trayOf(c.Route), Substances: r.Held}
	figs := figure.NewSet(r.Figures)
	for i := range c.Route.Steps {
		out.Portions = append(out.Portions, stock.PouredIn(c, &r.Walk, figs, &c.Route.Steps[i])...)
	}
	return out
}

// OnSite is what the site keeps of a substance, told by its CAS number.
func (r *Run) OnSite(cas string) (stock.Mass, bool) {
	for i := range r.Substances {
		if h := &r.Substances[i]; cas != "" && h.CAS == cas {
			return h.Stock, true
		}
	}
	return stock.Mass{}, false
}

// trayOf goes over every container. Equal ones that share the contents count together in
// the tenth.
func trayOf(r *route.Route) Tray {
	var out Tray
	largest, all := 0.0, 0.0
	for i := range r.Places {
		p := &r.Places[i]
		if !p.Capacity.Set || p.Several() {
			out.Volume = working.Absent("V", "L", working.Lacks(working.NotGiven, "places."+p.Key+".capacity"))
			return Tray{Volume: out.Volume}
		}
		l := stock.Upper(p.Capacity).In("L")
		if l > largest {
			largest, out.Largest = l, p.Key
		}
		all += l * float64(max(p.Count, 1))
	}
	if len(r.Places) == 0 {
		return Tray{Volume: working.Absent("V", "L", working.Lacks(working.NotGiven, "places"))}
	}
	out.Volume = working.Exact("V", "L", math.Max(largest, all/10), "the largest, or a tenth of all")
	return out
}
