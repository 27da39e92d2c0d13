package incompatible

import (
	"strings"

	"etchbound/chemicals/material"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/meeting"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Quantity is the name of the figures of this package.
const Quantity = "meeting.pair"

// Before is the agent of the figure of a container of which nobody says what earlier
// stood in it.
const Before = "held_before"

// Read gives a figure for each pair that meets in a place, and for each container that
// takes waste and of which nobody says what earlier stood in it; and for each two of the
// stock of the site that do not stand together.
func Read(c route.Case, w *working.Sheet, k *process.Walk) []figure.Figure {
	var out []figure.Figure
	all := meeting.Of(c.Route)
	for i := range all {
		at := &all[i]
		for _, m := range at.Met() {
			if f, tells := met(at, &m, k); tells {
				out = append(out, f)
			}
		}
		for _, p := range at.Perhaps() {
			key := at.Place.Key
			out = append(out, figure.Figure{ID: figure.ID{Quantity: Quantity, Place: figure.At(key), Agent: p.ID},
				Value:      working.Absent("n", "1", working.Lacks("pair_of_wall", key)),
				Conditions: phrase.Of("meeting.perhaps", p.Names, key)})
		}
		if at.UnknownBefore() && len(at.Tags) > 0 {
			out = append(out, figure.Figure{
				ID:         figure.ID{Quantity: Quantity, Place: figure.At(at.Place.Key), Agent: Before},
				Value:      working.Absent("n", "1", working.Lacks(Before, at.Place.Key)),
				Conditions: phrase.Of("meeting.before", at.Place.Key)})
		}
	}
	out = append(out, stock(c.Site)...)
	for i := range out {
		f := &out[i]
		f.Value = w.Keep(f.Value)
		f.SetRange(f.Value.V, f.Value.V)
	}
	return out
}

// met is the figure of a pair in a place; none where it is only to be noted, where it had
// met as meant before it came, or where the wall that it needs stands it.
func met(at *meeting.Contents, m *meeting.Met, k *process.Walk) (figure.Figure, bool) {
	p := m.Pair
	if p.Severity == "1" || m.Came && m.How != meeting.Unasked {
		return figure.Figure{}, false
	}
	medium := p.A.String()
	kinds, wall := p.Wall()
	if wall && material.Judges(medium) && !process.WallGives(k.Contacts, at.Place, medium, kinds) {
		return figure.Figure{}, false
	}
	key := at.Place.Key
	f := figure.Figure{ID: figure.ID{Quantity: Quantity, Place: figure.At(key), Agent: p.ID}}
	switch {
	case p.A.Is("not_held"):
		f.Conditions = phrase.Of("meeting.not_held", key, m.Step)
		if p.B.Same(p.A) { // it may be one of those that count by themselves
			f.Conditions = phrase.Of("meeting.not_held_alone", key, m.Step)
			if m.Step == 0 {
				f.Conditions = phrase.Of("meeting.not_held_before", key)
			}
		}
		f.Value = working.Absent("n", "1", working.Lacks("pair_of_unheld", key).In(m.Step))
		return f, true
	case m.How == meeting.Meant:
		f.Conditions = phrase.Of("meeting.meant", p.Names, m.Step, key, labels(p.Judged))
	case m.How == meeting.Washed:
		f.Conditions = phrase.Of("meeting.washed", p.Names, key, m.Step)
	case m.Step == 0:
		f.Conditions = phrase.Of("meeting.stood", p.Names, key, p.Result)
	case m.Before:
		f.Conditions = phrase.Of("meeting.residue", p.Names, key, m.Step, p.Result)
	default:
		f.Conditions = phrase.Of("meeting.unasked", p.Names, key, m.Step, p.Result)
	}
	n := 0.0
	if m.How == meeting.Unasked {
		n = 1
	}
	f.Value = working.Exact("n", "1", n, "whether the pair meets unasked")
	return f, true
}

// labels are the names of some quantities.
func labels(quantities []string) string {
	var out []string
	for _, q := range quantities {
		out = append(out, figure.Row(q).Label)
	}
	return strings.Join(out, "; ")
}

// stock are the pairs of the stock of a site that do not stand together: 1 where they do, 0
// where each stands in a place of its own, not known where nobody says.
func stock(s *route.Site) []figure.Figure {
	if s == nil {
		return nil
	}
	var out []figure.Figure
	for _, x := range meeting.Shelf(s.Stock) {
		why := strings.Join(x.Why, "; ")
		f := figure.Figure{
			ID:         figure.ID{Quantity: Quantity, Place: figure.Site, Agent: figure.Together(x.Slugs[0], x.Slugs[1])},
			Conditions: phrase.Of("meeting.shelf", x.One, x.Other, why),
			Value:      working.Absent("n", "1", working.Lacks("shelf", x.One+", "+x.Other))}
		switch x.Stands {
		case meeting.Parted:
			f.Conditions = phrase.Of("meeting.shelf_parted", x.One, x.Other)
			f.Value = working.Exact("n", "1", 0, "whether the two stand in one place")
		case meeting.Together:
			f.Conditions = phrase.Of("meeting.shelf_together", x.One, x.Other, x.In, why)
			f.Value = working.Exact("n", "1", 1, "whether the two stand in one place")
		}
		out = append(out, f)
	}
	return out
}
