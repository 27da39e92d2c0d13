package draft

import (
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/material"
	"etchbound/hazards/route"
)

// A tag is a property that makes a row of pairs.csv or safeguards.csv apply: a class
// of a substance, or what is done with it. tagSet holds the first step that brought
// each.
type TagSet map[string]int

func (t TagSet) Add(step int, tags ...string) {
	for _, k := range tags {
		if _, ok := t[k]; !ok {
			t[k] = step
		}
	}
}

func (t TagSet) Has(tag string) bool { _, ok := t[tag]; return ok }

// Contents is what one place has held by the end of the route. It errs toward
// more: what was rinsed out is still counted, since a residue is enough.
type Contents struct {
	Place *route.Place
	Tags  TagSet
	Names []string // substances that were put in or came over, in that order
}

// whatMeets follows the materials through the places in step order.
func whatMeets(r *route.Route) []Contents {
	if r == nil {
		return nil
	}
	out := make([]Contents, len(r.Places))
	at := map[string]*Contents{}
	for i := range r.Places {
		out[i] = Contents{Place: &r.Places[i], Tags: TagSet{}}
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
		c.joined(s.Number)
		if into := at[s.Into]; into != nil {
			into.takes(s.Number, c)
		}
	}
	return out
}

func (c *Contents) put(step int, m *route.Material, r *route.Route) {
	name := ""
	switch {
	case m.Precursor && r.Precursor != nil:
		name = r.Precursor.Phase.Text
		c.Tags.Add(step, "powder")
	case m.Substance != nil:
		name = m.Substance.Name
		c.Tags.Add(step, m.Substance.Classes()...)
	}
	if name != "" && !slices.Contains(c.Names, name) {
		c.Names = append(c.Names, name)
	}
}

func (c *Contents) takes(step int, from *Contents) {
	for k := range from.Tags {
		c.Tags.Add(step, k)
	}
	for _, n := range from.Names {
		if !slices.Contains(c.Names, n) {
			c.Names = append(c.Names, n)
		}
	}
	c.joined(step)
}

// other is the tag of what meets something that is not held.
const other = "other"

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

// routeTags is everything the route holds or does, for rules of the whole.
func (b *Draft) routeTags() TagSet {
	t := TagSet{}
	t.Add(0, "always")
	for _, c := range b.Places {
		for k, step := range c.Tags {
			if old, ok := t[k]; !ok || step < old {
				t[k] = step
			}
		}
	}
	for i := range b.Route().Steps {
		s := &b.Route().Steps[i]
		if tag := s.Verb().Tag; tag != "" {
			t.Add(s.Number, tag)
		}
		if s.Attended != nil && !*s.Attended {
			t.Add(s.Number, "unattended")
		}
	}
	for id := range b.ByID {
		switch id.Quantity {
		case "fluoride.hf_equivalent":
			t.Add(0, "hf")
		case "gas.hydrogen.total":
			t.Add(0, "hydrogen")
		case "gas.hydride.bound":
			t.Add(0, "hydride")
		}
	}
	return t
}

// Step is when a tag came into a place. What the place itself is made of is a tag
// too, there from the start: wall: with slugs and classes of the table of materials.
func (c *Contents) Step(tag string) (int, bool) {
	if kinds, ok := strings.CutPrefix(tag, "wall:"); ok {
		return 1, madeOf(c.Place.Material, strings.Split(kinds, "|")) || madeOf(c.Place.LidMaterial, strings.Split(kinds,
			"|"))
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
