// Package doubt lists what a review does not know: what is missing and how to get
// it, and what is assumed and what that moves. It must not know how a figure is
// found, nor which verdict it has.
package doubt

import (
	"fmt"
	"slices"

	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

// UnknownItem is something missing that could change the answer.
type UnknownItem struct {
	ID      string
	Text    string
	Measure string
	Figures []figure.ID
}

// Unknown lists what is missing: first what most figures lack, then what the
// writer left open.
func Unknown(r *route.Route, figs []figure.Figure) []UnknownItem {
	var out []UnknownItem
	at := map[string]int{}
	add := func(id string, fig figure.ID) {
		i, ok := at[id]
		if !ok {
			i = len(out)
			at[id] = i
			text, measure := ask(id)
			out = append(out, UnknownItem{ID: id, Text: text, Measure: measure})
		}
		if !fig.IsZero() && !slices.Contains(out[i].Figures, fig) {
			out[i].Figures = append(out[i].Figures, fig)
		}
	}
	for i := range figs {
		f := &figs[i]
		if !f.Of.IsZero() {
			continue
		}
		for _, n := range []interface{ Missing() []string }{f.Value, f.Low, f.High} {
			for _, id := range n.Missing() {
				if f.Quantity == "heat.criticality_class" || f.Quantity == "heat.class_margin" {
					add(id, figure.ID{}) // a class is no verdict: it goes last
					continue
				}
				add(id, f.ID)
			}
		}
	}
	leftOpen(r, func(id, text, measure string) {
		out = append(out, UnknownItem{ID: id, Text: text, Measure: measure})
	})
	slices.SortStableFunc(out, func(a, b UnknownItem) int { return len(b.Figures) - len(a.Figures) })
	return out
}

// leftOpen lists what the writer did not state and the review had to assume.
func leftOpen(r *route.Route, add func(id, text, measure string)) {
	if p := r.Precursor; p != nil && !p.Stated {
		add("precursor.impurities", "impurities of the powder are not stated: up to 5 wt% free metal on top is "+
			"counted at the dangerous end", "the supplier's certificate or an analysis; none has to be written with its source")
	}
	for i := range r.Places {
		p := &r.Places[i]
		if !p.ClosureStated {
			add(p.At+".closure", fmt.Sprintf("closure of %s is not stated: it counts as closed", p.Key),
				"state open, vented or closed")
		}
		if p.Cooling == nil && etchesIn(r, p.Key) {
			add(p.At+".cooling", fmt.Sprintf("what cools %s is not stated: the room alone is counted", p.Key),
				"state it under cooling, and kind: none where nothing does")
		}
		if p.Cooling != nil && p.Cooling.Kind == "ice_bath" && !p.Cooling.Ice.Set {
			add(p.At+".cooling.ice", fmt.Sprintf("how much ice stands around %s is not stated", p.Key),
				"weigh it, and state it under cooling: ice")
		}
	}
	for i := range r.Steps {
		s := &r.Steps[i]
		if s.Attended == nil && s.Time.Set && s.Time.In("h") > 1 {
			add(s.At+".attended", fmt.Sprintf("step %d lasts %s and does not say whether it is attended",
				s.Number, s.Time.Text), "state attended: true or false")
		}
	}
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
