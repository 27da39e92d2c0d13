package reports

import (
	"slices"

	"etchbound/hazards/route"
)

// A tag is a property that makes a row of pairs.csv or safeguards.csv apply: a class
// of a substance, or what is done with it. tagSet holds the first step that brought
// each.
type tagSet map[string]int

func (t tagSet) add(step int, tags ...string) {
	for _, k := range tags {
		if _, ok := t[k]; !ok {
			t[k] = step
		}
	}
}

func (t tagSet) has(tag string) bool { _, ok := t[tag]; return ok }

// contents is what one place has held by the end of the route. It errs toward
// more: what was rinsed out is still counted, since a residue is enough.
type contents struct {
	place *route.Place
	tags  tagSet
	names []string // substances that were put in or came over, in that order
}

// whatMeets follows the materials through the places in step order.
func whatMeets(r *route.Route) []contents {
	if r == nil {
		return nil
	}
	out := make([]contents, len(r.Places))
	at := map[string]*contents{}
	for i := range r.Places {
		out[i] = contents{place: &r.Places[i], tags: tagSet{}}
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

func (c *contents) put(step int, m *route.Material, r *route.Route) {
	name := ""
	switch {
	case m.Precursor && r.Precursor != nil:
		name = r.Precursor.Phase.Text
		c.tags.add(step, "powder")
	case m.Substance != nil:
		name = m.Substance.Name
		c.tags.add(step, m.Substance.Classes()...)
	}
	if name != "" && !slices.Contains(c.names, name) {
		c.names = append(c.names, name)
	}
}

func (c *contents) takes(step int, from *contents) {
	for k := range from.tags {
		c.tags.add(step, k)
	}
	for _, n := range from.names {
		if !slices.Contains(c.names, n) {
			c.names = append(c.names, n)
		}
	}
	c.joined(step)
}

// other is the tag of what meets something that is not held.
const other = "other"

// joined adds what two materials make together: a fluoride salt in acid is HF, and
// what anything makes with something that is not held nobody knows.
func (c *contents) joined(step int) {
	if c.tags.has("not_held") && len(c.names) > 1 {
		c.tags.add(step, other)
	}
	if c.tags.has("fluoride_salt") && c.tags.has("acid") {
		c.tags.add(step, "hf")
	}
}

// routeTags is everything the route holds or does, for rules of the whole.
func (b *builder) routeTags() tagSet {
	t := tagSet{}
	t.add(0, "always")
	for _, c := range b.places {
		for k, step := range c.tags {
			if old, ok := t[k]; !ok || step < old {
				t[k] = step
			}
		}
	}
	for i := range b.route().Steps {
		s := &b.route().Steps[i]
		if tag := s.Verb().Tag; tag != "" {
			t.add(s.Number, tag)
		}
		if s.Attended != nil && !*s.Attended {
			t.add(s.Number, "unattended")
		}
	}
	for id := range b.byID {
		switch id.Quantity {
		case "fluoride.hf_equivalent":
			t.add(0, "hf")
		case "gas.hydrogen.total":
			t.add(0, "hydrogen")
		case "gas.hydride.bound":
			t.add(0, "hydride")
		}
	}
	return t
}
