package scaling_test

import (
	"math"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/scaling"
	"etchbound/schemas/quantity"
)

const gram = `route: etchbound/1
title: check
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (certificate)}
places:
  pot: {kind: vessel, closure: vented, capacity: 100 mL}
  kept: {kind: bottle, closure: closed, capacity: 1 L, keep: true}
steps:
  - {do: charge, in: pot, what: [{substance: HF, strength: 10 wt%, volume: 10 mL}], temperature: 20 degC}
  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 20 degC}
`

func mass(g float64) quantity.Value { return quantity.Of(g, "g", quantity.Mass) }

func newCase(t *testing.T, yaml string) route.Case {
	t.Helper()
	r, problems, err := route.Load("check.yaml", strings.NewReader(yaml))
	if err != nil || r == nil {
		t.Fatalf("%v %v", err, problems)
	}
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// 3.0 mol of hydrogen a mol of 194.605 g, 24.4654 L a mol; 760 kJ a mol.
func TestLadderGrowsAsTheBatch(t *testing.T) {
	rungs, err := scaling.Ladder(newCase(t, gram), mass(1), mass(1000))
	if err != nil {
		t.Fatal(err)
	}
	if len(rungs) != scaling.Sizes {
		t.Fatalf("%d rungs", len(rungs))
	}
	for i, r := range rungs {
		g := r.Batch.In("g")
		if want := math.Pow(1000, float64(i)/(scaling.Sizes-1)); math.Abs(g/want-1) > 1e-9 {
			t.Errorf("rung %d is %g g, want %g", i, g, want)
		}
		for name, want := range map[string]float64{
			"gas.hydrogen.total": 0.377155 * g, "heat.etch.total": 3.90535 * g, "heat.adiabatic_rise": 93.12, "heat.etch.per_gram": 3.90535, "fluoride.hf_strength": 10,
		} {
			f, ok := r.Figure(name)
			if !ok || math.Abs(f.Value.V/want-1) > 0.001 {
				t.Errorf("%g g: %s is %v (there %v), want %g", g, name, f.Value.V, ok, want)
			}
		}
	}
}

// A rung is what the route itself gives at that batch, and no quick version.
func TestARungIsTheRouteAtThatBatch(t *testing.T) {
	c := newCase(t, gram)
	rungs, err := scaling.Ladder(c, mass(2), mass(50))
	if err != nil {
		t.Fatal(err)
	}
	last := rungs[len(rungs)-1]
	again, err := route.NewCase(c.Route.Scaled(mass(50)), nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	again.Brief = true
	want := hazards.Assess(again, nil).Figures
	if len(want) != len(last.Figures) {
		t.Fatalf("%d figures, want %d", len(last.Figures), len(want))
	}
	for i := range want {
		x, y := last.Figures[i].Value.V, want[i].Value.V
		if math.Abs(x-y) > 1e-9*math.Abs(y) || math.IsNaN(x) != math.IsNaN(y) {
			t.Errorf("%s is %v, the route says %v", want[i].ID(), x, y)
		}
	}
}

func TestLadderRefuses(t *testing.T) {
	c := newCase(t, gram)
	for _, tt := range [][2]float64{{10, 10}, {10, 1}, {0, 10}, {math.NaN(), 10}} {
		if _, err := scaling.Ladder(c, mass(tt[0]), mass(tt[1])); err == nil {
			t.Errorf("from %g to %g g is no ladder", tt[0], tt[1])
		}
	}
	bare := newCase(t, strings.Replace(strings.Replace(gram, "precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (certificate)}\n", "", 1),
		"  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 20 degC}\n", "", 1))
	if _, err := scaling.Ladder(bare, mass(1), mass(10)); err == nil {
		t.Error("a route without powder has no batch")
	}
}
