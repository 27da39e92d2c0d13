package doubt

import (
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// burning is the quantity of the air that tells what can burn of a vapour, and nothing of what
// people breathe.
const burning = "air.flammable_share"

// Unjudged lists what people could breathe that nothing is held against: agents with
// limits of which no figure of the air is worked out, and those of which no limit is
// held. It looks at what the steps put in and at the gases they give off.
func Unjudged(r *route.Route, figs []figure.Figure, k *process.Walk) []UnknownItem {
	var out []UnknownItem
	add := func(kind, name string) {
		m := working.Lacks(kind, name)
		if !slices.ContainsFunc(out, func(u UnknownItem) bool { return u.Missing == m }) {
			out = append(out, UnknownItem{Missing: m})
		}
	}
	for _, s := range breathable(r, k) {
		judged := slices.ContainsFunc(figs, func(f figure.Figure) bool {
			return f.Agent == s.Slug && figure.Row(f.Quantity).Family == "air" && f.Quantity != burning
		})
		held := len(limit.Strictest(s.Slug, "")) > 0
		switch {
		case held && !judged:
			add("air_unjudged", s.Name)
		case !held && s.State != "s" || !held && s.Vapour == "gives":
			add("no_limit_held", s.Name)
		}
	}
	return out
}

// breathable are the substances that a route puts in, those whose dust counts as
// fluoride, and the gases it gives off; water and what is not held apart, of which all
// is unknown, and gases that are harmful only where they take the air's place.
func breathable(r *route.Route, k *process.Walk) []*chemicals.Substance {
	var out []*chemicals.Substance
	add := func(s *chemicals.Substance) {
		if s.Kind != "water" && !s.NotHeld && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	for i := range r.Steps {
		for _, m := range r.Steps[i].What {
			if m.Substance == nil {
				continue
			}
			add(m.Substance)
			if fluoride, held := chemicals.Library().Find("fluoride"); held && m.Substance.Kind == "fluoride_salt" {
				add(fluoride)
			}
		}
	}
	for i := range k.Evolved {
		if s := k.Evolved[i].Gas; s != nil {
			add(s)
		}
	}
	for i := range k.Releases {
		if s, held := chemicals.Library().Find(k.Releases[i].Gas); held && !s.Is("asphyxiant") {
			add(s)
		}
	}
	return out
}
