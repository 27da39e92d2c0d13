package alone_test

import (
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/alone"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

const leftAlone = `route: etchbound/1
title: left alone
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (certificate)}
places:
  etch: {kind: bottle, material: PTFE, capacity: 500 mL, closure: vented,
    cooling: {kind: water_bath, temperature: 25 degC, ua: 2 W/K}}
  pot: {kind: bottle, material: PTFE, capacity: 500 mL, closure: vented}
steps:
  - {do: charge, in: etch, what: [{substance: HF, strength: 10 wt%, volume: 100 mL}], temperature: 20 degC}
  - {do: add, in: etch, what: precursor, over: 60 min, temperature: 25 degC, attended: true}
  - {do: hold, in: etch, time: 18 h, temperature: 35 degC ATTENDED}
  - {do: charge, in: pot, what: [{substance: water, volume: 100 mL}], temperature: 20 degC}
  - {do: hold, in: pot, time: 60 h, temperature: 25 degC ATTENDED}
`

// A hold of 18 h at 35 °C in acid fluoride with nobody there goes against 16 h and against the
// acid, and not against 90 °C and a flow that a gram never gives; stirred water over a weekend
// against the hours alone. One rule that nobody states leaves it unknown, but what one that is
// stated refuses stays refused; with somebody there, or without any rules, nothing is asked (definition).
func TestStepsThatRunAlone(t *testing.T) {
	const rest = "temperature: 90 degC, gas: 10 L/min"
	for _, row := range []struct {
		rules, attended string
		etch, water     float64 // -1: not known, -2: no figure
	}{
		{"{time: 16 h, never: [hydrofluoric acid], " + rest + "}", "", 2, 1},
		{"{time: 100 h, never: [], " + rest + "}", "", 0, 0},
		{"{time: 16 h, never: [HF], " + rest + "}", ", attended: true", -2, -2},
		{"{time: 16 h, never: [HF], " + rest + "}", ", attended: false", 2, 1},
		{"{time: 17 h}", "", 1, 1},
		{"{time: 100 h, never: []}", "", -1, -1},
		{"", "", -2, -2},
	} {
		text := strings.ReplaceAll(leftAlone, " ATTENDED", row.attended)
		r, problems, err := route.Load("r.yaml", strings.NewReader(text))
		if err != nil || r == nil {
			t.Fatalf("%v %v", err, problems)
		}
		site := "site: etchbound/1\ntitle: shed\n"
		if row.rules != "" {
			site += "unattended: " + row.rules + "\n"
		}
		s, problems, err := route.LoadSite("s.yaml", strings.NewReader(site))
		if err != nil || s == nil {
			t.Fatalf("%v %v", err, problems)
		}
		c, err := route.NewCase(r, s, nil)
		if err != nil {
			t.Fatal(err)
		}
		c.Brief = true
		got, err := hazards.Make(c)
		if err != nil {
			t.Fatal(err)
		}
		if f := figure.NewSet(got.Figures).Get(figure.ID{Quantity: alone.Quantity, Place: figure.Step(1)}); (f != nil) !=
			(row.rules != "") {
			t.Errorf("%s: a charge that says neither its time nor who is there: %v", row.rules, f)
		}
		for step, want := range map[int]float64{3: row.etch, 5: row.water} {
			x := -2.0
			if f := figure.NewSet(got.Figures).Get(figure.ID{Quantity: alone.Quantity, Place: figure.Step(step)}); f != nil {
				if x = f.Value.V; f.Value.Unknown() {
					x = -1
				}
			}
			if !(x == want) {
				t.Errorf("%s%s: step %d goes against %g, want %g", row.rules, row.attended, step, x, want)
			}
		}
	}
}
