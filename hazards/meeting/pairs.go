package meeting

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/material"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

//go:embed pairs.csv
var pairsCSV string

// Pair is two things that must not meet unasked: tags A and B in one place. The same
// tag twice is something that is not to be kept shut by itself.
type Pair struct {
	ID, A, B, Names, Result, Severity string
	Gas                               Gas
	Source, Status                    string
}

// Gas is how far the gas of a pair is followed.
type Gas string

// How far it is.
const (
	NoGas      Gas = "none"    // nothing that fills a container comes off
	Counted    Gas = "counted" // what comes off is counted in the pressure of a place
	UnknownGas Gas = "unknown" // nobody works out how much comes off
)

// Pairs are the rows of pairs.csv. The slice is shared and not to be changed.
var Pairs = sync.OnceValue(func() []Pair {
	return columns.Must("hazards/meeting/pairs.csv", pairsCSV, func(r columns.Row) Pair {
		return Pair{r.Named("id"), r.Named("a"), r.Named("b"), r.Named("pair"), r.Named("result"), r.Named("severity"),
			Gas(r.Choice("gas", string(NoGas), string(Counted), string(UnknownGas))), r.Named("source"), r.Named("status")}
	})
})

// Meets is the step from which on both sides of a pair have been in a place; ok is false
// where one never was.
func (c *Contents) Meets(p *Pair) (step int, ok bool) {
	first, ok := c.step(p.A)
	if !ok {
		return 0, false
	}
	second, ok := c.step(p.B)
	return max(first, second), ok
}

// Wall is what a pair needs a part of the place to be made of; ok is false where it is
// of two substances.
func (p *Pair) Wall() (kinds []string, ok bool) {
	list, ok := strings.CutPrefix(p.B, "wall:")
	if !ok {
		return nil, false
	}
	return strings.Split(list, "|"), true
}

// step is when a tag came into a place. What the place itself is made of is a tag
// too, there from the start: wall: with slugs and classes of the table of materials.
func (c *Contents) step(tag string) (int, bool) {
	if kinds, ok := strings.CutPrefix(tag, "wall:"); ok {
		of := strings.Split(kinds, "|")
		return 1, madeOf(c.Place.Material, of) || madeOf(c.Place.LidMaterial, of)
	}
	n, ok := c.Tags[tag]
	return n, ok
}

// madeOf reports whether something of what a text names that meets the liquor is of
// one of some materials or classes.
func madeOf(text string, kinds []string) bool {
	wall := chemicals.Base().Materials().Read(text)
	return slices.ContainsFunc(wall.Wetted, func(m *material.Material) bool {
		return slices.Contains(kinds, m.Slug) || slices.Contains(kinds, m.Class)
	})
}

// WallIs reports whether the wall of a place is of one of some materials or classes.
func WallIs(p *route.Place, kinds []string) bool { return madeOf(p.Material, kinds) }

// WallUnread reports whether nobody can say what the wall of a place is made of: it is not
// stated, or stated in words that are no material. It may be anything then.
func WallUnread(p *route.Place) bool {
	wall := chemicals.Base().Materials().Read(p.Material)
	return !wall.Known()
}
