package scaling

import (
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/schemas/field"
)

// differ lays two cases side by side, key by key.
type differ struct {
	a, b  *route.Route
	found []found // keys that are stated otherwise
}

// found is a key of one of the files that is stated otherwise.
type found struct {
	file string // route, site or limits
	field.Beside
}

// differences are what two cases state otherwise: the routes, then the sites, then the
// limits of their own.
func differences(a, b *route.Case) differ {
	d := differ{a: a.Route, b: b.Route}
	route.Beside(a.Route, b.Route, d.see("route"))
	d.sites(a.Site, b.Site)
	limit.Beside(own(a.Limits), own(b.Limits), d.see("limits"))
	return d
}

func (d *differ) see(file string) func(field.Beside) {
	return func(x field.Beside) {
		if x.Alone == "" && !x.Same() {
			d.found = append(d.found, found{file, x})
		}
	}
}

// sites of which one is not given differ as a whole.
func (d *differ) sites(a, b *route.Site) {
	switch {
	case a == b:
	case a == nil || b == nil:
		whole := field.Field{Path: "*", Key: "site", Kind: field.Maps}
		d.see("site")(field.Beside{Field: whole, Where: "site", Name: "site", Value: titled(a), Other: titled(b)})
	default:
		route.SitesBeside(a, b, d.see("site"))
	}
}

func titled(s *route.Site) field.Word {
	if s == nil {
		return ""
	}
	if s.Title == "" {
		return "given"
	}
	return field.Word(s.Title)
}

func own(s *limit.Set) *limit.Set {
	if s == nil {
		return &limit.Set{}
	}
	return s.OwnFile()
}

// inputs are the differences in words: what can move a figure first, then what only
// names things.
func (d *differ) inputs() []InputDiff {
	var out, names []InputDiff
	for i := range d.found {
		x := &d.found[i]
		y := InputDiff{x.Where, x.Name, x.Value.String(), x.Other.String() + again(x)}
		if x.judged().how == judgedNames {
			names = append(names, y)
			continue
		}
		out = append(out, y)
	}
	return append(out, names...)
}

// again tells two values apart that are written alike.
func again(x *found) string {
	if x.Value.Stated() && x.Value.String() == x.Other.String() {
		return " (as computed)"
	}
	return ""
}

// powder is how many times the powder of the reviewed route the proposed one has.
func (d *differ) powder() float64 {
	if a, b := d.a.Precursor, d.b.Precursor; a != nil && b != nil && a.Mass.SI > 0 {
		return b.Mass.SI / a.Mass.SI
	}
	return 1
}
