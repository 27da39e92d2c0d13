package handling_test

import (
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/figure"
	"etchbound/hazards/handling"
	"etchbound/schemas/nearly"
)

// before are the figures of a charge that is sintered ahead of the etch.
func before(t *testing.T, do, what string) []figure.Figure {
	t.Helper()
	b := bench.Steps(t, "  - {do: "+do+", in: drum, what: ["+what+"], time: 2 h, temperature: 1300 degC, gas: argon}\n",
		bench.Etch)
	return handling.Read(b.Case, nil, b.Walk, nil, nil)
}

const (
	ti    = "{substance: titanium, amount: 30 mmol}, "
	al    = "{substance: aluminium, amount: 10 mmol}"
	parts = "{substance: titanium, amount: 10 mmol}, {substance: titanium carbide, amount: 20 mmol}, " + al
)

// By hand, from enthalpies of formation: Ti3AlC2 -470 and TiC -184.1 kJ/mol; heat capacities
// 25.06, 24.2, 8.53 and 33.8 J/mol/K at 25 degC.
func TestSinteringByHand(t *testing.T) {
	for _, tt := range []struct {
		what       string
		heat, rise float64
	}{
		{ti + al + ", {substance: graphite, amount: 20 mmol}", 4.70, 4.70 / 1.1644 * 1000},
		{parts, 4.70 - 3.682, 1.018 / 1.1686 * 1000},
		// carbide that is left over is not taken apart: its heat is not taken off
		{parts + ", {substance: titanium carbide, amount: 20 mmol}", 4.70 - 3.682, 1.018 / 1.8446 * 1000},
		// half of the aluminium is all that half of the phase has
		{ti + "{substance: aluminium, amount: 5 mmol}, {substance: graphite, amount: 20 mmol}", 2.35, 2.35 / 1.0434 * 1000},
	} {
		all := before(t, "sinter", tt.what)
		if v := bench.Find(t, all, "sinter.heat@1").Value.V; !nearly.Share(v, tt.heat, 0.01) {
			t.Errorf("%s: %g kJ, want %g", tt.what, v, tt.heat)
		}
		if v := bench.Find(t, all, "sinter.rise@1").Value.V; !nearly.Share(v, tt.rise, 0.01) {
			t.Errorf("%s: %g K, want %g", tt.what, v, tt.rise)
		}
	}
}

// Dust of what is milled and sieved is that of all that lies there dry; each metal burns by
// its own heat.
func TestDustOfWhatIsMilled(t *testing.T) {
	all := before(t, "mill", "{substance: titanium, mass: 2 g}, {substance: aluminium, mass: 1 g}")
	for id, want := range map[string]float64{"dust.mass@1": 3, "dust.heat@1": 2*19.7 + 31.1} {
		if v := bench.Find(t, all, id).Value.V; !nearly.Share(v, want, 0.01) {
			t.Errorf("%s = %g, want %g", id, v, want)
		}
	}
}

// A metal that nobody holds takes neither the heat nor the dust away: both are unknown.
func TestMetalNobodyHoldsStaysInTheFurnace(t *testing.T) {
	all := before(t, "sinter", ti+al+", {substance: a metal of ours, not_held: true, mass: 1 g}")
	for _, id := range []string{"sinter.heat@1", "sinter.rise@1", "dust.mass@1", "dust.heat@1"} {
		if f := bench.Find(t, all, id); !f.Value.Unknown() || len(f.Value.Missing()) == 0 {
			t.Errorf("%s = %v, want unknown with what settles it", id, f.Value)
		}
	}
}
