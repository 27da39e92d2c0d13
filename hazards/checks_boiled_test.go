package hazards_test

import (
	"testing"

	"etchbound/hazards"
	"etchbound/schemas/nearly"
)

// scorched is so many grams of Ti3AlC2 in half a litre of 40 wt% acid, in an open vessel.
func scorched(t *testing.T, grams string) hazards.Review {
	t.Helper()
	return review(t, "route: etchbound/1\ntitle: check\nbasis: {status: invented}\n"+
		"precursor: {phase: Ti3AlC2, mass: "+grams+", impurities: none (certificate)}\n"+
		"places:\n  pot: {kind: beaker, material: PTFE, capacity: 2 L, closure: open}\nsteps:\n"+
		"  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 40 wt%, volume: 500 mL}], "+
		"temperature: 25 degC}\n"+
		"  - {do: add, in: pot, what: [precursor], over: 60 min, temperature: 25 degC}\n")
}

// 100 g, 0.514 mol, give 390.5 kJ and 1.54 mol of hydrogen by 3 mol/mol of central product,
// in about 1.86 kJ/K: 210 K above 25 degC. What is above boiling at 111.6 degC evaporates
// 5.6 mol of water, 101 g, 178 L as vapour; in 30 s with 49 L of hydrogen 450 L/min; of
// 565 g that is 0.18, and at most as many moles of HF, 113 g (by hand).
func TestWhatBoilsOffIsInLitresAndPerMinute(t *testing.T) {
	rv := scorched(t, "100 g")
	for _, c := range []struct {
		id          string
		want, share float64
	}{
		{"heat.boiled_off@2", 101, 0.05}, {"heat.boiled_off.volume@2", 178, 0.05}, {"heat.boiled_off.flow@2", 450, 0.06},
		{"heat.boiled_off.share@2", 0.18, 0.05}, {"air.boiled_off@2/hf", 113, 0.05},
	} {
		if f := figureOf(&rv, c.id); f == nil || !nearly.Share(f.Value.V, c.want, c.share) {
			t.Errorf("%s: %+v, want %g", c.id, f, c.want)
		}
	}
	v, g := figureOf(&rv, "heat.boiled_off.volume@2").Value.V, figureOf(&rv, "heat.boiled_off@2").Value.V
	if at := figureOf(&rv, "heat.boiling_point@2").Value.V; !nearly.Share(v, g/18.015*8.314463*(at+273.15)/101.325, 1e-6) {
		t.Errorf("%g L of %g g at %g degC", v, g, at)
	}
	if v := verdicts(&rv)["heat.boiled_off.share@2+boils_dry"]; v != withinLimit {
		t.Errorf("a fifth of the liquor boils off: %v", v)
	}
}

// Acid cannot leave that is not there, and a liquor of which nothing is left is named.
func TestBoilingDryIsNamed(t *testing.T) {
	rv := scorched(t, "500 g")
	if v := verdicts(&rv)["heat.boiled_off.share@2+boils_dry"]; v != exceeds {
		t.Errorf("%+v: %v", figureOf(&rv, "heat.boiled_off.share@2"), v)
	}
	all := figureOf(&rv, "fluoride.hf_equivalent@2").Value.V
	if f := figureOf(&rv, "air.boiled_off@2/hf"); f == nil || !(f.Value.V <= all*(1+1e-9)) {
		t.Errorf("%+v of %g g", f, all)
	}
}
