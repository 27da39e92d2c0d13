package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/schemas/nearly"
)

// sourCell is a gram of powder that hydrofluoric acid has etched when half an ampere flows
// through it for five hours.
var sourCell = strings.Replace(strings.Replace(cell, "{substance: HCl, strength: 7 wt%, volume: 100 mL}",
	"{substance: HF, strength: 5 wt%, volume: 200 mL}", 1), "capacity: 100 mL", "capacity: 500 mL", 1)

// A current parts water where no powder waits for it: I t/(2 F) = 0.5*18000/(2*96485) mol of
// hydrogen at 24.4654 L/mol, and half as much oxygen, whether acid has etched the powder
// before, an earlier current has, or none was put in.
func TestCurrentWithoutPowderPartsWater(t *testing.T) {
	again := "  - {do: electrolyse, in: pot, current: 0.5 A, time: 5 h, temperature: 20 degC}\n"
	empty := strings.Replace(strings.Replace(cell, ", precursor]", "]", 1), "precursor: {phase: Ti3AlC2, mass: 1 g, "+pure+
		"}\n", "", 1)
	for step, yaml := range map[string]string{"2": sourCell, "3": cell + again, "02": empty} {
		step = strings.TrimLeft(step, "0")
		figs := byID(hazards.Assess(newCase(t, load(t, yaml)), nil).Figures)
		if f := figs["gas.hydrogen.total@"+step]; f == nil || !nearly.Share(f.Value.V, 1.14104, 1e-4) {
			t.Errorf("step %s: %+v, want 1.141 L\n%s", step, f, yaml)
		}
		if f := figs["heat.etch.total@"+step]; f == nil || !f.Value.Unknown() {
			t.Errorf("step %s: heat of a current of no voltage is %+v", step, f)
		}
		if f := figs["heat.etch.per_gram@"+step]; yaml == empty && f != nil {
			t.Errorf("heat per gram of no powder: %+v", f)
		}
		if f := figs["account.error"]; f == nil || !(f.Value.V < 1e-9) {
			t.Errorf("step %s: %+v", step, f)
		}
	}
}

// In a cell of acid the powder goes on dissolving: its bubbles and those of the current,
// hydrogen and half as much oxygen, throw up mist together:
//
//	0.1 mL/L (F + 1.5*0.5/(2*96485)*60*24.4654 L/min) of 10 g of HF over 200 mL
func TestMistOfACellCountsTheEtchToo(t *testing.T) {
	figs := byID(hazards.Assess(newCase(t, load(t, sourCell)), nil).Figures)
	flow := figs["gas.hydrogen.peak_rate.after_addition@2:self_accelerating"]
	if f := figs["gas.hydrogen.peak_rate.after_addition@2:early_peak"]; f != nil && flow != nil &&
		f.Value.V > flow.Value.V {
		flow = f
	}
	strength := figs["fluoride.hf_concentration@2"]
	mist := figs["air.mist@2/hf"]
	if flow == nil || strength == nil || mist == nil || !(flow.Value.V > 0) {
		t.Fatal(flow, strength, mist)
	}
	want := 0.1 * (flow.Value.V + 1.5*0.5/(2*96485)*60*24.4654) * strength.Value.V * 20.006
	if !nearly.Share(mist.Value.V, want, 0.01) {
		t.Errorf("%+v, want %g mg/min", mist, want)
	}
}

// A current gives hydrogen evenly, as a flow that wants air and a vent like any other: 0.5 A are
// 0.5/(2*96485)*60*24.4654 = 0.0038035 L/min, and 99 times that dilute it to a quarter of 4 vol%,
// 0.022593 m3/h. Where the electrons of the powder are more than its charge, nobody knows the flow.
func TestACurrentHasAFlowOfHydrogen(t *testing.T) {
	empty := strings.Replace(strings.Replace(cell, ", precursor]", "]", 1), "precursor: {phase: Ti3AlC2, mass: 1 g, "+pure+
		"}\n", "", 1)
	short := strings.Replace(cell, "time: 5 h", "time: 5 min", 1)
	for _, x := range []struct {
		name, yaml, quantity string
		want                 float64 // 0: unknown
	}{
		{"empty", empty, "gas.hydrogen.peak_rate.after_addition@2:current", 0.0038035},
		{"empty", empty, "gas.hydrogen.dilution_air@2:current", 0.022593},
		{"short", short, "gas.hydrogen.peak_rate.after_addition@2:current", 0},
	} {
		f := byID(hazards.Assess(newCase(t, load(t, x.yaml)), nil).Figures)[x.quantity]
		if f == nil || x.want == 0 && !f.Value.Unknown() || x.want > 0 && !nearly.Share(f.Value.V, x.want, 1e-3) {
			t.Errorf("%s: %s is %+v, want %g", x.name, x.quantity, f, x.want)
		}
	}
}
