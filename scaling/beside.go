package scaling

import (
	"cmp"
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
)

// beside is a reviewed route as it stands beside a proposed one: its containers have the
// keys that they have there, and its steps are known by the numbers that they have there.
type beside struct {
	was, is *hazards.Review
	numbers map[int]int
}

// renamed is the reviewed case with the keys that its containers have in the proposed one.
func renamed(reviewed, proposed route.Case) (route.Case, []InputDiff) {
	keys := route.Renamed(reviewed.Route, proposed.Route)
	var told []InputDiff
	for i := range reviewed.Route.Places {
		if was := reviewed.Route.Places[i].Key; keys[was] != "" {
			told = append(told, InputDiff{Where: "place " + keys[was], What: "name", Was: was, Is: keys[was]})
		}
	}
	if len(keys) > 0 {
		reviewed.Route = reviewed.Route.WithKeys(keys)
	}
	return reviewed, told
}

// place is a place of the reviewed route as it is known in the proposed one; not so a step
// that is left out there.
func (b *beside) place(p figure.Place) (out figure.Place, there bool) {
	n, isStep := p.Step()
	if !isStep {
		return p, true
	}
	is, there := b.numbers[n]
	return figure.Step(is), there
}

// figures are those of the reviewed route, by the ids that they have in the proposed one.
func (b *beside) figures() map[figure.ID]*figure.Figure {
	out := make(map[figure.ID]*figure.Figure, len(b.was.Figures))
	for i := range b.was.Figures {
		id := b.was.Figures[i].ID
		var there bool
		if id.Place, there = b.place(id.Place); there {
			out[id] = &b.was.Figures[i]
		}
	}
	return out
}

// matter is what a finding is of, wherever it is.
type matter struct {
	quantity, agent, failure string
	limit                    limit.Key
}

func matterOf(id figure.FindingID) matter {
	return matter{id.Figure.Quantity, id.Figure.Agent, id.Figure.Case.Failure, id.Limit}
}

// turned lists the findings that say something else. What a step that is left out said is
// gone with it and not listed.
func (b *beside) turned() []VerdictChange {
	was, worst := map[figure.FindingID]figure.Finding{}, map[matter]figure.Verdict{}
	var ids []figure.FindingID
	for _, f := range b.was.Findings {
		id := f.ID()
		worst[matterOf(id)] = max(worst[matterOf(id)], f.Verdict) // what is not known is less than what exceeds
		var there bool
		if id.Figure.Place, there = b.place(id.Figure.Place); there {
			was[id] = f
			ids = append(ids, id)
		}
	}
	is := map[figure.FindingID]figure.Finding{}
	for _, f := range b.is.Findings {
		is[f.ID()] = f
		if _, there := was[f.ID()]; !there {
			ids = append(ids, f.ID())
		}
	}
	var out []VerdictChange
	for _, id := range ids {
		if x, y := was[id], is[id]; x.Verdict != y.Verdict {
			out = append(out, VerdictChange{id, x, y, x.Figure.IsZero() && worst[matterOf(id)] >= y.Verdict})
		}
	}
	slices.SortStableFunc(out, func(a, b VerdictChange) int {
		return cmp.Or(cmp.Compare(further(&b), further(&a)), cmp.Compare(supposed(&a), supposed(&b)))
	})
	return out
}

// further is by how much a finding got worse.
func further(v *VerdictChange) int {
	if v.Elsewhere {
		return 0
	}
	return v.Is.Verdict.Rank() - v.Was.Verdict.Rank()
}

// supposed tells what happens from what would if something failed.
func supposed(v *VerdictChange) int {
	if v.ID.Figure.Case.Supposed() {
		return 1
	}
	return 0
}

// lacked is what the reviewed route lacked, as it is told in the proposed one.
func (b *beside) lacked() map[working.Missing]bool {
	out := map[working.Missing]bool{}
	for _, u := range b.was.Unknown {
		m := u.Missing
		if is, there := b.numbers[m.Step]; there {
			m.Step = is
		}
		if n, key, of := route.FromAt(m.Subject.String()); of {
			if is, there := b.numbers[n]; there {
				m.Subject = working.Subject(route.At(is, key))
			}
		}
		out[m] = true
	}
	return out
}

// stops are the hold points of the proposed route that the reviewed one has not.
func (b *beside) stops() []hazards.Hold {
	was := map[string]bool{}
	for i := range b.was.Holds {
		was[b.was.Holds[i].ID] = true
	}
	return slices.DeleteFunc(slices.Clone(b.is.Holds), func(h hazards.Hold) bool { return was[h.ID] })
}
