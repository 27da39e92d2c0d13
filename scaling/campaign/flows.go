package campaign

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/scaling/ends"
)

// Flow is what a batch takes or leaves.
type Flow struct {
	Key     string // powder, reagent, neutraliser, ... : what it is
	Name    string // of a substance, an agent or a place
	Unit    string
	Batch   ends.Two
	Missing []working.Missing
}

// flows are what a batch takes and leaves: of substances pure, without their water.
func (c *Campaign) flows() {
	r := c.Review
	figs := figure.NewSet(r.Figures)
	if p := r.Case.Route.Precursor; p != nil && p.Mass.Set {
		m := r.Case.Given("m", "g", p.Mass)
		c.Flows = append(c.Flows, Flow{"powder", p.Phase.Text, "g", ends.Same(value(m)), m.Missing()})
	}
	for i := range r.Held {
		h := &r.Held[i]
		if len(h.Takes) == 0 || h.CAS == "" && r.Case.Route.Precursor != nil &&
			h.Formula == r.Case.Route.Precursor.Phase.Text {
			continue // the site keeps it, or it is the powder
		}
		c.Flows = append(c.Flows, Flow{"reagent", h.Name, "kg", ends.Between(h.Sum.Mid, h.Sum.Top), h.Sum.Top.Missing()})
	}
	for _, x := range [...]struct{ key, quantity string }{{"water", "wash.water"}, {"liquor", "wash.liquor"},
		{"fluoride", "wash.fluoride"}, {"hydrogen", "gas.hydrogen.total"}} {
		if f := figs.Get(figure.ID{Quantity: x.quantity}); f != nil {
			c.Flows = append(c.Flows, c.flow(x.key, "", f))
		}
	}
	for _, x := range [...]struct{ key, quantity string }{{"neutraliser", "neutralise.mass"},
		{"dilution", "neutralise.dilution_water"}, {"sludge", "neutralise.sludge_dry"}} {
		for f := range figs.Of(x.quantity) {
			if f.Agent != "" && f.Agent == c.agent(figs, f.Place) && c.once(figs, f) {
				c.Flows = append(c.Flows, c.flow(x.key, f.Agent, f))
			}
		}
	}
	c.Flows = append(c.Flows, c.product())
}

// once reports whether a figure of a liquor is that of all waste together, or there is none of
// that by its agent.
func (c *Campaign) once(figs *figure.Set, f *figure.Figure) bool {
	return f.Place == figure.Waste ||
		figs.Get(figure.ID{Quantity: f.Quantity, Place: figure.Waste, Agent: f.Agent}) == nil
}

func (c *Campaign) flow(key, name string, f *figure.Figure) Flow {
	return Flow{key, name, f.Value.Unit, ends.Pair(value(f.Value), value(f.Danger())),
		working.Joined(f.Value.Missing(), f.Danger().Missing())}
}

func value(n working.Num) float64 {
	if n.Unknown() {
		return math.NaN()
	}
	return n.V
}

// agent is what a liquor is neutralised with: what the route takes, else lime.
func (c *Campaign) agent(figs *figure.Set, at figure.Place) string {
	lime := "calcium_hydroxide"
	for f := range figs.At("neutralise.mass", at) {
		s, held := chemicals.Library().Find(f.Agent)
		if f.Agent != lime && held && c.Review.Case.Route.Takes(s) {
			return f.Agent
		}
	}
	return lime
}

// product is the dry nanosheets that the steps leave, g, at most: what is lost on filters and
// walls nobody knows. It is not known where none is left, or not how much.
func (c *Campaign) product() Flow {
	out := Flow{Key: "product", Unit: "g", Batch: ends.Same(math.NaN()), Missing: missing("product", "")}
	st := c.Review.Case.Store
	sum, there := 0.0, false
	for i := range c.Review.Walk.Ends {
		e := &c.Review.Walk.Ends[i]
		if p := c.Review.Case.Route.Place(e.Place); p != nil && c.Review.Case.Route.TakesWaste(p) {
			continue
		}
		if e.MayCarry > 0 || e.Unsaid() != nil {
			return out
		}
		for _, s := range c.Review.Walk.Ends[i].Solids {
			if s.Kind != process.Product || s.Of == nil {
				continue
			}
			if s.N.Unknown() {
				out.Missing = s.N.Missing()
				return out
			}
			sum, there = sum+s.N.V*massOf(st, s.Of), true
		}
	}
	if there && !math.IsNaN(sum) {
		out.Batch, out.Missing = ends.Same(sum), nil
	}
	return out
}

// Filled is a container of waste.
type Filled struct {
	Place   string
	Litres  ends.Two // a batch
	Holds   float64  // L to which it may be filled
	Batches int      // after which it is picked up at the latest; 0: nobody says
	Missing []working.Missing
}

// half is how full a container of waste gets of which the review does not say it: as if it
// could still give gas.
const half = 50.0

// full is how far a container is filled, % of what it holds, as its review is judged.
func (c *Campaign) full(place string) float64 {
	for i := range c.Review.Findings {
		if f := &c.Review.Findings[i]; f.Figure.Quantity == "vessel.piled" && f.Figure.Place == figure.At(place) {
			return f.Limit.Value
		}
	}
	return half
}

// containers are those of waste, by the most liquid that a batch brings to them.
func (c *Campaign) containers() {
	rt := c.Review.Case.Route
	figs := figure.NewSet(c.Review.Figures)
	for i := range rt.Places {
		p := &rt.Places[i]
		if !rt.TakesWaste(p) {
			continue
		}
		out := Filled{Place: p.Key, Litres: ends.Same(math.NaN()), Holds: math.NaN(), Batches: p.Batches,
			Missing: missing("waste_filled", p.Key)}
		f := figs.Get(figure.ID{Quantity: "vessel.content", Place: figure.At(p.Key)})
		if f != nil && p.Capacity.Set && !p.Several() {
			litres := c.Review.Case.Given("V", "L", p.Capacity).V
			out.Holds = c.full(p.Key) / 100 * litres
			out.Litres = ends.Pair(value(f.Value), value(f.Danger())).By(litres * float64(max(p.Count, 1)) / 100)
			out.Missing = working.Joined(f.Value.Missing(), f.Danger().Missing())
		}
		c.Filled = append(c.Filled, out)
	}
}

// Containers are how many of it some batches fill, the last one begun counted: by what they
// hold, and none takes more batches than its route says.
func (f *Filled) Containers(batches float64) ends.Two {
	count := func(l float64) float64 {
		n := math.Ceil(l*batches/f.Holds - 1e-9)
		if f.Batches > 0 {
			n = max(n, math.Ceil(batches/float64(f.Batches)-1e-9))
		}
		return n
	}
	return ends.Pair(count(f.Litres.Best), count(f.Litres.Most))
}
