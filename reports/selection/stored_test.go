package selection_test

import (
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/reports/draft"
	"etchbound/reports/selection"
	"etchbound/schemas/long"
)

const stored = `route: etchbound/1
title: vial
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 0.1 g, impurities: none (certificate)}
places:
  pot: {kind: beaker, material: PTFE, closure: open, capacity: 250 mL, cooling: {kind: none}}
  drum: {kind: drum, material: HDPE, closure: vented, capacity: 5 L}
  vial: {kind: vial, material: glass, closure: CLOSURE, capacity: 25 mL}
steps:
  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 mL}], temperature: 20 degC}
  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 20 degC}
  - {do: hold, in: pot, time: 24 h, temperature: 20 degC}
  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 100 mL}], cycles: 8, retained: 1 mL/g}
  - {do: redisperse, in: pot, what: [{substance: water, volume: VOLUME}]}
  - {do: transfer, in: pot, into: vial}
`

const freezes = "  - {do: store, in: vial, time: 60 d, temperature: -20 degC, gas: argon}\n"

// A vial that is shut is never called open: frozen to the brim, where its pressure is not known,
// or forgotten at the end of the route, where the gas of all its flakes bounds it. By hand, 0.1 g of
// Ti3AlC2 are 0.514 mmol with 4.5 of hydrogen each, in 15 mL of gas: 377 kPa at the best estimate.
func TestWhatIsShutIsNotCalledOpen(t *testing.T) {
	long.NotShort(t)
	for _, tt := range []struct {
		closure, volume, store, says string
		verdict                      figure.Verdict
	}{
		{"closure: closed, ", "24 mL", freezes, "pressure is not known", figure.Exceeds},
		{"closure: closed, ", "10 mL", "", "vial, shut as written, up to 430 kPa", figure.Exceeds},
		{"", "10 mL", "", "vial, closure not stated, counted as shut, up to 430 kPa", figure.Exceeds},
	} {
		text := strings.NewReplacer("closure: CLOSURE, ", tt.closure, "VOLUME", tt.volume).Replace(stored) + tt.store
		r := written(t, text, "")
		l := line(selection.Read(draft.New(&r, draft.Options{}), nil), "stored")
		if !strings.Contains(l.Answer, tt.says) || l.Verdict != tt.verdict {
			t.Errorf("%s, %s: %q, %v", tt.closure, tt.volume, l.Answer, l.Verdict)
		}
	}
}

const poured = `route: etchbound/1
title: rinse
basis: {status: invented}
places:
  drum: {kind: drum, material: HDPE, closure: vented, capacity: 5 L}
steps:
  - {do: charge, in: drum, what: [{substance: hydrofluoric acid, strength: 1 wt%, volume: 1 L}], temperature: 20 degC}
  - {do: neutralise, in: drum, what: [{substance: AGENT, mass: 60 g}], over: 1 h, temperature: 20 degC}
`

const melted = `route: etchbound/1
title: melt
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (certificate)}
places:
  pot: {kind: crucible, material: alumina, closure: open, capacity: 30 mL}
  drum: {kind: drum, material: HDPE, closure: vented, capacity: 5 L}
steps:
  - {do: melt, in: pot, what: [precursor, {substance: zinc chloride, mass: 1.05 g}], time: 5 h, temperature: 550 degC}
  - {do: cool, in: pot, time: 4 h, temperature: 25 degC}
  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 200 mL}], cycles: 3}
`

// What holds no calcium takes the acid and leaves the fluoride dissolved (by the reaction: sodium
// fluoride is soluble), and is not said to bind it. Where no acid is walked into the waste of a
// melt, that of its chloride is told: 1 g is 5.14 mmol of Al, 15.4 of HCl, 0.562 g, and 0.571 g of lime.
func TestOnlyCalciumIsSaidToBindFluoride(t *testing.T) {
	for _, row := range []struct{ acid, agent, says string }{
		{"hydrofluoric", "sodium hydrogencarbonate", "binds all acid, no fluoride"},
		{"hydrofluoric", "calcium hydroxide", "binds all acid and fluoride"},
		{"hydrofluoric", "calcium chloride", "No: calcium chloride brings no base"},
		{"tetrafluoroboric", "calcium hydroxide", "cold, none of the fluoride that BF4-"},
		{"", "", "of aluminium chloride stays behind makes up to 0.57 g of hydrogen chloride with water, which up to 0.58 g"},
	} {
		text := strings.NewReplacer("AGENT", row.agent, "hydrofluoric", row.acid).Replace(poured)
		if row.agent == "" {
			text = melted
		}
		r := written(t, text, "")
		l := line(selection.Read(draft.New(&r, draft.Options{}), nil), "neutralise")
		if !strings.Contains(l.Answer, row.says) {
			t.Errorf("%v: %q", row, l.Answer)
		}
	}
}
