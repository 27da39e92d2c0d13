package treating_test

import (
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/treating"
	"etchbound/schemas/nearly"
)

// container is that of the pot once a hundredth of HF in 100 mL of water has been treated in
// it by an agent.
func container(t testing.TB, agent string) *treating.Container {
	t.Helper()
	b := bench.Steps(t, "  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 1 wt%, volume: "+
		"100 mL}], temperature: 20 degC}\n", "  - {do: neutralise, in: pot, what: ["+agent+"], temperature: 20 degC}\n")
	b.Case.Route.Place("pot").Batches = 2
	all := treating.Containers(b.Case, &b.Walk)
	if len(all) != 1 || len(all[0].Moments) != 3 {
		t.Fatalf("%+v", all)
	}
	return &all[0]
}

// A container that takes the decants of a wash of which nobody can say how often it is done holds
// what nobody knows, and not the one decant that is sure: no volume, no fluoride, no share of it.
func TestWashedNobodyKnowsHowOften(t *testing.T) {
	b := bench.Steps(t, bench.Etch, "  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 40 mL}], "+
		"retained: 2 mL, target_ph: 6.5, temperature: 20 degC}\n")
	b.Case.Route.Place("drum").Batches = 5
	all := treating.Containers(b.Case, &b.Walk)
	if len(all) != 1 || len(all[0].Moments) != 1 {
		t.Fatalf("%+v", all)
	}
	m := all[0].Moments[0]
	for _, v := range []float64{m.Litres, m.Fluoride, m.Left[0], m.Left[1], m.Solids, m.Share, m.PH, m.Heat,
		m.CarbonDioxide[1]} {
		if v == v || m.Batches != 5 {
			t.Errorf("%g is told: %+v", v, m)
		}
	}
}

// 0.0501 mol of HF take 1.856 g of calcium hydroxide (74.09 g/mol). With twice as much, lime
// stands over the first batch (pH 12.4 to 12.5 of lime water, handbook, from memory); the HF of
// the second takes just what is left of it: fluorite in pure water, 7 to 8 mg/L (as above), at
// 83.6 kJ/mol (by formation enthalpies), 4.19 kJ in 0.2 kg of water: 5.0 K. All fluorine is
// 0.952 g a batch, 3.91 g of fluorite for two.
func TestASecondBatchMeetsLimeLeftOver(t *testing.T) {
	c := container(t, "{substance: calcium hydroxide, mass: 3.712 g}")
	first, comes, last := &c.Moments[0], &c.Moments[1], &c.Moments[2]
	if !comes.Before || last.Before || comes.Batches != 2 || last.Batches != 2 {
		t.Errorf("%+v", c)
	}
	for _, row := range []struct {
		name           string
		got, low, high float64
	}{{"pH of lime left over", first.PH, 12.3, 12.6}, {"pH as the second comes", comes.PH, 5, 10.5},
		{"fluoride as it comes", comes.Left[0], 6.5, 8.5}, {"heat", comes.Heat, 4.0, 4.4}, {"rise", comes.Rise, 4.7, 5.3},
		{"fluorine", last.Fluoride, 1.89, 1.92}, {"fluorite", comes.Solids, 3.8, 4.0},
		{"share", comes.Share, 0.0185, 0.0195}, {"pH of two", last.PH, first.PH - 1e-6, first.PH + 1e-6},
		{"fluoride of two", last.Left[0], first.Left[0] * 0.999999, first.Left[0] * 1.000001}} {
		if !nearly.Between(row.got, row.low, row.high) {
			t.Errorf("%s: %g, want %g to %g", row.name, row.got, row.low, row.high)
		}
	}
}

// Chalk of 2.507 g takes it; with twice as much what is left gives 0.025 mol of carbon
// dioxide, 0.61 L, as the second batch comes to it, less what stays dissolved, and twice that
// where acid and chalk meet before it is carbonate: never more than the acid frees. Just
// enough chalk under 1 atm of it stands at pH 4.0 (published equilibria for 0.5 mol/kg of HF).
func TestASecondBatchFreesCarbonDioxide(t *testing.T) {
	c := container(t, "{substance: calcium carbonate, mass: 5.014 g}")
	comes := &c.Moments[1]
	if g := comes.CarbonDioxide; !nearly.Between(g[0], 0.4, 0.62) || !nearly.Between(g[1], 1.2, 1.25) {
		t.Errorf("%v L of carbon dioxide", g)
	}
	if !nearly.Between(comes.PH, 3.9, 4.3) {
		t.Errorf("pH %g under carbon dioxide", comes.PH)
	}
}

// Ammonium gives ammonia once a liquor is alkaline: 1 g of NH4HF2 (57.04 g/mol) is 0.0175 mol,
// 0.43 L a batch. Of what no equilibrium is held of, all fluoride counts as dissolved.
func TestWhatAContainerCanGive(t *testing.T) {
	with := func(what, agent string) *treating.Container {
		b := bench.Steps(t, "  - {do: charge, in: pot, what: [{substance: water, volume: 100 mL}, "+what+"], temperature: "+
			"20 degC}\n", "  - {do: neutralise, in: pot, what: ["+agent+"], temperature: 20 degC}\n")
		b.Case.Route.Place("pot").Batches = 1
		return &treating.Containers(b.Case, &b.Walk)[0]
	}
	bifluoride, lime := "{substance: ammonium bifluoride, mass: 1 g}", "{substance: calcium hydroxide, mass: 3 g}"
	if m := with(bifluoride, lime).Moments[0]; !nearly.Between(m.Ammonia, 0.42, 0.44) {
		t.Errorf("%g L of ammonia", m.Ammonia)
	}
	m := with(bifluoride+", {substance: dmso, mass: 1 g}", lime).Moments[0]
	if m.PH == m.PH || !m.Outside || !nearly.Share(m.Left[0], 6660, 0.02) || !nearly.Between(m.Ammonia, 0.42, 0.44) {
		t.Errorf("%+v", m)
	}
}
