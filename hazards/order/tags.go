package order

import (
	"cmp"
	"slices"

	"etchbound/chemicals"
	"etchbound/hazards/meeting"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// truth is whether something is so: nobody knows where it is maybe.
type truth uint8

const (
	no truth = iota
	maybe
	yes
)

// and is whether both are so.
func (t truth) and(u truth) truth { return min(t, u) }

// contents is what stands in a place, or comes to it.
type contents struct {
	subs   []*chemicals.Substance
	acid   float64 // mol of acid less that of base, as charged; NaN where it is not known
	held   bool    // it was brought to neutral: its acid is acid no more
	powder string  // that the etchant has not met; "" where there is none
	doubt  string  // powder of which nobody knows whether what is not held has etched it
	solids bool    // powder, etched or not
}

// inside is what stands in a place.
func inside(s *process.State) contents {
	out := contents{held: s.Neutralised}
	acid, base := s.Sides()
	out.acid = acid - base
	for i := range s.Liquid {
		for j := range s.Liquid[i].Entries {
			e := &s.Liquid[i].Entries[j]
			if e.Sub != nil && !(e.N.V <= 0) {
				out.subs = append(out.subs, e.Sub)
			}
		}
	}
	etched := s.MayCarry > 0 || slices.ContainsFunc(s.Solids, func(x process.Solid) bool {
		return x.Kind == process.Product
	})
	for i := range s.Solids {
		x := &s.Solids[i]
		out.solids = out.solids || x.Kind != process.Metal && x.Kind != process.Inert
		fresh := x.Kind == process.Impurity && !x.Unstated && !etched // what an etch left of them met it
		if (x.Kind == process.Unetched || fresh) && out.powder == "" {
			out.powder = x.Name
		}
		if !x.Lacks.IsZero() && out.doubt == "" {
			out.doubt = x.Name
		}
	}
	return out
}

// material is what a step puts in. Its acid or base is what one mol of it is.
func material(m *route.Material, r *route.Route) contents {
	if m.Precursor && r.Precursor != nil {
		return contents{powder: r.Precursor.Phase.Text, solids: true}
	}
	if m.Substance == nil {
		return contents{}
	}
	return contents{subs: []*chemicals.Substance{m.Substance}, acid: m.Substance.Acid}
}

// with is what two hold together.
func (c contents) with(o contents) contents {
	out := contents{subs: append(c.subs[:len(c.subs):len(c.subs)], o.subs...), acid: c.acid + o.acid,
		held: c.held && len(o.subs) == 0, powder: c.powder, doubt: cmp.Or(c.doubt, o.doubt), solids: c.solids || o.solids}
	if out.powder == "" {
		out.powder = o.powder
	}
	return out
}

// liquid is what flows of it.
func (c contents) liquid() contents {
	c.powder, c.doubt, c.solids = "", "", false
	return c
}

// has tells whether a side of a rule is there, and what it is called.
func (c *contents) has(side meeting.Side) (truth, string) {
	out, name := yes, ""
	tags, liquor := side.Tags()
	if !liquor {
		return no, ""
	}
	for _, tag := range tags {
		t, n := c.tag(tag)
		if out = out.and(t); name == "" {
			name = n
		}
	}
	return out, name
}

// tag tells whether something of one tag is there, and what it is called.
func (c *contents) tag(tag meeting.Tag) (truth, string) {
	switch tag {
	case solids:
		if c.solids {
			return yes, ""
		}
		return no, ""
	case "powder":
		if c.powder != "" {
			return yes, c.powder
		}
		if c.doubt != "" {
			return maybe, c.doubt
		}
	case "acid", "hf":
		if c.held || c.acid <= 0 {
			return no, ""
		}
	}
	out, name := no, ""
	for _, s := range c.subs {
		if t := is(s, tag); t > out {
			out, name = t, s.Name
		}
	}
	if tag == "hf" && out != yes {
		salt, _ := c.tag("fluoride_salt")
		if acid, of := c.tag("acid"); salt.and(acid) > out {
			if out, name = salt.and(acid), of; out == yes {
				name = hydrofluoric()
			}
		}
	}
	return out, name
}

// hydrofluoric is the name of what a fluoride salt makes with acid.
func hydrofluoric() string {
	if s, ok := chemicals.Library().Find("hf"); ok {
		return s.Name
	}
	return "HF"
}

// is tells whether a substance is of a class. What is not held may be of any that its
// formula allows.
func is(s *chemicals.Substance, tag meeting.Tag) truth {
	switch {
	case anything(tag) || s.Is(string(tag)) || tag == "water" && s.Solution == "water":
		return yes
	case tag == "base" && s.Acid < 0:
		return yes
	case tag == "powder" || !s.MayBe(string(tag)):
		return no
	}
	return maybe
}

// anything reports a side of a rule that every substance is.
func anything(tag meeting.Tag) bool { return tag == meeting.Any || tag == "other" }

// solids is the tag of powder, etched or not, beside those that meet.
const solids meeting.Tag = "solids"
