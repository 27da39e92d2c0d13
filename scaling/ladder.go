// Package scaling looks at a route at many sizes. Everything in it calls
// hazards.Assess again with another case and restates nothing. It must not
// know how anything is printed.
package scaling

import (
	"errors"
	"fmt"
	"math"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

// Rung is the route at one size, on central values.
type Rung struct {
	Batch   quantity.Value
	Figures []figure.Figure
}

// Figure returns the member of a quantity that is worst on this rung, or its
// sum where the catalogue forms one, and whether there is any.
func (r Rung) Figure(name string) (figure.Figure, bool) {
	q, _ := figure.Lookup(name)
	var out figure.Figure
	found := false
	written := r.writtenAgent(name)
	for _, f := range r.Figures {
		if f.Quantity != name || f.Case == "closed" || (written && f.Place == "waste") {
			continue
		}
		if q.Bare == "sum" && f.Place == "" {
			return f, true
		}
		x, y := f.Value.V, out.Value.V
		if !found || math.IsNaN(x) || (q.Danger == figure.High && x > y) || (q.Danger == figure.Low && x < y) {
			out, found = f, true
		}
	}
	return out, found
}

// writtenAgent reports whether a step of the route neutralises with an agent of
// its own, so that the four usual ones need not be shown.
func (r Rung) writtenAgent(name string) bool {
	for _, f := range r.Figures {
		if f.Quantity == name && f.Agent != "" && f.Place != "waste" && f.Place != "" {
			return true
		}
	}
	return false
}

// Sizes is the number of rungs of a ladder.
const Sizes = 12

// Ladder assesses the route at Sizes batches spaced evenly on a logarithmic
// scale from one mass of powder to another. It fails for a route without
// powder, and where from is not below to.
func Ladder(c route.Case, from, to quantity.Value) ([]Rung, error) {
	if c.Route.Precursor == nil {
		return nil, errors.New("the route has no precursor, so there is no batch to scale")
	}
	if !(from.SI > 0) || !(from.SI < to.SI) {
		return nil, fmt.Errorf("a ladder goes up: %s is not below %s", from.Text, to.Text)
	}
	var out []Rung
	for i := range Sizes {
		m := from.SI * math.Pow(to.SI/from.SI, float64(i)/(Sizes-1))
		batch := quantity.Of(m*1000, "g", quantity.Mass)
		k, err := route.NewCase(c.Route.Scaled(batch), c.Site, c.Limits)
		if err != nil {
			return nil, err
		}
		k.Brief = true // no figure of a ladder is of a failure
		a := hazards.Assess(k, nil)
		if a.Err != nil {
			return nil, a.Err
		}
		out = append(out, Rung{Batch: batch, Figures: a.Figures})
	}
	return out, nil
}
