package meeting

import (
	_ "embed"
	"errors"
	"slices"
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/material"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

//go:embed pairs.csv
var pairsCSV string

// Pair is two things that must not meet unasked: tags A and B in one place. The same
// tag twice is something that is not to be kept shut by itself. Mixed is the id of what is
// told where a step brings the two together; "" where another row tells it.
type Pair struct {
	ID                             string
	A, B                           Side
	Mixed, Names, Result, Severity string
	Gas                            Gas
	Meant                          []string // what a step does that intends it
	Judged                         []string // quantities that judge it then
	Source, Status                 string
}

// mayMeet is the severity of a row that only says how two are mixed.
const mayMeet = "0"

// Gas is how far the gas of a pair is followed.
type Gas string

// How far it is.
const (
	NoGas      Gas = "none"    // nothing that fills a container comes off
	Counted    Gas = "counted" // what comes off is counted in the pressure of a place
	Bounded    Gas = "bounded" // all the oxygen that is in it is counted there
	UnknownGas Gas = "unknown" // nobody works out how much comes off
)

var rows = sync.OnceValue(func() []Pair {
	return columns.Must("hazards/meeting/pairs.csv", pairsCSV, pairOf)
})

// pairOf reads a row.
func pairOf(r columns.Row) Pair {
	p := Pair{ID: r.Named("id"), Mixed: r.Text("mixed"), Names: r.Text("pair"),
		Result: r.Text("result"), Severity: r.Choice("severity", mayMeet, "1", "2", "3"),
		Gas: Gas(r.Choice("gas", string(NoGas), string(Counted), string(Bounded),
			string(UnknownGas))),
		Meant: r.List("meant"), Judged: r.List("judged"),
		Source: r.Named("source"), Status: r.Named("status")}
	if p.Severity == mayMeet && p.Mixed == "" || p.Severity != mayMeet && (p.Names == "" || p.Result == "") {
		r.Fault("severity", errors.New("a pair that must not meet says what it is and gives, another how it is mixed"))
	}
	var mixed []Tag // tags of rows that only say how two are mixed: those of order hold them
	if p.Severity == mayMeet {
		mixed = []Tag{Any, base}
	}
	p.A, p.B = SideOf(r, "a", mixed...), SideOf(r, "b", mixed...)
	return p
}

// SideOf is one side of a row, whose tags something has to bring, but those beside.
func SideOf(r columns.Row, column string, beside ...Tag) Side {
	s, err := ReadSide(r.Named(column), beside...)
	if err != nil {
		r.Fault(column, err)
	}
	return s
}

// Pairs are the rows of pairs.csv of two that must not meet. The slice is shared and not
// to be changed.
var Pairs = sync.OnceValue(func() []Pair {
	return slices.DeleteFunc(slices.Clone(rows()), func(p Pair) bool { return p.Severity == mayMeet })
})

// Named is the pair that must not meet with an id, nil where there is none.
func Named(id string) *Pair {
	all := Pairs()
	for i := range all {
		if all[i].ID == id {
			return &all[i]
		}
	}
	return nil
}

// Mixtures are the rows of pairs.csv that say how two are mixed, in the order in which
// they count. The slice is shared and not to be changed.
var Mixtures = sync.OnceValue(func() []Pair {
	return slices.DeleteFunc(slices.Clone(rows()), func(p Pair) bool { return p.Mixed == "" })
})

// Meets is the step from which on both sides of a pair have been in a place, 0 where they
// were before the first; ok is false where one never was.
func (c *Contents) Meets(p *Pair) (step int, ok bool) {
	for i := range c.met {
		if c.met[i].Pair.ID == p.ID {
			return c.met[i].Step, true
		}
	}
	return c.hold(p)
}

// hold is Meets of what is in the place now.
func (c *Contents) hold(p *Pair) (step int, ok bool) {
	first, ok := c.step(p.A)
	if !ok {
		return 0, false
	}
	second, ok := c.step(p.B)
	return max(first, second), ok
}

// Wall is what a pair needs a part of the place to be made of; ok is false where it is
// of two substances.
func (p *Pair) Wall() (kinds []string, ok bool) { return p.B.Wall() }

// step is when the last of what a side needs came into a place.
func (c *Contents) step(s Side) (last int, ok bool) {
	for i := range s.needs {
		n, ok := c.came(&s.needs[i])
		if !ok {
			return 0, false
		}
		last = max(last, n)
	}
	return last, true
}

// came is when a thing that is needed came into a place. What the place itself is made of
// was there from the start. Of several names the first that is there counts.
func (c *Contents) came(x *need) (int, bool) {
	if x.of == wall {
		parts := append([]route.Wetted{{Material: c.Place.Material}, {Material: c.Place.LidMaterial}}, c.Place.Wetted...)
		return 1, slices.ContainsFunc(parts, func(w route.Wetted) bool { return MadeOf(w.Material, x.names) })
	}
	for _, name := range x.names {
		step, there := 0, false
		switch x.of {
		case element:
			step, there = c.elements[name]
		case verb:
			step, there = c.done[name]
		default:
			step, there = c.Tags[Tag(name)]
		}
		if there {
			return step, true
		}
	}
	return 0, false
}

// MadeOf reports whether something of what a text names that meets the liquor is of
// one of some materials or classes.
func MadeOf(text string, kinds []string) bool {
	wall := chemicals.Base().Materials().Read(text)
	return slices.ContainsFunc(wall.Wetted, func(m *material.Material) bool {
		return slices.Contains(kinds, m.Slug) || slices.Contains(kinds, m.Class)
	})
}

// Perhaps lists the pairs of a liquor with a wall or a lid of which nobody can say what it is
// made of, and which none of the parts that are stated makes.
func (c *Contents) Perhaps() []*Pair {
	lid := c.Place.Closure != route.Open || !c.Place.ClosureStated // else there is none
	if !unread(c.Place.Material) && !(lid && unread(c.Place.LidMaterial)) {
		return nil
	}
	var out []*Pair
	all := Pairs()
	for i := range all {
		p := &all[i]
		met := slices.ContainsFunc(c.met, func(m Met) bool { return m.Pair == p })
		if _, wall := p.Wall(); !wall || p.Severity == "1" || met {
			continue
		}
		if _, there := c.step(p.A); there {
			out = append(out, p)
		}
	}
	return out
}

// WallUnread reports whether nobody can say what the wall of a place is made of: it is not
// stated, or stated in words that are no material. It may be anything then.
func WallUnread(p *route.Place) bool { return unread(p.Material) }

func unread(text string) bool {
	wall := chemicals.Base().Materials().Read(text)
	return !wall.Known()
}

// Tables is the text of the tables of this package as the program carries them.
func Tables() string { return pairsCSV + shelfCSV + beforeCSV }
