package review

import (
	"slices"
	"strings"
	"testing"

	"etchbound/hazards/meeting"
	"etchbound/reports/document"
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

const rareRoute = `route: etchbound/1
title: Reactions to be named
basis: {status: invented}
places: {pot: {kind: beaker, material: PTFE, capacity: 250 mL, closure: open}}
steps:
  - {do: DO, in: pot, what: [WHAT], temperature: 20 degC}
`

// What a complex gives up and what a melt gives off are named as reactions (balanced by hand:
// B 1, F 4, H 6, O 3, charge -1; Cu 2, Cl 4), and how a salt of copper gets at people.
func TestReactionsOfComplexesAndMeltsAreNamed(t *testing.T) {
	const salt = "{substance: copper(II) chloride, mass: 4 g}"
	for _, c := range []struct {
		do, what, equation, way string
		named                   bool
	}{
		{"charge", "{substance: NH4BF4, mass: 5 g}, {substance: hydrochloric acid, strength: 6 mol/L, volume: 40 mL}",
			"BF₄⁻ + 3 H₂O → B(OH)₃ + 3 HF + F⁻", "makes HF", true},
		{"charge", "{substance: LiF, mass: 5 g}, {substance: hydrochloric acid, strength: 6 mol/L, volume: 40 mL}",
			"BF₄⁻", "makes HF", false},
		{"melt", salt, "2 CuCl₂ → 2 CuCl + Cl₂", "eyes, skin", true},
		{"charge", salt + ", {substance: water, volume: 40 mL}", "CuCl₂", "eyes, skin", false},
	} {
		r := fixture.Brief(t, strings.NewReplacer("DO", c.do, "WHAT", c.what).Replace(rareRoute))
		b := from(draft.New(&r, draft.Options{}))
		text := func(of document.Block) (out string) {
			if t, ok := of.(document.Table); ok {
				for _, row := range t.Rows {
					for _, cell := range row {
						out += cell.Text + "\n"
					}
				}
			}
			return out
		}
		if got := text(b.equations()); strings.Contains(got, c.equation) != c.named {
			t.Errorf("%s %s: %s", c.do, c.what, got)
		}
		if got := text(b.forms()); !strings.Contains(got, c.way) {
			t.Errorf("%s: %s", c.what, got)
		}
	}
}
