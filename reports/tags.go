package reports

import (
	"slices"
	"strings"

	"etchbound/chemicals"
	"etchbound/hazards/route"
)

// A tag is a property that makes a row of pairs.csv, construction.csv or
// safeguards.csv apply: what a material is, or what is done with it. tagSet
// holds the first step that brought each.
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
		c.tags.add(step, substanceTags(m.Substance)...)
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

// joined adds what two materials make together: a fluoride salt in acid is HF.
func (c *contents) joined(step int) {
	if c.tags.has("fluoride_salt") && c.tags.has("acid") {
		c.tags.add(step, "hf")
	}
}

// byFormula are the tags of single substances whose kind says too little.
var byFormula = map[string][]string{
	"HF": {"hf", "acid"}, "HBF4": {"hf"}, "H2SiF6": {"hf"}, "NH4HF2": {"hf"}, "NH3": {"ammonia"}, "H2O2": {"peroxide"},
	"HNO3":  {"nitric"},
	"HClO4": {"perchloric"}, "NaOCl": {"hypochlorite"}, "NaClO": {"hypochlorite"}, "NaN3": {"azide"},
}

// byName are tags found by a word of the slug or a synonym.
var byName = [...]struct{ word, tag string }{
	{"dmso", "dmso"}, {"dimethyl sulfoxide", "dmso"}, {"tmaoh", "tmaoh"}, {"tetramethylammonium hydroxide", "tmaoh"},
	{"persulfate", "persulfate"}, {"peroxydisulfate", "persulfate"}, {"hypochlorite", "hypochlorite"},
	{"azide", "azide"}, {"cyanide", "cyanide_sulfide"}, {"sulfide", "cyanide_sulfide"},
}

func substanceTags(s *chemicals.Substance) []string {
	tags := slices.Clone(byFormula[s.Formula.Text])
	names := strings.ToLower(strings.Join(append([]string{s.Name, strings.ReplaceAll(s.Slug, "_", " ")}, s.Synonyms...),
		"|"))
	for _, n := range byName {
		if strings.Contains(names, n.word) {
			tags = append(tags, n.tag)
		}
	}
	is := func(yes bool, tag string) {
		if yes {
			tags = append(tags, tag)
		}
	}
	hydroxide := s.Acid < 0 && s.Kind != "carbonate" && s.Formula.Text != "NH3"
	is(s.Kind == "acid" || (s.Acid > 0 && s.Kind != "water"), "acid")
	is(s.Kind == "fluoride_salt", "fluoride_salt")
	is(s.Kind == "carbonate", "carbonate")
	is(hydroxide, "strong_base")
	is(s.Ammonium > 0, "ammonium")
	is(s.Oxidant > 0 || s.Kind == "oxidant", "oxidant")
	is(s.Formula.Count("Cl") > 0 && s.Oxidant == 0, "chloride")
	is(s.Formula.Count("Ca") > 0, "calcium")
	is(s.Formula.Count("C") > 0 && s.Formula.Count("H") > 0 && s.Kind != "carbonate", "organic")
	is(s.Kind == "precursor_metal", "powder")
	return tags
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
