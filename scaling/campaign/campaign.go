package campaign

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/scaling/ends"
	"etchbound/schemas/quantity"
)

// Asked is what a person plans by.
type Asked struct {
	Batches int     // in all
	PerWeek int     // that are planned; 0: as many as there can be
	Hours   float64 // that people have in a week
	Weeks   float64 // worked in a year
	Kept    float64 // weeks whose reagents stand on site at once
	Sizes   []quantity.Value
}

// Campaign is a route made again and again.
type Campaign struct {
	Asked
	Review    *hazards.Review
	Steps     []Step
	Occupied  []Occupied
	Busiest   int      // of Occupied, the place that allows the fewest batches; -1: no time of any is known
	People    ends.Two // h a batch: of steps that are watched; of all that are not stated as left alone
	ByVessel  float64  // batches a week at most
	ByPeople  ends.Two
	AtMost    float64 // batches a week; not a number where nothing bounds them
	Week      float64 // that are counted by
	Fits      bool    // what is planned is no more than there can be
	Unknown   []int   // steps of which nobody says how long they take
	Flows     []Flow
	Filled    []Filled
	Needed    []Needed
	Sizes     []Size
	Handlings int
}

// Step is how long one takes, h; not a number where nobody says.
type Step struct {
	Of      *route.Step
	Hours   float64
	Watched string // yes, no, or not_stated
}

// Occupied is a place from the first step in it to the last.
type Occupied struct {
	Place   string
	Hours   float64 // at least
	Unknown bool    // steps without a time are among them
}

// Of is the campaign of a review. The error is one of a batch of another size.
func Of(r *hazards.Review, a Asked) (Campaign, error) {
	c := Campaign{Asked: a, Review: r, Busiest: -1}
	c.times()
	c.batches()
	c.flows()
	c.containers()
	c.stock()
	return c, c.sizes()
}

// times are those of the steps of a batch. What is stored is out of the way.
func (c *Campaign) times() {
	rt := c.Review.Case.Route
	for i := range rt.Steps {
		s := &rt.Steps[i]
		x := Step{Of: s, Hours: math.NaN(), Watched: "not_stated"}
		if t := c.Review.Case.Lasts(nil, s); !t.Unknown() {
			x.Hours = t.V / 60
		}
		if s.Attended != nil && *s.Attended {
			x.Watched = "yes"
		} else if s.Attended != nil {
			x.Watched = "no"
		}
		c.Steps = append(c.Steps, x)
		if stored(s) {
			continue
		}
		if math.IsNaN(x.Hours) {
			c.Unknown = append(c.Unknown, s.Number)
			continue
		}
		switch x.Watched {
		case "yes":
			c.People = ends.Pair(c.People.Best+x.Hours, c.People.Most+x.Hours)
		case "not_stated":
			c.People.Most += x.Hours
		}
	}
}

func stored(s *route.Step) bool { return s.Verb().Does == route.Stores }

const week = 7 * 24.0 // h

// batches are how many a week can have: a place is free again once its last step is over, and
// people work as long as they have time. Steps without a time make it a bound.
func (c *Campaign) batches() {
	rt := c.Review.Case.Route
	longest := 0.0
	for i := range rt.Places {
		p := &rt.Places[i]
		if rt.TakesWaste(p) || p.Kind == "scrubber" {
			continue
		}
		if o, used := c.occupied(p.Key); used {
			c.Occupied = append(c.Occupied, o)
			if o.Hours > longest {
				longest, c.Busiest = o.Hours, len(c.Occupied)-1
			}
		}
	}
	c.ByVessel, c.ByPeople = math.NaN(), ends.Same(math.NaN())
	if longest > 0 {
		c.ByVessel = math.Floor(week/longest + 1e-9)
	}
	fits := func(hours float64) float64 {
		if !(hours > 0) {
			return math.NaN()
		}
		return math.Floor(c.Hours/hours + 1e-9)
	}
	c.ByPeople = ends.Pair(fits(c.People.Best), fits(c.People.Most))
	c.AtMost = least(c.ByVessel, c.ByPeople.Best)
	c.Week, c.Fits = c.AtMost, true
	if c.PerWeek > 0 {
		c.Week = float64(c.PerWeek)
		c.Fits = c.Week <= c.AtMost && c.Week <= least(c.AtMost, c.ByPeople.Most)
	}
}

// least is the lower of two; what is not known bounds nothing.
func least(a, b float64) float64 {
	switch {
	case math.IsNaN(a):
		return b
	case math.IsNaN(b):
		return a
	}
	return math.Min(a, b)
}

// occupied is a place from the first step in it, or into it, to the last.
func (c *Campaign) occupied(key string) (Occupied, bool) {
	first, last := -1, -1
	for i := range c.Steps {
		s := c.Steps[i].Of
		if !stored(s) && (s.In == key || s.Into == key) {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	o := Occupied{Place: key}
	if first < 0 {
		return o, false
	}
	for i := first; i <= last; i++ {
		switch h := c.Steps[i].Hours; {
		case stored(c.Steps[i].Of):
		case math.IsNaN(h):
			o.Unknown = true
		default:
			o.Hours += h
		}
	}
	return o, true
}

// missing are why a number is not there.
func missing(kind, subject string) []working.Missing {
	return []working.Missing{working.Lacks(kind, subject)}
}
