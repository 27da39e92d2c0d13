package selection

import (
	"slices"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/hazards/wetted"
	"etchbound/reports/draft"
	"etchbound/reports/words"
)

// namedParts is how many parts that do not stand their liquor the line of page 1 names.
const namedParts = 3

// materials answers the line of what parts are made of: which do not stand what they meet,
// of which that is not known, and how many a step needs that nobody states.
func (p *reader) materials(l *Line, m matter) {
	p.verdict(l, m)
	l.Against = words.Say(m.top().Limit.Says())
	var no, each []string
	where := map[string][]string{}
	more, unstated := 0, 0
	for _, f := range m {
		name, place := draft.AgentName(f.Figure.Quantity, f.Figure.Agent), p.v.Place(f.Figure.Place)
		switch {
		case f.Verdict == figure.Exceeds && len(no) < namedParts:
			no = append(no, say("materials.part", name, place, p.madeOf(f.Figure)))
		case f.Verdict == figure.Exceeds:
			more++
		case f.Verdict != figure.UnknownVerdict:
		case p.unstated(f.Figure):
			unstated++
		default:
			if where[name] == nil {
				each = append(each, name)
			}
			where[name] = append(where[name], place)
		}
	}
	var said []string
	if more > 0 {
		no = append(no, say("materials.more", more))
	}
	if no != nil {
		said = append(said, say("materials.no", strings.Join(no, ", ")))
	}
	for i, name := range each {
		each[i] = say("materials.each", name, strings.Join(where[name], ", "))
	}
	if each != nil {
		said = append(said, say("materials.unknown", strings.Join(each, ", ")))
	}
	if unstated > 0 {
		said = append(said, say("materials.unstated", unstated))
	}
	l.Answer = strings.Join(said, "; ")
}

// unstated reports whether a figure is of a part that nobody states.
func (p *reader) unstated(id figure.ID) bool {
	for i := range p.r.Unknown {
		if u := &p.r.Unknown[i]; u.Kind == wetted.Unstated && slices.Contains(u.Figures, id) {
			return true
		}
	}
	return false
}

// madeOf is what the part of a figure is made of, as written.
func (p *reader) madeOf(id figure.ID) string {
	var out []string
	for i := range p.r.Walk.Contacts {
		if c := &p.r.Walk.Contacts[i]; wetted.ID(c.Place, c.Part) == id && !slices.Contains(out, c.Material) {
			out = append(out, c.Material)
		}
	}
	return strings.Join(out, ", ")
}
