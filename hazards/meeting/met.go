package meeting

import (
	"slices"

	"etchbound/hazards/route"
)

// How is whether two that must not meet do so as a step means it.
type How uint8

// The ways, from the mildest.
const (
	Meant   How = iota // a step intends it: its figures judge it
	Washed             // of one of the two a wash has left no more than a residue
	Unasked            // nobody intends it
)

// Met is a pair that meets in a place: with which step, 0 where what earlier stood in it
// did so already, and how.
type Met struct {
	Pair   *Pair
	Step   int
	How    How
	Came   bool // it had met where the liquor came from
	Before bool // one of the two is what earlier stood in the place
}

// Met lists the pairs that have met in a place, in the order of the steps and the table.
func (c *Contents) Met() []Met { return slices.Clone(c.met) }

// meets notes the pairs that a step brings together in a place. from is where the liquor
// comes from, nil where it is put in. A pair that met as a step means it is noted again
// where a later step brings one side of it unasked: acid on the carbonate that neutralised.
func (c *Contents) meets(s *route.Step, from *Contents) {
	all := Pairs()
	for i := range all {
		p := &all[i]
		at := slices.IndexFunc(c.met, func(m Met) bool { return m.Pair.ID == p.ID })
		if at >= 0 && (c.met[at].How == Unasked || !brings(s, from, p)) {
			continue
		}
		if _, met := c.hold(p); !met {
			continue
		}
		switch m := c.meeting(p, s, from); {
		case at < 0:
			c.met = append(c.met, m)
		case m.How == Unasked:
			c.met[at] = m
		}
	}
}

// meeting is a pair that meets in a place with a step.
func (c *Contents) meeting(p *Pair, s *route.Step, from *Contents) Met {
	m := Met{Pair: p, How: c.how(p, s)}
	if s != nil {
		m.Step = s.Number
	}
	m.Before = c.Stood(p)
	if j := slices.IndexFunc(from.all(), func(x Met) bool { return x.Pair.ID == p.ID }); j >= 0 && !m.Before {
		if m.Came = true; !slices.Contains(p.Meant, vented) {
			m.How = from.met[j].How
		}
	}
	return m
}

// brings reports whether a step brings a side of a pair that is more than water and than
// what a wash leaves.
func brings(s *route.Step, from *Contents, p *Pair) bool {
	in := from
	if in == nil {
		in = empty(&route.Place{})
		for j := range s.What {
			in.put(s.Number, &s.What[j], &route.Route{})
		}
	}
	for _, side := range []Side{p.A, p.B} {
		if _, there := in.step(side); there && !side.Is(water) && !in.onlyWashed(side) {
			return true
		}
	}
	return false
}

func (c *Contents) all() []Met {
	if c == nil {
		return nil
	}
	return c.met
}

// vented is the way in which a pair of the table is meant wherever the place is not shut.
const vented = "vented"

// how judges a pair by what the step does that brings it together.
func (c *Contents) how(p *Pair, s *route.Step) How {
	switch {
	case slices.Contains(p.Meant, vented) && c.Place.Closure != route.Closed:
		return Meant
	case s == nil || c.Stood(p):
		return Unasked
	case slices.Contains(p.Meant, string(s.Verb().Does)) && (!c.Waste || s.Verb().Does == route.Neutralises):
		return Meant
	case p.Severity != "3" && (c.onlyWashed(p.A) || c.onlyWashed(p.B)):
		return Washed
	}
	return Unasked
}

// onlyWashed reports whether of one side of a pair only the residue of a wash is there.
func (c *Contents) onlyWashed(side Side) bool {
	for _, n := range side.needs {
		if n.of == aTag && c.washed[Tag(n.names[0])] {
			return true
		}
	}
	return false
}

// Stood reports whether a side of a pair is no more than what earlier stood in a place.
func (c *Contents) Stood(p *Pair) bool {
	a, there := c.step(p.A)
	b, too := c.step(p.B)
	return there && too && min(a, b) == 0
}
