package scaling

import (
	"context"
	"fmt"
	"math"
	"strings"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/hazards/stock"
	"etchbound/schemas/quantity"
)

// Required are the quantities that say what has to be had at a batch, in the
// order in which they are shown.
var Required = []string{"heat.addition_time.required", "heat.cooling.required", "heat.ice", "air.exhaust_required",
	"gas.vent.bore_required",
	"gas.free_volume.required", "fluoride.hf_equivalent", "neutralise.mass", "wash.water", "wash.liquor",
	"neutralise.sludge_dry"}

// Split is one large batch beside the same powder in several small ones.
type Split struct {
	Pots         int
	Large, Small Rung
	Rows         []SplitRow
}

// SplitRow is one quantity of it, at the dangerous end. All is that of all small
// batches one after another: their sum where it adds up, else that of one.
type SplitRow struct {
	Quantity, Case string
	Large, One     figure.Figure
	All            float64
	Adds           bool
}

// splitRows are what a large batch and small ones are compared by.
var splitRows = []struct {
	quantity, kase string
	adds           bool
}{
	{"gas.hydrogen.total", "", true}, {"gas.hydrogen.peak_rate.during_addition", "instantaneous", false},
	{"heat.etch.total", "", true},
	{"heat.peak_power.during_addition", "instantaneous", false}, {"heat.addition_time.required", "", true},
	{"heat.mtsr", "", false},
	{"fluoride.hf_equivalent", "", true}, {"air.breathing_zone", "", false}, {"air.spill_area", "", false},
	{"neutralise.mass", "", true}, {"wash.liquor", "", true},
}

// MostPots is the largest number of small batches that a large one is set beside.
const MostPots = 10000

// Split compares the largest batch with the same powder in pots equal batches. It
// fails for fewer than two pots, and for more than MostPots.
func (g *Growth) Split(pots int) (Split, error) {
	if pots < 2 || pots > MostPots {
		return Split{}, fmt.Errorf("%d pots: one large batch is compared with 2 to %d small ones", pots, MostPots)
	}
	c, err := g.at(g.To.In("g") / float64(pots))
	if err != nil {
		return Split{}, err
	}
	s, err := hazards.Size(c, hazards.Wanted)
	if err != nil {
		return Split{}, err
	}
	out := Split{Pots: pots, Large: g.Rungs[len(g.Rungs)-1],
		Small: Rung{Batch: quantity.Of(g.To.In("g")/float64(pots), "g", quantity.Mass), Figures: s.Figures, sized: s,
			figs: figure.NewSet(s.Figures)}}
	for _, r := range splitRows {
		a, ok := out.Large.Worst(r.quantity, r.kase)
		b, there := out.Small.Worst(r.quantity, r.kase)
		if !ok || !there {
			continue
		}
		row := SplitRow{r.quantity, r.kase, a, b, b.Danger().V, r.adds}
		if r.adds {
			row.All *= float64(pots)
		}
		out.Rows = append(out.Rows, row)
	}
	return out, nil
}

// Handling counts what people do by hand in a batch: additions, transfers and
// openings grow with the number of batches and not with their size.
func (g *Growth) Handling() (steps int, attended, unattended float64) {
	attended, unattended = Hours(g.Case.Route)
	return len(g.Case.Route.Steps), attended, unattended
}

// NotKnown reports whether nothing can be said of the first limit because a
// finding that could set it is not known.
func (g *Growth) NotKnown() bool { return len(g.Withheld) > 0 }

// Share is what a figure takes of its limit on a rung, for a picture: above one it
// exceeds. It is not a number where either is unknown or not above zero.
func (g *Growth) Share(r *Rung, c *Crossing) float64 {
	s, ok := r.sized.Judge(c.ID())
	if !ok || !(s.Danger > 0) || !(s.Limit.Value > 0) {
		return math.NaN()
	}
	if s.Low {
		return s.Limit.Value / s.Danger
	}
	return s.Danger / s.Limit.Value
}

// Vessel is the container that the powder goes into, with its material and how
// much it holds; nothing where the route does not say.
func (r *Rung) Vessel() string {
	c := &r.sized.Case
	if len(r.sized.Courses) == 0 {
		return ""
	}
	for i := range c.Route.Places {
		p := &c.Route.Places[i]
		if p.Key != r.sized.Courses[0].Stages[0].Done.Place || !p.Capacity.Set {
			continue
		}
		unit, v := "mL", p.Capacity.In("mL")
		if v >= 1000 {
			unit, v = "L", v/1000
		}
		return strings.TrimSpace(fmt.Sprintf("%.4g %s %s", v, unit, p.Material))
	}
	return ""
}

// Chances are those of the findings of a rung.
type Chances map[figure.FindingID]Chance

// Draw draws the data at every rung, with the same seed.
func (g *Growth) Draw(ctx context.Context, n int, seed uint64, workers int, progress func(int)) error {
	for i := range g.Rungs {
		s, err := Draws(ctx, g.Rungs[i].sized.Case, n, seed, workers, progress)
		if err != nil {
			return err
		}
		g.Chances = append(g.Chances, s.Chance)
	}
	return nil
}

// LargestShare is the quantity threshold that a site with one run of this batch, and
// with its stock, comes closest to. It is false where no threshold held here is of
// a substance of the route; the share is not known without a site.
func (r *Rung) LargestShare() (stock.Share, bool) {
	h, err := Stock([]route.Case{r.sized.Case}, true, 1)
	if err != nil {
		return stock.Share{}, false
	}
	var worst stock.Share
	found := false
	for i := range h.Substances {
		for _, s := range h.Substances[i].Shares {
			if !found || s.Ratio.V > worst.Ratio.V || s.Ratio.Unknown() && !worst.Ratio.Unknown() {
				worst, found = s, true
			}
		}
	}
	return worst, found
}
