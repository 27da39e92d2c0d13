package draft

import (
	"slices"

	"etchbound/hazards/meeting"
	"etchbound/reports/words"
)

// MetAt says in which place and from which step on two meet.
func MetAt(place string, step int) string {
	if step == 0 {
		return words.Of("pairs.before", place)
	}
	return words.Of("pairs.place", place, step)
}

// routeTags is everything the route holds or does, for rules of the whole.
func (b *Draft) routeTags() meeting.Tags {
	t := meeting.Tags{}
	t.Add(0, "always")
	for _, c := range b.Places {
		for k, step := range c.Tags {
			if old, ok := t[k]; !ok || step < old {
				t[k] = step
			}
		}
	}
	for i := range b.Route().Steps {
		s := &b.Route().Steps[i]
		if tag := s.Verb().Tag; tag != "" {
			t.Add(s.Number, meeting.Tag(tag))
		}
		if s.Attended != nil && !*s.Attended {
			t.Add(s.Number, "unattended")
		}
		if s.Time.Set && (s.Attended == nil || !*s.Attended) { // who says nothing watches nothing
			t.Add(s.Number, "unwatched")
		}
	}
	for id := range b.ByID {
		switch id.Quantity {
		case "fluoride.hf_equivalent":
			t.Add(0, "hf")
		case "gas.hydrogen.total":
			t.Add(0, "hydrogen")
		case "air.scrubber.base":
			t.Add(0, "scrubber")
		case "gas.hydride.bound":
			t.Add(0, "hydride")
		}
	}
	for i := range b.Review.Walk.Evolved { // as the route is written: not what a wrong acid would give
		t.Add(b.Review.Walk.Evolved[i].Step, "poison_gas")
	}
	return t
}

// Poisons are the poisonous gases that can form in a container, each once, and last what is
// said where nobody knows which.
func (b *Draft) Poisons(place string) []string {
	var out []string
	unnamed := false
	all := b.Review.Walk.Evolved
	for i := range all {
		switch x := &all[i]; {
		case x.Place != place:
		case x.Gas == nil:
			unnamed = true
		case !slices.Contains(out, x.Gas.Name):
			out = append(out, x.Gas.Name)
		}
	}
	if unnamed {
		out = append(out, words.Of("label.poison_unknown"))
	}
	return out
}
