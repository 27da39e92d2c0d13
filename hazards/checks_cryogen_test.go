package hazards_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/schemas/nearly"
)

// 10 L of liquid nitrogen, 0.807 kg/L and 28.014 g/mol, are 7048 L at 25 degC: in 40 m3 they
// leave exp(-7.048/40) = 0.8385 of the oxygen, 17.52 of 20.9 vol%. 2 kg of dry ice (44.009
// g/mol) are 1112 L, in a floor layer of a tenth of the room far above what is breathed.
// With a vessel of 25 L in the room instead of the step there are 17,619 L, and 13.45 vol%
// (by hand). Below 19.5 vol% work stops. What freezes and does not say with what, or how much of it, is not known, and
// neither is the cylinder of a gas that a step names; a machine gives none.
func TestWhatBoilsOffToCool(t *testing.T) {
	const none = "cylinder: 0 L, dewar: 0 L"
	for _, row := range []struct {
		step, site string
		oxygen     float64 // -1: not known, -2: no figure
	}{
		{"do: freeze, in: cup, cryogen: liquid_nitrogen, cryogen_amount: 10 L", none, 17.52},
		{"do: freeze, in: cup, cryogen: liquid_nitrogen, cryogen_amount: 8.07 kg", none, 17.52},
		{"do: freeze, in: cup, cryogen: dry_ice, cryogen_amount: 2 kg", none, 20.33},
		{"do: freeze, in: cup, cryogen: none", none, -2},
		{"do: freeze, in: cup, cryogen: none", "cylinder: 0 L", -1},
		{"do: freeze, in: cup, cryogen: none", "dewar: 0 L", -1},
		{"do: freeze, in: cup, cryogen: none", "cylinder: 0 L, dewar: 25 L", 13.45},
		{"do: freeze, in: cup, temperature: -20 degC", none, -1},
		{"do: freeze, in: cup", none, -1},
		{"do: freeze, in: cup, temperature: -120 degC", none, -1},
		{"do: store, in: cup, time: 1 d, temperature: -80 (-95 to -70) degC", none, -1},
		{"do: store, in: cup, time: 1 d, temperature: -80 (-85 to -70) degC", none, -2},
		{"do: freeze, in: cup, cryogen: liquid_nitrogen", none, -1},
		{"do: hold, in: cup, time: 10 min, temperature: 20 degC, gas: argon, gas_flow: 1 L/min", "dewar: 0 L", -1},
		{"do: hold, in: cup, time: 10 min, temperature: 20 degC, gas: argon, gas_flow: 1 L/min",
			"cylinder: 2 m3, dewar: 0 L", 19.88},
	} {
		c := newCase(t, load(t, `route: etchbound/1
title: cold
basis: {status: invented}
places: {cup: {kind: beaker, material: PTFE, capacity: 500 mL, closure: open}}
steps:
  - {do: charge, in: cup, what: [{substance: water, volume: 100 mL}], temperature: 20 degC}
  - {`+row.step+"}\n"))
		s, problems, err := route.LoadSite("s.yaml", strings.NewReader(
			"site: etchbound/1\ntitle: room\nroom: {volume: 40 m3, "+row.site+"}\n"))
		if err != nil || s == nil {
			t.Fatal(err, problems)
		}
		c.Site, c.Brief, c.Limits = s, true, limit.Base()
		rv := must(t, c)
		x := -2.0
		for i := range rv.Figures {
			if f := &rv.Figures[i]; f.Quantity == "air.oxygen" && f.Place == figure.Room {
				if x = f.Low().V; f.Danger().Unknown() {
					x = -1
				}
			}
		}
		if !nearly.To(x, row.oxygen, 0.03) {
			t.Errorf("%s%s: %g vol%% of oxygen, want %g", row.step, row.site, x, row.oxygen)
		}
		stops := slices.ContainsFunc(rv.Holds, func(h hazards.Hold) bool { return h.ID == "oxygen" })
		if stops != (row.oxygen > -2 && row.oxygen < 19.5) { // what nobody states may be as much as a bench has
			t.Errorf("%s%s: %g vol%% of oxygen stops work: %v", row.step, row.site, x, stops)
		}
	}
}
