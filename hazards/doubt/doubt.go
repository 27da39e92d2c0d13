// Package doubt lists what a review does not know: what is missing, and what is
// assumed and what that moves. It must not know how a figure is found, nor which
// verdict it has, nor the words for what is missing.
package doubt

import (
	"slices"

	"etchbound/chemicals/material"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// UnknownItem is something missing that could change the answer.
type UnknownItem struct {
	working.Missing
	Figures []figure.ID // that lack it
}

// Unknown lists what is missing: first what most figures lack, then what the
// writer left open, and what nobody knows to stand the liquor.
func Unknown(r *route.Route, figs []figure.Figure, contacts []process.Contact) []UnknownItem {
	var out []UnknownItem
	at := map[working.Missing]int{}
	add := func(m working.Missing, f figure.ID) {
		i, ok := at[m]
		if !ok {
			i = len(out)
			at[m] = i
			out = append(out, UnknownItem{Missing: m})
		}
		if !f.IsZero() && !slices.Contains(out[i].Figures, f) {
			out[i].Figures = append(out[i].Figures, f)
		}
	}
	for i := range figs {
		f := &figs[i]
		if !f.Of().IsZero() {
			continue
		}
		for _, n := range [...]working.Num{f.Value, f.Low(), f.High()} {
			for _, m := range n.Missing() {
				if f.Quantity == "heat.criticality_class" || f.Quantity == "heat.class_margin" {
					add(m, figure.ID{}) // a class is no verdict: it goes last
					continue
				}
				add(m, f.ID)
			}
		}
		for _, m := range f.Open() {
			add(m, f.ID)
		}
	}
	for _, m := range slices.Concat(leftOpen(r), unproven(contacts)) {
		add(m, figure.ID{})
	}
	slices.SortStableFunc(out, func(a, b UnknownItem) int { return len(b.Figures) - len(a.Figures) })
	return out
}

// unproven lists the parts of places of which it is not known whether they stand what
// they meet.
func unproven(contacts []process.Contact) []working.Missing {
	var out []working.Missing
	for i := range contacts {
		switch c := &contacts[i]; {
		case c.Verdict != material.Unknown:
		case c.Part == "lid":
			out = append(out, working.Lacks("lid_open", c.Place))
		case c.Part != "wall":
			out = append(out, working.Lacks("part_open", c.Part+" of "+c.Place))
		default:
			out = append(out, working.Lacks("wall_open", c.Place))
		}
	}
	return out
}

// leftOpen lists what the writer did not state and the review had to assume.
func leftOpen(r *route.Route) []working.Missing {
	var out []working.Missing
	if p := r.Precursor; p != nil && !p.Stated {
		out = append(out, working.Lacks("impurities_open", ""))
	}
	for i := range r.Places {
		p := &r.Places[i]
		if !p.ClosureStated {
			out = append(out, working.Lacks("closure_open", p.Key))
		}
		if p.Cooling == nil && etchesIn(r, p.Key) {
			out = append(out, working.Lacks("cooling_open", p.Key))
		}
		if k := p.Cooling; k != nil && k.Kind == "jacket" && etchesIn(r, p.Key) &&
			!(k.Flow.Set && k.Liquid.Set && k.Power.Set) {
			out = append(out, working.Lacks("jacket_open", p.Key))
		}
		if p.Cooling != nil && p.Cooling.Kind == "ice_bath" && !p.Cooling.Ice.Set {
			out = append(out, working.Lacks("ice_open", p.Key))
		}
	}
	for i := range r.Steps {
		s := &r.Steps[i]
		if s.Attended == nil && s.Time.Set && s.Time.In("h") > 1 {
			out = append(out, working.Lacks("attended_open", s.Time.Text).In(s.Number))
		}
	}
	return out
}

// etchesIn reports whether powder is put into a place.
func etchesIn(r *route.Route, key string) bool {
	for i := range r.Steps {
		if s := &r.Steps[i]; s.In == key && slices.ContainsFunc(s.What, func(m route.Material) bool { return m.Precursor }) {
			return true
		}
	}
	return false
}
