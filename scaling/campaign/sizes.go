package campaign

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/scaling/ends"
	"etchbound/schemas/quantity"
)

// Size is the same powder in all, in batches of one size.
type Size struct {
	Batch     quantity.Value
	Batches   float64
	Hours     ends.Two // h of people in all; steps without a time come on top
	Handlings float64  // pours, open vessels and spins in all
	HF        ends.Two // g as HF in one batch
	Hydrogen  ends.Two // L/min at most
	Breathed  ends.Two // over the strictest limit, as it is meant to go
	Exceed    int      // findings of one batch
	Unknown   int
}

// sizes sets batches of other sizes beside those of the review: each is the route at that
// size, made again. Times stay as written, as the route scales.
func (c *Campaign) sizes() error {
	c.Handlings = handlings(c.Review)
	rt := c.Review.Case.Route
	if rt.Precursor == nil || !rt.Precursor.Mass.Set {
		return nil
	}
	all := rt.Precursor.Mass.SI * float64(c.Batches)
	for _, mass := range append([]quantity.Value{rt.Precursor.Mass}, c.Asked.Sizes...) {
		k := c.Review.Case
		if mass.SI != rt.Precursor.Mass.SI {
			var err error
			if k, err = route.NewCase(rt.Scaled(mass), k.Site, k.Limits); err != nil {
				return err
			}
		}
		k.Brief = true
		made, err := hazards.Make(k)
		if err != nil {
			return err
		}
		n := math.Ceil(all/mass.SI - 1e-9)
		c.Sizes = append(c.Sizes, size(&made, mass, n, c.People.By(n), c.Handlings))
	}
	return nil
}

func size(r *hazards.Review, mass quantity.Value, n float64, people ends.Two, handled int) Size {
	figs := figure.NewSet(r.Figures)
	bare := func(quantity string) ends.Two {
		f := figs.Get(figure.ID{Quantity: quantity})
		if f == nil {
			return ends.Same(math.NaN())
		}
		return ends.Pair(value(f.Value), value(f.Danger()))
	}
	s := Size{Batch: mass, Batches: n, Hours: people, Handlings: n * float64(handled), HF: bare("fluoride.hf_equivalent"),
		Hydrogen: bare("gas.hydrogen.peak_rate.during_addition")}
	after := bare("gas.hydrogen.peak_rate.after_addition")
	s.Hydrogen = ends.Pair(math.Max(s.Hydrogen.Best, after.Best), math.Max(s.Hydrogen.Most, after.Most))
	for i := range r.Findings {
		f := &r.Findings[i]
		if f.Figure.Case.Supposed() { // a brief review has none of those
			continue
		}
		switch f.Verdict {
		case figure.Exceeds:
			s.Exceed++
		case figure.UnknownVerdict:
			s.Unknown++
		}
		if g := figs.Get(f.Figure); g != nil && f.Figure.Quantity == "air.breathing_zone" && f.Limit.Value > 0 {
			s.Breathed.Best = math.Max(s.Breathed.Best, value(g.Value)/f.Limit.Value)
			s.Breathed.Most = math.Max(s.Breathed.Most, value(g.Danger())/f.Limit.Value)
		}
	}
	return s
}

// handlings are how often in a batch liquor is poured, a vessel stands open or something
// spins, each cycle of a wash counted; a wash that does not say how often counts once.
func handlings(r *hazards.Review) int {
	n := 0
	for i := range r.Case.Route.Steps {
		s := &r.Case.Route.Steps[i]
		if v := s.Verb(); v.Pours || v.Opens || v.Spins == "yes" {
			n += max(1, s.Cycles)
		}
	}
	return n
}

// massOf is the molar mass of a solid, g/mol; not a number where the weight of an element is
// not known.
func massOf(st *chemicals.Store, of *chemicals.Composition) float64 {
	sum := 0.0
	for i, n := range of {
		if n != 0 {
			sum += n * value(st.Num(datum.Of("weight", chemicals.ElementSymbol(i))))
		}
	}
	return sum
}
