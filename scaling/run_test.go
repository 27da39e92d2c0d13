package scaling

import (
	"math"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/bench"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

const runRoute = `route: etchbound/1
title: Run
basis: {status: invented}
date: "2026-11-25"
precursor: {phase: Ti3AlC2, mass: 1 g, purity: 100 wt%, impurities: none (own)}
places:
  etch: {kind: bottle, material: PTFE, capacity: 100 mL, closure: vented}
  drum: {kind: drum, material: HDPE, capacity: 2 L, closure: vented}
steps:
  - do: add
    in: etch
    over: 5 min
    temperature: 20 degC
    what: [{substance: hydrochloric acid, volume: 20 mL, strength: 9 mol/L}, {substance: lithium fluoride, mass: 1.6 g}]
  - {do: add, in: etch, over: 5 min, temperature: 20 degC, what: [precursor]}
  - {do: neutralise, in: etch, over: 5 min, what: [{substance: calcium hydroxide, mass: 10 g}]}
`

func runOf(t *testing.T, text string) Run {
	t.Helper()
	rv := reviewOf(t, text)
	return RunOf(&rv)
}

func reviewOf(t *testing.T, text string) hazards.Review {
	t.Helper()
	c := bench.CaseOf(t, text)
	c.Brief = true
	rv, err := hazards.Make(c)
	if err != nil {
		t.Fatal(err)
	}
	return rv
}

// Moles by formula weight: 20 mL of 9 mol/L are 0.18 mol; 1.6 g LiF of 25.94 g/mol;
// 1 g Ti3AlC2 of 194.6 g/mol; 10 g Ca(OH)2 of 74.09 g/mol. Hydrochloric acid of 9 mol/L
// is 28.8 wt% (density 1.14, tables of aqueous solutions).
func TestRunOf(t *testing.T) {
	long.NotShort(t)
	run := runOf(t, runRoute)
	for i, want := range []float64{0.18, 1.6 / 25.94, 1 / 194.6, 10 / 74.09} {
		likely(t, run.Portions[i].Of.At, run.Portions[i].Mol.V, want, 1e-3)
	}
	acid := &run.Portions[0]
	likely(t, "wt%", acid.WT.V, 28.8, 5e-3)
	likely(t, "mol/L", acid.Molar.V, 9, 1e-6)
	likely(t, "equivalents", acid.PerPhase.V, 0.18*194.6, 1e-3)
	if !run.Portions[1].WT.None() {
		t.Error("a solid has a strength")
	}
	if run.Tray.Largest != "drum" {
		t.Errorf("the largest is %q", run.Tray.Largest)
	}
	likely(t, "tray, L", run.Tray.Volume.V, 2, 1e-9)
}

// The lithium of 1.6 g LiF (0.428 g) in what 22.8 g of acid, 1.6 g of salt, 1 g of powder
// and 10 g of lime weigh together, less the hydrogen: 1.21 wt%. What no hood is stated for
// has no share of its flow.
func TestContentsAndNeeds(t *testing.T) {
	long.NotShort(t)
	rv := reviewOf(t, runRoute)
	held := ContentsOf(&rv, "etch")
	found := false
	for _, e := range held.Elements {
		if e.Element == "Li" {
			found = true
			likely(t, "Li", e.WT.V, 1.21, 2e-2)
		}
	}
	if !found {
		t.Errorf("no lithium in %+v", held.Elements)
	}
	// 20 mL of acid, 1 g of powder of 4.25 g/mL, 1.6 g of salt of 2.64 and 10 g of lime of 2.2
	likely(t, "full", held.Full.V, 25.387/100, 1e-4)
	if other := ContentsOf(&rv, "nowhere"); !other.Most.Unknown() || !other.Full.Unknown() {
		t.Error("a place that is not there is empty")
	}
	needs := NeedsOf(&rv)
	if len(needs) == 0 {
		t.Error("no need of air")
	}
	for _, n := range needs {
		if !n.Share.Unknown() {
			t.Errorf("%s takes %g of a hood nobody stated", n.Of.ID, n.Share.V)
		}
	}
	if x := ReactionsOf(&rv); len(x) != 1 || !nearly.Share(2*x[0].Hydrogen+x[0].Hydroxyl, x[0].Acid+2*x[0].Water, 1e-9) {
		t.Errorf("hydrogen does not close: %+v", x)
	}
}

// A capacity nobody stated leaves the tray unknown, never smaller.
func TestTrayOfAnUnknownContainer(t *testing.T) {
	long.NotShort(t)
	run := runOf(t, strings.Replace(runRoute, "capacity: 2 L, ", "", 1))
	if !run.Tray.Volume.Unknown() || !math.IsNaN(run.Tray.Volume.V) {
		t.Errorf("a tray of %v L", run.Tray.Volume.V)
	}
}

func likely(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !nearly.Share(got, want, share) {
		t.Errorf("%s: %g, want %g", what, got, want)
	}
}
