package campaign

import (
	"math"
	"slices"

	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/hazards/stock"
	"etchbound/scaling/ends"
	"etchbound/schemas/quantity"
)

// Needed is what has to be kept of a substance, and the threshold that it comes nearest to.
type Needed struct {
	Name, CAS string
	Batch     ends.Two // kg, pure
	Kept      ends.Two // kg
	Share     ends.Two // of the threshold, by what is kept
	Threshold *stock.Threshold
}

// stock is what has to be kept of each substance against the thresholds of the site, as if
// the site kept nothing else, as strong as the steps take it.
func (c *Campaign) stock() {
	n := c.Week * c.Kept
	k := c.Review.Case
	site := route.Site{}
	if k.Site != nil {
		site = *k.Site
	}
	var dark []string
	batches := 1.0
	if n > 1 {
		batches = n
	}
	site.Stock, dark = kept(&k, batches)
	k.Site = &site
	held, sums := stock.Of(&k, &c.Review.Walk, figure.NewSet(c.Review.Figures))
	for i := range held {
		h := &held[i]
		if h.CAS == "" || len(h.Takes) == 0 {
			continue
		}
		x := Needed{Name: h.Name, CAS: h.CAS, Batch: ends.Pair(value(h.Sum.Mid), value(h.Sum.Top))}
		x.Kept = x.Batch.By(n)
		x.nearest(h.Shares, math.IsNaN(n) || slices.Contains(dark, h.Name))
		c.Needed = append(c.Needed, x)
	}
	for i := range sums {
		if t := sums[i].Threshold; t != nil {
			x := Needed{Name: t.Substance, Batch: ends.Same(math.NaN()), Kept: ends.Same(math.NaN())}
			x.nearest(sums[i:i+1], math.IsNaN(n) || dark != nil)
			c.Needed = append(c.Needed, x)
		}
	}
	slices.SortStableFunc(c.Needed, func(a, b Needed) int {
		switch x, y := a.rank(), b.rank(); {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
}

// rank orders by how near a threshold is: what is not known counts as over, and what has none
// comes last.
func (x *Needed) rank() float64 {
	switch {
	case x.Threshold == nil:
		return -1
	case math.IsNaN(x.Share.Most):
		return math.Inf(1)
	}
	return x.Share.Most
}

// nearest is the threshold of which the largest share is held; one of which that is not known
// counts as nearer than any. Where what is kept is not known, neither is any share.
func (x *Needed) nearest(shares []stock.Share, dark bool) {
	x.Share = ends.Same(math.NaN())
	for i := range shares {
		s := &shares[i]
		if s.Threshold == nil || s.Threshold.Release() {
			continue
		}
		if y := (Needed{Share: ends.Pair(value(s.Best), value(s.Ratio)), Threshold: s.Threshold}); y.rank() > x.rank() {
			x.Share, x.Threshold = y.Share, y.Threshold
		}
	}
	if dark {
		x.Share = ends.Same(math.NaN())
	}
}

// kept are the reagents of some batches as bottles of a site, and those of which nobody can
// say how much that is.
func kept(c *route.Case, n float64) (out []route.Stock, dark []string) {
	for i := range c.Route.Steps {
		for _, m := range c.Route.Steps[i].What {
			if m.Precursor || m.Substance == nil {
				continue
			}
			s := route.Stock{Substance: m.Substance, Strength: m.Strength, At: m.At}
			switch {
			case m.Volume.Set:
				s.Volume = m.Volume.Times(n)
			case m.Mass.Set:
				s.Mass = m.Mass.Times(n)
			case m.Amount.Set && !m.Strength.Set && len(m.Substance.Formula.Order) > 0:
				g := m.Amount.SI * m.Substance.Formula.MolarMass(c.Store, nil).V * n
				s.Mass = quantity.Of(g, "g", quantity.Mass)
			default:
				dark = append(dark, m.Substance.Name)
				continue
			}
			out = append(out, s)
		}
	}
	return out, dark
}
