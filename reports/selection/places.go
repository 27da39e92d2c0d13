package selection

import (
	"slices"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/reports/draft"
	"etchbound/reports/words"
)

// places are where something is, each once: the steps in their order and joined where
// they follow each other, then the rest as they came.
func (v voice) places(all []figure.Place) string {
	var steps []int
	var rest []string
	for _, at := range all {
		if n, ok := at.Step(); ok {
			steps = append(steps, n)
		} else if s := v.Place(at); !at.IsZero() && !slices.Contains(rest, s) {
			rest = append(rest, s)
		}
	}
	slices.Sort(steps)
	steps = slices.Compact(steps)
	switch len(steps) {
	case 0:
	case 1:
		rest = slices.Insert(rest, 0, v.Place(figure.Step(steps[0])))
	default:
		rest = slices.Insert(rest, 0, say("places.steps", strings.Join(words.Runs(steps), ", ")))
	}
	return strings.Join(rest, ", ")
}

// notKnown are figures that have no number, by what they are of: agents that lack it at
// the same places are named together.
func (p *reader) notKnown(ids []figure.ID) string {
	var agents []string
	at := map[string][]figure.Place{}
	for _, id := range ids {
		if f := p.figs.Get(id); f != nil && !f.Of().IsZero() {
			id = f.Of()
		}
		agent := ""
		if id.Agent != "" {
			agent = draft.AgentName(id.Quantity, id.Agent)
		}
		if at[agent] == nil {
			agents = append(agents, agent)
		}
		at[agent] = append(at[agent], id.Place)
	}
	var where []string // of each agent, then those of the same places joined
	by := map[string][]string{}
	for _, agent := range agents {
		w := p.v.places(at[agent])
		if by[w] == nil {
			where = append(where, w)
		}
		by[w] = append(by[w], agent)
	}
	var out []string
	for _, w := range where {
		names := strings.Join(by[w], ", ")
		switch {
		case names == "":
			out = append(out, w)
		case w == "":
			out = append(out, names)
		default:
			out = append(out, say("places.of", names, w))
		}
	}
	return strings.Join(slices.DeleteFunc(out, func(s string) bool { return s == "" }), ", ")
}
