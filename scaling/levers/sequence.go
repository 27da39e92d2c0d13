package levers

import (
	"slices"
	"strconv"

	"etchbound/hazards/phrase"
	"etchbound/hazards/proposal"
	"etchbound/hazards/route"
	"etchbound/schemas/edit"
)

// order is two steps that fill the same place, one after the other there, the other way
// round. The numbers that it names are those of the file as written.
func (b *bench) order(r *row) {
	for i := range b.route.Steps {
		s := &b.route.Steps[i]
		t := b.after(s)
		if t == nil || !fills(s) || !fills(t) {
			continue
		}
		b.add(r, level{proposal.Change{
			Edit: edit.Edit{Path: stepPath(s, ""), With: stepPath(t, ""),
				Note: "proposed, not tried; was behind the step that follows it"},
			Says: phrase.Of("lever.order", strconv.Itoa(t.Number), strconv.Itoa(s.Number))}})
	}
}

// after is the next step that touches the place of one; nil where there is none.
func (b *bench) after(s *route.Step) *route.Step {
	i := slices.IndexFunc(b.route.Steps[s.Number:], func(t route.Step) bool {
		return t.Works() == s.Works() || t.Into == s.Works()
	})
	if i < 0 {
		return nil
	}
	return &b.route.Steps[s.Number+i]
}

// fills reports whether a step brings something to what is there, and does nothing else.
func fills(s *route.Step) bool { return s.Verb().Does == route.Fills && len(s.What) > 0 }

// retained is less liquid that stays with the solid, where it is stated.
func (b *bench) retained(r *row) {
	for i := range b.route.Steps {
		s := &b.route.Steps[i]
		if !s.Retained.Set || s.Retained.HasRange() || s.Retained.Unit() != "mL/g" {
			continue
		}
		var levels []level
		for _, v := range r.values {
			if v < s.Retained.In("mL/g")*(1-1e-9) {
				levels = append(levels, level{change(r, stepPath(s, "retained"), text(v)+" mL/g", stepName(s),
					s.Retained.Text)})
			}
		}
		b.add(r, levels...)
	}
}
