package chemicals_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/aqueous"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

var (
	shapes   = []string{"", "normal", "lognormal", "triangle", "uniform", "bound"}
	statuses = []string{"read", "two-sources", "computed", "estimated", "memory", "assumed"}
)

func TestRowsAreWellFormed(t *testing.T) {
	st := chemicals.Base()
	seen := map[datum.ID]bool{}
	for _, d := range st.Rows() {
		switch {
		case d.ID == "" || seen[d.ID]:
			t.Errorf("id %q is blank or there twice", d.ID)
		case d.Symbol == "" || strings.ContainsAny(d.Symbol, " .()+-*/"):
			t.Errorf("%s: symbol %q", d.ID, d.Symbol)
		case math.IsNaN(d.Value) || math.IsInf(d.Value, 0):
			t.Errorf("%s: no value", d.ID)
		case math.IsNaN(d.Low) != math.IsNaN(d.High):
			t.Errorf("%s: one end of a range", d.ID)
		case d.Low > d.Value || d.High < d.Value:
			t.Errorf("%s: %g lies outside %g to %g", d.ID, d.Value, d.Low, d.High)
		case !slices.Contains(shapes, d.Shape) || !slices.Contains(statuses, d.Status):
			t.Errorf("%s: shape %q, status %q", d.ID, d.Shape, d.Status)
		case d.Shape != "" && d.Shape != "bound" && !d.Swings():
			t.Errorf("%s: shape %q without a range", d.ID, d.Shape)
		case d.Group != "" && !d.Swings():
			t.Errorf("%s: in group %s without moving", d.ID, d.Group)
		}
		seen[d.ID] = true
		sourced(t, st, string(d.ID), d.Source, d.Status)
	}
	if len(seen) < 400 {
		t.Errorf("only %d rows", len(seen))
	}
	for _, table := range st.Tables() {
		sourced(t, st, table.ID, table.Source, table.Status)
	}
}

// Every key resolves, and only what is recalled or assumed stands without one.
func sourced(t *testing.T, st *chemicals.Store, id, keys, status string) {
	t.Helper()
	for _, key := range strings.Fields(keys) {
		if s, ok := st.Source(key); !ok || s.Title == "" {
			t.Errorf("%s: source %q is not listed", id, key)
		}
	}
	if keys == "" && status != "memory" && status != "assumed" {
		t.Errorf("%s is %s without a source", id, status)
	}
}

func TestEverySourceIsUsed(t *testing.T) {
	st := chemicals.Base()
	used := map[string]bool{}
	for _, d := range st.Rows() {
		for _, key := range strings.Fields(d.Source) {
			used[key] = true
		}
	}
	for _, table := range st.Tables() {
		for _, key := range strings.Fields(table.Source) {
			used[key] = true
		}
	}
	for _, key := range aqueous.Sources() {
		used[key] = true
	}
	for _, s := range st.Sources() {
		if !used[s.Key] {
			t.Errorf("source %s is used by nothing", s.Key)
		}
	}
}

func TestNumStatus(t *testing.T) {
	st := chemicals.Base()
	for id, want := range map[datum.ID]working.Status{
		"weight.Ti":         working.Known,
		"etch_heat.Ti3AlC2": working.Estimated, // added up, with its range
		"electrons.In":      working.Estimated,
		"impurity.unstated": working.Estimated,
		"valence.Ti":        working.Bound,
		"electrons.As":      working.Unknown,
	} {
		n := st.Num(id)
		if n.Status != want || n.Ref() != string(id) {
			t.Errorf("%s is %v from %q, want %v", id, n, n.Ref(), want)
		}
		if want == working.Unknown && (!math.IsNaN(n.V) ||
			!slices.Equal(n.Missing(), []working.Missing{working.LacksDatum(id)})) {
			t.Errorf("%s: value %g, missing %v", id, n.V, n.Missing())
		}
	}
}

// Elements whose fluoride chemistry gives a hydride, or is not known, must
// stay without a count of electrons: a number here would read as hydrogen.
func TestNoElectronsForHydrideFormers(t *testing.T) {
	for _, element := range []string{"P", "As", "Sb", "S", "Se", "Te", "Tl", "Cd", "Pb", "Zn", "Bi", "Cu", "Au"} {
		if n := chemicals.Base().Num(datum.Of("electrons", element)); !n.Unknown() {
			t.Errorf("%v", n)
		}
	}
}

func TestWith(t *testing.T) {
	base := chemicals.Base()
	d, ok := base.Row("etch_heat.Ti3AlC2")
	if !ok || d.Value != 760 || d.Low != 685 || d.High != 835 || !d.Swings() {
		t.Fatalf("%+v", d)
	}
	changed := base.With(map[int]float64{d.Index: 700, -1: 1, 1 << 30: 1})
	if got := changed.Num(d.ID).V; got != 700 {
		t.Errorf("changed to %g", got)
	}
	removed := base.With(map[int]float64{d.Index: math.NaN()})
	n := removed.Num(d.ID)
	if !n.Unknown() || !slices.Equal(n.Missing(), []working.Missing{working.LacksDatum(d.ID)}) {
		t.Errorf("taken away: %v", n)
	}
	if _, ok := removed.Row(d.ID); ok {
		t.Error("a row taken away is still found")
	}
	if base.Num(d.ID).V != 760 {
		t.Error("the base store was changed")
	}
	titanium, _ := base.Row("weight.Ti")
	f, _ := chemicals.ParseFormula("Ti3AlC2")
	m := f.MolarMass(base.With(map[int]float64{titanium.Index: math.NaN()}), nil)
	if !m.Unknown() || !slices.Equal(m.Missing(), []working.Missing{working.LacksDatum("weight.Ti")}) {
		t.Errorf("molar mass without titanium: %v", m)
	}
}

func TestCostOfLookups(t *testing.T) {
	st := chemicals.Base()
	if n := testing.AllocsPerRun(100, func() { st.Num("etch_heat.Ti3AlC2") }); n != 0 {
		t.Errorf("Num allocates %g times", n)
	}
	f, _ := chemicals.ParseFormula("Ti3AlC2")
	if n := testing.AllocsPerRun(100, func() { f.MolarMass(st, nil) }); n != 0 {
		t.Errorf("MolarMass allocates %g times without a sheet", n)
	}
}

func BenchmarkNum(b *testing.B) {
	st := chemicals.Base()
	for b.Loop() {
		st.Num("etch_heat.Ti3AlC2")
	}
}

func BenchmarkWith(b *testing.B) {
	st := chemicals.Base()
	draw := map[int]float64{10: 1, 20: 2, 30: 3}
	for b.Loop() {
		st.With(draw)
	}
}
