package levers_test

import (
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/schemas/long"
)

// dusty has its acid poured onto the powder, in the place of powder into acid.
const dusty = `route: etchbound/1
title: Acid onto powder
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, purity: 98 wt%, impurities: none (test)}
places:
  pot:
    kind: bottle
    material: PTFE
    lid_material: PTFE
    capacity: 150 mL
    closure: vented
    vent: 10 mm
    cooling: {kind: water_bath, temperature: 20 degC, ua: 0.5 W/K}
steps:
  # dry, at the bottom
  - {do: charge, in: pot, what: [precursor], temperature: 20 degC}
  # the acid
  - do: add
    in: pot
    what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 mL}]
    over: 60 min
    temperature: 20 degC
  - {do: hold, in: pot, time: 24 h, temperature: 25 degC, attended: false}
`

func TestAnOrderThatGoesAgainstARuleIsTurned(t *testing.T) {
	long.Only(t)
	f := found(t, dusty)
	for i := range f.After.Findings {
		if x := &f.After.Findings[i]; x.Figure.Quantity == "order.against" && x.Verdict >= figure.Exceeds {
			t.Errorf("%s still %s\n%s", x.ID(), x.Verdict, f.Text)
		}
	}
	acid, powder := strings.Index(string(f.Text), "# the acid"), strings.Index(string(f.Text), "# dry, at")
	if acid < 0 || powder < acid {
		t.Errorf("the acid stands at %d, the powder at %d\n%s", acid, powder, f.Text)
	}
}
