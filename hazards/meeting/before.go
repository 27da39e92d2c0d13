package meeting

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"etchbound/chemicals"
	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

//go:embed before.csv
var beforeCSV string

// stoodIn is what some words for what earlier stood in a container mean: classes of
// substances, none where it was empty.
type stoodIn struct {
	words []string
	tags  []Tag
}

var stoodIns = sync.OnceValue(func() []stoodIn {
	return columns.Must("hazards/meeting/before.csv", beforeCSV, func(r columns.Row) stoodIn {
		_ = r.Named("source") + r.Named("status")
		return stoodIn{r.List("words"), Listed(r.List("tags"))}
	})
})

// Empty reports whether a text says that nothing stood in a container before.
func Empty(text string) bool {
	s := inWords(text)
	return s != nil && len(s.tags) == 0
}

func inWords(text string) *stoodIn {
	plain := strings.ToLower(strings.TrimSpace(text))
	for i := range stoodIns() {
		if s := &stoodIns()[i]; slices.Contains(s.words, plain) {
			return s
		}
	}
	return nil
}

// before puts in what earlier stood in a place: a residue is enough. What is neither a
// substance that is held nor one of the words of the table may be anything.
func (c *Contents) before() {
	for _, text := range c.Place.HeldBefore {
		if s := inWords(text); s != nil {
			c.Tags.Add(0, s.tags...)
			if len(s.tags) > 0 {
				c.named(text)
			}
			continue
		}
		s, held := chemicals.Library().Find(strings.TrimSpace(text))
		if !held {
			s = chemicals.Unheld(text, chemicals.Formula{})
		}
		c.put(0, &route.Material{Substance: s}, &route.Route{})
		if s.Acid < 0 {
			c.Tags.Add(0, base)
		}
	}
	if c.joined(0); len(c.Tags) > 0 {
		c.meets(nil, nil)
	}
}

// UnknownBefore reports whether a container takes waste and nobody says what earlier
// stood in it.
func (c *Contents) UnknownBefore() bool { return c.Waste && len(c.Place.HeldBefore) == 0 }
