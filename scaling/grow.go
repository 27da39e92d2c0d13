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

// Growth is a route from one batch to another.
type Growth struct {
	Case      route.Case // as written
	From, To  quantity.Value
	Follow    Follow
	Rungs     []Rung
	Crossings []Crossing         // in the order of their batches
	Chances   []Chances          // by rung, where draws were made
	Overflows *Crossing          // the first container that runs over; nil where none does
	Beyond    []figure.FindingID // what would turn only above that, so that no batch is given for it
	Withheld  []figure.FindingID // findings that are not known somewhere and could set the first limit
}

// Rung is the route at one size. The end of each figure at which danger lies is
// that of its worst corner of the data, the other its central value.
type Rung struct {
	Batch    quantity.Value
	Figures  []figure.Figure
	Findings []figure.Finding
	sized    hazards.Sized
	figs     *figure.Set // Figures by what they are
}

// perDecade is how many rungs there are from a batch to ten times as much, at
// least fewest over all.
const perDecade, fewest = 3, 5

// Grow follows a route from one mass of powder to another, and finds for every
// finding the batch at which it turns near, exceeds or cannot be known any more,
// to a thousandth. It fails for a route without powder, where from is not below
// to, and where the two are more than eight decades apart.
func Grow(c route.Case, from, to quantity.Value, f Follow) (*Growth, error) {
	if c.Route.Precursor == nil || !c.Route.Precursor.Mass.Set {
		return nil, errors.New("the route has no precursor with a mass, so there is no batch to scale")
	}
	if !(from.SI > 0) {
		return nil, fmt.Errorf("a ladder begins above nothing: %s is no batch", from.Text)
	}
	if !(from.SI < to.SI) {
		return nil, fmt.Errorf("a ladder goes up: %s is not below %s", from.Text, to.Text)
	}
	decades := math.Log10(to.SI / from.SI)
	if decades > 8 {
		return nil, fmt.Errorf("from %s to %s is more than eight decades", from.Text, to.Text)
	}
	g := &Growth{Case: c, From: from, To: to, Follow: f}
	n := max(int(math.Ceil(decades*perDecade))+1, fewest)
	if err := g.climb(n); err != nil {
		return nil, err
	}
	return g, g.cross()
}

// grams of a rung, i of n.
func (g *Growth) grams(i, n int) float64 {
	if i == n-1 {
		return g.To.In("g")
	}
	a, b := g.From.In("g"), g.To.In("g")
	return a * math.Pow(b/a, float64(i)/float64(n-1))
}

// at is the case at a batch in g.
func (g *Growth) at(grams float64) (route.Case, error) {
	return g.Follow.sized(g.Case, quantity.Of(grams, "g", quantity.Mass))
}

func (g *Growth) climb(n int) error {
	for i := range n {
		r, err := g.rung(g.grams(i, n))
		if err != nil {
			return err
		}
		g.Rungs = append(g.Rungs, r)
	}
	return nil
}

// rung is the review of a batch in g.
func (g *Growth) rung(grams float64) (Rung, error) {
	c, err := g.at(grams)
	if err != nil {
		return Rung{}, err
	}
	s, err := hazards.Size(c, hazards.Wanted)
	if err != nil {
		return Rung{}, err
	}
	return Rung{Batch: quantity.Of(grams, "g", quantity.Mass), Figures: s.Figures, Findings: s.Findings(), sized: s,
		figs: figure.NewSet(s.Figures)}, nil
}
