package selection

import (
	"slices"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/hazards/incompatible"
	"etchbound/hazards/meeting"
	"etchbound/reports/draft"
)

// met is two things that must not meet, and where they do in the route.
type met struct {
	*meeting.Pair
	where  []string // those alone that stop work, if one does
	places []string // the same, the keys alone
	stops  bool     // it does so unasked, or nobody knows
}

// meets are the pairs of the rules that meet in the route.
func meets(d *draft.Draft) []met {
	var out []met
	for i := range meeting.Pairs() {
		m, from := met{Pair: &meeting.Pairs()[i]}, []int(nil)
		for j := range d.Places {
			step, ok := d.Places[j].Meets(m.Pair)
			if !ok {
				continue
			}
			key := d.Places[j].Place.Key
			switch stops := stopped(d, m.Pair, key); {
			case stops && !m.stops: // where a step means it is not told beside where none does
				m.stops, m.places, from = true, nil, nil
			case !stops && m.stops:
				continue
			}
			m.places, from = append(m.places, key), append(from, step)
		}
		if m.places != nil {
			m.where = metAt(m.places, from)
			out = append(out, m)
		}
	}
	return out
}

// metAt are some places with the steps from which something meets in them, each step once.
func metAt(places []string, from []int) []string {
	var out []string
	for i, step := range from {
		if slices.Index(from, step) < i {
			continue // it stands with the first
		}
		var keys []string
		for j, key := range places {
			if from[j] == step {
				keys = append(keys, key)
			}
		}
		out = append(out, draft.MetAt(strings.Join(keys, ", "), step))
	}
	return out
}

// stopped reports whether a pair that meets in a place has a finding that stops work.
func stopped(d *draft.Draft, pair *meeting.Pair, place string) bool {
	id := figure.ID{Quantity: incompatible.Quantity, Place: figure.At(place), Agent: pair.ID}
	if d.Set.Get(id) == nil { // nobody judged it
		return pair.Severity == "3"
	}
	return slices.ContainsFunc(d.Review.Findings, func(f figure.Finding) bool {
		return f.Figure == id && f.Verdict.Rank() == figure.Exceeds.Rank()
	})
}

// namedPairs is how many pairs that meet the line of page 1 names; the rest it counts.
const namedPairs = 2

// pairsMet answers the line of what must not meet: which pairs do, where and from which
// step, and of which places that is not known.
func (p *reader) pairsMet(l *Line, m matter) {
	p.verdict(l, m)
	var said []string
	more := 0
	for i := range p.met {
		x := &p.met[i]
		if !x.stops {
			continue
		}
		if len(said) == namedPairs {
			more++
			continue
		}
		said = append(said, say("pairs.met", x.Names, strings.Join(x.where, "; ")))
	}
	switch {
	case more == 1:
		said = append(said, say("pairs.one_more"))
	case more > 1:
		said = append(said, say("pairs.more", more))
	}
	var before []string
	for _, f := range m {
		if f.Figure.Agent == incompatible.Before {
			before = append(before, f.Figure.Place.Key())
		}
	}
	if before != nil {
		said = append(said, say("pairs.before", strings.Join(before, ", ")))
	}
	if walls := wallsUnread(m); walls != nil && said == nil { // beside others the hold point on materials names them
		said = append(said, say("pairs.perhaps", strings.Join(walls, ", ")))
	}
	for _, f := range m {
		if f.Figure.Place == figure.Site {
			said = append(said, say("pairs.stock"))
			break
		}
	}
	l.Answer = strings.Join(said, "; ")
}

// onlyWalls reports whether all that is not known of pairs is what walls are made of.
func onlyWalls(m matter) bool {
	for _, f := range m {
		if f.Verdict != figure.UnknownVerdict || wallsUnread(matter{f}) == nil {
			return false
		}
	}
	return m != nil
}

// wallsUnread are the places of which nobody says what all of them is made of, where that
// could be one of a pair.
func wallsUnread(m matter) []string {
	var out []string
	for _, f := range m {
		key := f.Figure.Place.Key()
		wall := slices.ContainsFunc(meeting.Pairs(), func(p meeting.Pair) bool {
			_, of := p.Wall()
			return of && p.ID == f.Figure.Agent
		})
		if wall && f.Verdict == figure.UnknownVerdict && !slices.Contains(out, key) {
			out = append(out, key)
		}
	}
	return out
}
