package draft

import (
	"strings"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// a line is what a quantity of an agent in a case comes to at each of its places.
type line struct {
	values []string // what it is there, in the order of the route
	places []string // where that is so
}

// glance has a row for each quantity, with what it comes to at each place by the worst
// law. It is what is printed; what each number holds for is folded behind it.
func (b *Draft) glance(want func(*figure.Figure) bool) document.Table {
	t := document.Table{Caption: words.Of("glance.caption"), Columns: document.Columns("col.figure", "glance.at")}
	before := ""
	for _, x := range b.tallies(want) {
		name := glanceName(x.id)
		if more, same := strings.CutPrefix(name, before+", "); same && before != "" {
			name = words.Of("glance.more", more)
		} else if before = number.LabelOf(x.id.Quantity); name != before && !strings.HasPrefix(name, before+", ") {
			before = ""
		}
		t.Rows = append(t.Rows, document.Row(name, x.line.text()))
	}
	return t
}

func (b *Draft) placeOf(f *figure.Figure) string {
	if f.Place.IsZero() {
		return ""
	}
	return b.PlaceName(f.Place)
}

func glanceName(id figure.ID) string {
	s := []string{number.LabelOf(id.Quantity)}
	if id.Agent != "" {
		s = append(s, AgentName(id.Quantity, id.Agent))
	}
	if !id.Case.IsZero() {
		s = append(s, CaseName(id.Case))
	}
	return strings.Join(s, ", ")
}

// add puts a value; one for the whole route gives way to the same at a place.
func (l *line) add(place, value string) {
	for i, v := range l.values {
		if v == value && place != "" && l.places[i] == "" {
			l.places[i] = place
			return
		}
		if v == value && place != "" {
			l.places[i] += ", " + place
			return
		}
	}
	l.values, l.places = append(l.values, value), append(l.places, place)
}

func (l *line) text() string {
	out := make([]string, len(l.values))
	for i, v := range l.values {
		if out[i] = v; l.places[i] != "" {
			out[i] = words.Of("glance.place", l.places[i], v)
		}
	}
	return strings.Join(out, "; ")
}

// verdicts is the worst verdict on each figure by any of its laws: a number stands for
// all that it repeats.
func (b *Draft) verdicts() map[figure.ID]figure.Verdict {
	out := map[figure.ID]figure.Verdict{}
	for i := range b.Review.Findings {
		f := &b.Review.Findings[i]
		id := b.shown(f.Figure)
		out[id] = max(out[id], f.Verdict)
	}
	return out
}

// shown is the id under which a figure is seen at a glance: that of the place and agent
// it was found for, without a law. What repeats another case keeps its own.
func (b *Draft) shown(id figure.ID) figure.ID {
	if f, ok := b.ByID[id]; ok {
		m, ok := b.ByID[f.Of()]
		if ok && m.Case.Failure == id.Case.Failure && m.Case.State == id.Case.State {
			id = m.ID
		}
	}
	worst := id
	if worst.Case.Branch = ""; b.ByID[worst] != nil {
		return worst
	}
	return id
}

// verdictAfter is a verdict behind a number; one that is within, or none, is not said.
func verdictAfter(v figure.Verdict) string {
	if v == figure.Within {
		return ""
	}
	return words.Of("glance.verdict", VerdictName(v))
}
