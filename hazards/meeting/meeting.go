// Package meeting knows what has come together in each place of a route, and which two
// things must not: rows of pairs.csv. It must not know amounts, what a step works out,
// nor what a figure is.
package meeting

import (
	"slices"
	"strings"

	"etchbound/hazards/route"
)

// Tags are the properties that make a row of a rule apply, each with the first step that
// brought it: a class of a substance, or what is done with it.
type Tags map[string]int

// Add puts in tags that a step brings; what is there stays.
func (t Tags) Add(step int, tags ...string) {
	for _, k := range tags {
		if _, ok := t[k]; !ok {
			t[k] = step
		}
	}
}

// Has reports whether a tag is there.
func (t Tags) Has(tag string) bool { _, ok := t[tag]; return ok }

// Contents is what one place has held by the end of the route. It errs toward
// more: what was rinsed or poured out is still counted, since a residue is enough.
type Contents struct {
	Place *route.Place
	Tags  Tags
	Names []string // substances that were put in or came over, in that order
}

// Of follows the materials of a route through its places in step order.
func Of(r *route.Route) []Contents {
	if r == nil {
		return nil
	}
	out := make([]Contents, len(r.Places))
	at := make(map[string]*Contents, len(r.Places))
	for i := range r.Places {
		out[i] = Contents{Place: &r.Places[i], Tags: Tags{}}
		at[r.Places[i].Key] = &out[i]
	}
	for i := range r.Steps {
		s := &r.Steps[i]
		c := at[s.In]
		if c == nil {
			continue
		}
		for j := range s.What {
			c.put(s.Number, &s.What[j], r)
		}
		if tag := s.Verb().Tag; tag != "" {
			c.Tags.Add(s.Number, does+tag)
		}
		c.joined(s.Number)
		if into := at[s.Into]; into != nil {
			into.takes(s.Number, c)
		}
	}
	return out
}

// The tags that are no class: powder of the route, whose reaction is followed; metal,
// carbide or layered powder that is put in as a substance, whose reaction is not; and
// what meets something that is not held; water, also that of a solution.
const (
	powder      = "powder"
	loosePowder = "loose_powder"
	other       = "other"
	water       = "water"
	does        = "does:" // and what the verb of a step is tagged with; it stays where it is done
)

func (c *Contents) put(step int, m *route.Material, r *route.Route) {
	name := ""
	switch {
	case m.Precursor && r.Precursor != nil:
		name = r.Precursor.Phase.Text
		c.Tags.Add(step, powder)
		for _, e := range r.Precursor.Phase.Order {
			c.Tags.Add(step, powder+":"+e)
		}
	case m.Substance != nil:
		name = m.Substance.Name
		c.Tags.Add(step, m.Substance.Classes()...)
		if m.Strength.Set || m.Substance.Solution == water {
			c.Tags.Add(step, water)
		}
		if m.Substance.Is(powder) {
			c.Tags.Add(step, loosePowder)
		}
	}
	if name != "" && !slices.Contains(c.Names, name) {
		c.Names = append(c.Names, name)
	}
}

func (c *Contents) takes(step int, from *Contents) {
	for k := range from.Tags {
		if !strings.HasPrefix(k, does) {
			c.Tags.Add(step, k)
		}
	}
	for _, n := range from.Names {
		if !slices.Contains(c.Names, n) {
			c.Names = append(c.Names, n)
		}
	}
	c.joined(step)
}

// joined adds what two materials make together: a fluoride salt in acid is HF, and
// what anything makes with something that is not held nobody knows.
func (c *Contents) joined(step int) {
	if c.Tags.Has("not_held") && len(c.Names) > 1 {
		c.Tags.Add(step, other)
	}
	if c.Tags.Has("fluoride_salt") && c.Tags.Has("acid") {
		c.Tags.Add(step, "hf")
	}
}
