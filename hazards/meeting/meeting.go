// Package meeting knows what has come together in each place of a route, and which two
// things must not: rows of pairs.csv. It must not know amounts, what a step works out,
// nor what a figure is.
package meeting

import (
	"slices"

	"etchbound/hazards/route"
)

// Contents is what one place has held by the end of the route. It errs toward
// more: what was rinsed or poured out is still counted, since a residue is enough.
type Contents struct {
	Place  *route.Place
	Tags   Tags
	Names  []string     // substances that were put in or came over, in that order
	Waste  bool         // it takes waste
	washed map[Tag]bool // tags of which only what a wash leaves is there

	elements, done map[string]int // of the layered powder; what verbs are tagged with, which stays where it is done
	met            []Met          // pairs that have met in it, in the order of the steps
}

// empty is a place in which nothing has been.
func empty(p *route.Place) *Contents {
	return &Contents{Place: p, Tags: Tags{}, washed: map[Tag]bool{}, elements: map[string]int{}, done: map[string]int{}}
}

// Of follows the materials of a route through its places in step order.
func Of(r *route.Route) []Contents {
	if r == nil {
		return nil
	}
	out := make([]Contents, len(r.Places))
	at := make(map[string]*Contents, len(r.Places))
	for i := range r.Places {
		out[i] = *empty(&r.Places[i])
		out[i].Waste = r.Places[i].Kind == "drum"
		out[i].before()
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
			bring(c.done, s.Number, []string{tag})
		}
		c.joined(s.Number)
		c.cools(s)
		c.meets(s, nil)
		if into := at[s.Into]; into != nil {
			into.Waste = into.Waste || s.Verb().Waste == "yes" && s.Product != "liquid"
			into.takes(s.Number, c)
			into.meets(s, c)
		}
		c.washes(s)
	}
	return out
}

// The tags that are no class: powder of the route, whose reaction is followed; metal,
// carbide or layered powder that is put in as a substance, whose reaction is not; and
// what meets something that is not held; water, also that of a solution; a melt that
// has not been cooled; what is so strong that it decomposes, of which dilution takes nothing.
const (
	powder      Tag = "powder"
	loosePowder Tag = "loose_powder"
	other       Tag = "other"
	water       Tag = "water"
	molten      Tag = "molten"
	base        Tag = "base"       // below zero acid equivalents: of what stood there or stands on a shelf
	decomposes  Tag = "decomposes" // a solution so strong that it gives gas by itself
)

func (c *Contents) put(step int, m *route.Material, r *route.Route) {
	name := ""
	switch {
	case m.Precursor && r.Precursor != nil:
		name = r.Precursor.Phase.Text
		c.Tags.Add(step, powder)
		bring(c.elements, step, r.Precursor.Phase.Order)
	case m.Substance != nil:
		name = m.Substance.Name
		c.brings(step, TagsOf(m.Substance))
		if m.Strength.Set || m.Substance.Solution == string(water) {
			c.Tags.Add(step, water)
		}
		if m.Decomposes() {
			c.brings(step, []Tag{decomposes})
		}
		if m.Substance.Is(string(powder)) {
			c.Tags.Add(step, loosePowder)
		}
	}
	c.named(name)
}

func (c *Contents) named(name string) {
	if name != "" && !slices.Contains(c.Names, name) {
		c.Names = append(c.Names, name)
	}
}

func (c *Contents) takes(step int, from *Contents) {
	for k := range from.Tags {
		if _, there := c.Tags[k]; !there && from.washed[k] {
			c.washed[k] = true
		} else if !from.washed[k] {
			delete(c.washed, k)
		}
		c.Tags.Add(step, k)
	}
	for e := range from.elements {
		bring(c.elements, step, []string{e})
	}
	for _, n := range from.Names {
		c.named(n)
	}
	c.joined(step)
}

// brings puts in what is more than the residue of a wash.
func (c *Contents) brings(step int, tags []Tag) {
	for _, k := range tags {
		delete(c.washed, k)
	}
	c.Tags.Add(step, tags...)
}

// washes leaves of what was dissolved in a place no more than a residue.
func (c *Contents) washes(s *route.Step) {
	if does := s.Verb().Does; does != route.Washes && does != route.Prewashes {
		return
	}
	kept := empty(c.Place)
	for j := range s.What {
		kept.put(s.Number, &s.What[j], &route.Route{})
	}
	for k := range c.Tags {
		if !kept.Tags.Has(k) && k != powder && k != loosePowder {
			c.washed[k] = true
		}
	}
}

// dry reports whether something other than the powder is in a place and nothing brought
// water to it.
func (c *Contents) dry() bool {
	return !c.Tags.Has(water) && (len(c.Names) > 1 || len(c.Names) == 1 && !c.Tags.Has(powder))
}

// cools follows whether a place holds a melt. Where water no longer boils it has set and
// water on it no longer flashes.
func (c *Contents) cools(s *route.Step) {
	switch does := s.Verb().Does; {
	case does == route.Melts, s.Boils() && (does == route.Fills || does == route.Shuts) && c.dry():
		c.Tags.Add(s.Number, molten)
	case s.Temperature.Set && len(s.What) == 0 && s.Into == "" && !s.Boils():
		delete(c.Tags, molten)
	}
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
