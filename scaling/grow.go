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
	Crossings []Crossing // in the order of their batches
	Chances   []Chances  // by rung, where draws were made
	Withheld  []string   // findings that are not known somewhere and could set the first limit
	trail     *hazards.Trail
}

// Rung is the route at one size. The end of each figure at which danger lies is
// that of its worst corner of the data, the other its central value.
type Rung struct {
	Batch    quantity.Value
	Figures  []figure.Figure
	Findings []figure.Finding
	sized    hazards.Sized
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
	if !(from.SI > 0) || !(from.SI < to.SI) {
		return nil, fmt.Errorf("a ladder goes up: %s is not below %s", from.Text, to.Text)
	}
	decades := math.Log10(to.SI / from.SI)
	if decades > 8 {
		return nil, fmt.Errorf("from %s to %s is more than eight decades", from.Text, to.Text)
	}
	g := &Growth{Case: c, From: from, To: to, Follow: f}
	n := max(int(math.Ceil(decades*perDecade))+1, fewest)
	if err := g.blaze(); err != nil {
		return nil, err
	}
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

// blaze finds the corners of the data at both ends and between them.
func (g *Growth) blaze() error {
	const between = 3
	var cases []route.Case
	for i := range between {
		c, err := g.at(g.grams(i, between))
		if err != nil {
			return err
		}
		cases = append(cases, c)
	}
	var err error
	g.trail, err = hazards.Blaze(cases...)
	return err
}

// at is the case at a batch in g.
func (g *Growth) at(grams float64) (route.Case, error) {
	return g.Follow.sized(g.Case, quantity.Of(grams, "g", quantity.Mass))
}

func (g *Growth) climb(n int) error {
	for i := range n {
		m := g.grams(i, n)
		c, err := g.at(m)
		if err != nil {
			return err
		}
		s, err := g.trail.At(c, hazards.Wanted)
		if err != nil {
			return err
		}
		g.Rungs = append(g.Rungs, Rung{Batch: quantity.Of(m, "g", quantity.Mass), Figures: s.Figures, Findings: s.Findings(), sized: s})
	}
	return nil
}
