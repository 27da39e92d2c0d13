package classifying

import (
	"slices"

	"etchbound/chemicals"
)

// Part is one substance of a mixture.
type Part struct {
	Sub   *chemicals.Substance
	Share float64 // wt%, at the end of its range where danger lies; all of it where it is not known (NaN)
}

// share of a part, in wt%: one that is not known counts as all.
func (p *Part) share() float64 {
	if p.Share == p.Share {
		return min(p.Share, 100)
	}
	return 100
}

// Found is a class that a mixture has.
type Found struct {
	Class  *Class
	Of     []string // names of the parts that give it, in the order of the mixture
	Source string   // of the first of them
	Status string   // the least sure of them
}

// Classified is what is known of a mixture.
type Classified struct {
	Classes []Found  // one a family, in the order of the families
	NotHeld []string // parts whose classes are not held: with any of them the classes are a lower bound
}

// Mixture classifies what stands together. A part of no share does not count.
func Mixture(parts []Part) Classified {
	t := held()
	var out Classified
	var rows []*row
	var there []Part
	for _, p := range parts {
		switch {
		case p.Sub == nil || p.share() <= 0:
			continue
		case t.substances[p.Sub.Slug] == nil:
			if !slices.Contains(out.NotHeld, p.Sub.Name) {
				out.NotHeld = append(out.NotHeld, p.Sub.Name)
			}
			continue
		}
		rows, there = append(rows, t.substances[p.Sub.Slug]), append(there, p)
	}
	for _, family := range t.families {
		if f, ok := t.worst(family, there, rows); ok {
			out.Classes = append(out.Classes, f)
		}
	}
	return out.implied()
}

// worst is the severest class of a family that a mixture reaches.
func (t *tables) worst(family string, parts []Part, rows []*row) (Found, bool) {
	ate := acute(family, parts, rows)
	for _, c := range t.classes {
		if c.Family != family {
			continue
		}
		sum, most := 0.0, 0.0
		f := Found{Class: c}
		for i := range parts {
			l := rows[i].limit(t, c)
			if !(l == l) {
				continue
			}
			x := parts[i].share() / l
			sum, most = sum+x, max(most, x)
			f.add(parts[i].Sub.Name, rows[i])
		}
		if t.generals[c.Key].adds && sum >= 1-rounding || most >= 1-rounding {
			return f, true
		}
		if ate <= c.to*(1+rounding) {
			f = Found{Class: c}
			for i := range parts {
				if rows[i].estimate(family) > 0 {
					f.add(parts[i].Sub.Name, rows[i])
				}
			}
			return f, true
		}
	}
	return Found{}, false
}

// add counts a part among those that give a class.
func (f *Found) add(name string, x *row) {
	f.Of = append(f.Of, name)
	if f.Source == "" {
		f.Source = x.source
	}
	f.Status = LessSure(f.Status, x.status)
}

// LessSure is the less sure of two statuses; one that is blank is none.
func LessSure(a, b string) string {
	if slices.Index(statuses, b) > slices.Index(statuses, a) {
		return b
	}
	return a
}

// estimate is the converted estimate of acute toxicity of a substance in a family; 0
// where it has none.
func (x *row) estimate(family string) float64 {
	for _, c := range x.classes {
		if c.Family == family && c.ate == c.ate {
			return c.ate
		}
	}
	return 0
}

// acute is the estimate of acute toxicity of a mixture in mg/kg, or mg/L of vapour for
// what is breathed: 100/sum(share/estimate). +Inf where nothing in it has one.
func acute(family string, parts []Part, rows []*row) float64 {
	sum := 0.0
	for i := range parts {
		if e := rows[i].estimate(family); e > 0 {
			sum += parts[i].share() / e
		}
	}
	return 100 / sum
}

// Estimate is the estimate of acute toxicity of a mixture by a way in: acute_oral and
// acute_dermal in mg/kg, acute_inhal in mg/L of vapour; +Inf where none of what is held
// is toxic by it.
func Estimate(way string, parts []Part) float64 {
	t := held()
	var rows []*row
	var there []Part
	for _, p := range parts {
		if p.Sub != nil && t.substances[p.Sub.Slug] != nil {
			rows, there = append(rows, t.substances[p.Sub.Slug]), append(there, p)
		}
	}
	return acute(way, there, rows)
}

// implied leaves out what another class says already: burns of the skin are burns of the
// eye.
func (c Classified) implied() Classified {
	burns := slices.ContainsFunc(c.Classes, func(f Found) bool { return f.Class.Code == "H314" })
	c.Classes = slices.DeleteFunc(c.Classes, func(f Found) bool { return burns && f.Class.Family == "eye" })
	return c
}

// Signal is the signal word of a mixture: danger before warning; "" where it has neither.
func (c *Classified) Signal() string {
	out := ""
	for _, f := range c.Classes {
		switch f.Class.Signal {
		case "danger":
			return "danger"
		case "warning":
			out = "warning"
		}
	}
	return out
}

// Pictograms are the names of its pictograms, each once. The exclamation mark gives way
// to the skull, and beside corrosion where it is of skin and eye alone.
func (c *Classified) Pictograms() []string {
	const mark = "exclamation mark"
	var out []string
	other := false // the mark is of more than skin and eye
	for _, f := range c.Classes {
		p := f.Class.Pictogram
		if p == mark && f.Class.Family != "skin" && f.Class.Family != "eye" {
			other = true
		}
		if p != "none" && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	if slices.Contains(out, "skull and crossbones") || slices.Contains(out, "corrosion") && !other {
		out = slices.DeleteFunc(out, func(p string) bool { return p == mark })
	}
	return out
}

// Has reports whether a mixture has a class.
func (c *Classified) Has(key string) bool {
	return slices.ContainsFunc(c.Classes, func(f Found) bool { return f.Class.Key == key })
}
