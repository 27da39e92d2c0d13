package review

import (
	"slices"
	"strings"
	"testing"

	"etchbound/hazards/meeting"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
)

const unheldRoute = `route: etchbound/1
title: Something nobody holds
basis: {status: invented}
places: {pot: {kind: beaker, material: PTFE, capacity: 250 mL, closure: open}}
steps:
  - {do: charge, in: pot, what: [{substance: zorblium oxide, mass: 3 g, not_held: true FORMULA}], temperature: 20 degC}
`

// What is not held meets nothing without a word: whatever else comes into its place,
// the pair is said not to be known, and a spill counts as one of acid fluoride unless
// the formula rules fluorine out.
func TestWhatIsNotHeldMeetsNothingSilently(t *testing.T) {
	const more = "  - {do: mix, in: pot, what: [{substance: water, volume: 50 mL}], temperature: 20 degC}\n"
	for _, c := range []struct {
		name, formula, step string
		pair, spill         bool
	}{
		{"with water", "", more, true, true},
		{"alone", "", "", false, true},
		{"without fluorine", ", formula: ZrO2", more, true, false},
	} {
		r := fixture.Brief(t, strings.Replace(unheldRoute, " FORMULA", c.formula, 1)+c.step)
		b := from(draft.New(&r, draft.Options{}))
		i := slices.IndexFunc(meeting.Pairs(), func(p meeting.Pair) bool { return p.A.Is("not_held") })
		if met := len(b.meet(&meeting.Pairs()[i])) > 0; met != c.pair {
			t.Errorf("%s: the pair is told: %v", c.name, met)
		}
		if words := b.SpillWords() != nil; words != c.spill {
			t.Errorf("%s: what to do where it is spilled is told: %v", c.name, words)
		}
		if b.SpillLine() == nil {
			t.Errorf("%s: no first line on a spill", c.name)
		}
	}
}
