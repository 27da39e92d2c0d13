package etching_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/etching"
	"etchbound/chemicals/working"
	"etchbound/schemas/nearly"
)

func split(t *testing.T, text string, layers ...string) etching.Layered {
	t.Helper()
	f, err := chemicals.ParseFormula(text)
	if err != nil {
		t.Fatal(err)
	}
	l, err := etching.Split(chemicals.Base(), nil, f, layers)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func symbols(parts []etching.Part) (out []string) {
	for _, p := range parts {
		out = append(out, p.Symbol)
	}
	return out
}

// M is groups 3 to 6 and manganese, X is C, N and B, the rest is A; masses by
// hand from the abridged weights of 2021, Pure Appl. Chem. 94 (2022) 573.
func TestSplit(t *testing.T) {
	for _, tt := range []struct {
		phase     string
		m, a, x   []string
		slab      bool
		molar     float64
		electrons float64 // 3 for Al, Ga and In, 4 for Si and Ge, 2 for Sn
	}{
		{"Ti3AlC2", []string{"Ti"}, []string{"Al"}, []string{"C"}, false, 194.605, 3},
		{"Ti3AlCN", []string{"Ti"}, []string{"Al"}, []string{"C", "N"}, false, 196.601, 3},
		{"Mo2TiAlC2", []string{"Mo", "Ti"}, []string{"Al"}, []string{"C"}, false, 290.771, 3},
		{"Mo2Ga2C", []string{"Mo"}, []string{"Ga"}, []string{"C"}, false, 343.357, 6},
		{"Ti3SiC2", []string{"Ti"}, []string{"Si"}, []string{"C"}, false, 195.708, 4},
		{"Ti3GeC2", []string{"Ti"}, []string{"Ge"}, []string{"C"}, false, 240.253, 4},
		{"Ti2SnC", []string{"Ti"}, []string{"Sn"}, []string{"C"}, false, 226.455, 2},
		{"Mn2AlB2", []string{"Mn"}, []string{"Al"}, []string{"B"}, false, 158.478, 3},
		{"Ti3Al0.8Sn0.2C2", []string{"Ti"}, []string{"Al", "Sn"}, []string{"C"}, false, 212.9506, 2.8},
		{"Zr3Al3C5", []string{"Zr"}, []string{"Al"}, []string{"C"}, true, 414.667, 9},
		{"Hf3Al4C6", []string{"Hf"}, []string{"Al"}, []string{"C"}, true, 715.464, 12},
	} {
		l := split(t, tt.phase)
		if !slices.Equal(symbols(l.M), tt.m) || !slices.Equal(symbols(l.A), tt.a) || !slices.Equal(symbols(l.X), tt.x) ||
			l.Slab != tt.slab {
			t.Errorf("%s is M %v, A %v, X %v, slab %v", tt.phase, l.M, l.A, l.X, l.Slab)
		}
		if !nearly.To(l.MolarMass.V, tt.molar, 0.002) || !nearly.To(l.Electrons.V, tt.electrons, 1e-12) {
			t.Errorf("%s: %v g/mol and %v electrons, want %v and %v", tt.phase, l.MolarMass.V, l.Electrons.V, tt.molar,
				tt.electrons)
		}
	}
}

func TestLayersOverride(t *testing.T) {
	l := split(t, "Ti2ZnC", "Zn")
	if !slices.Equal(symbols(l.A), []string{"Zn"}) {
		t.Errorf("A is %v", l.A)
	}
	l = split(t, "Mo2TiAlC2", "Al", "Ti")
	if !slices.Equal(symbols(l.A), []string{"Ti", "Al"}) || !slices.Equal(symbols(l.M), []string{"Mo"}) {
		t.Errorf("M is %v, A is %v", l.M, l.A)
	}
}

func TestHydridesAndToxicMetals(t *testing.T) {
	for _, tt := range []struct {
		phase, hydride, unlisted string
		toxic                    []string
	}{
		{"V2AsC", "AsH3", "As", []string{"As"}}, {"V2PC", "PH3", "P", nil}, {"Ti2SC", "H2S", "S", nil},
		{"Ti2SeC", "H2Se", "Se", []string{"Se"}},
		{"Ti2CdC", "", "Cd", []string{"Cd"}}, {"Ti2TlC", "", "Tl", []string{"Tl"}}, {"Ti2PbC", "", "Pb", []string{"Pb"}},
		{"Ti2ZnC", "", "Zn", nil}, {"Ti3AlC2", "", "", nil},
	} {
		f, err := chemicals.ParseFormula(tt.phase)
		if err != nil {
			t.Fatal(err)
		}
		l, err := etching.Split(chemicals.Base(), nil, f, nil)
		if err != nil || l.Hydride != tt.hydride || l.Unlisted != tt.unlisted || !slices.Equal(l.Toxic, tt.toxic) {
			t.Errorf("%s: hydride %q, unlisted %q, toxic %v, error %v", tt.phase, l.Hydride, l.Unlisted, l.Toxic, err)
		}
		if (tt.unlisted != "") != l.Electrons.Unknown() {
			t.Errorf("%s gives %v electrons", tt.phase, l.Electrons)
		}
	}
}

func TestWhatIsNotLayered(t *testing.T) {
	for _, text := range []string{"TiC", "Al4C3", "Ti3Al", "AlN", "Ti3SbP"} {
		f, err := chemicals.ParseFormula(text)
		if err != nil {
			t.Fatal(err)
		}
		var not *etching.ErrNotLayered
		if _, err = etching.Split(chemicals.Base(), nil, f, nil); !errors.As(err, &not) {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// with sets rows by id.
func with(t *testing.T, values map[datum.ID]float64) *chemicals.Store {
	t.Helper()
	at := map[int]float64{}
	for id, v := range values {
		d, ok := chemicals.Base().Row(id)
		if !ok {
			t.Fatalf("no row %s", id)
		}
		at[d.Index] = v
	}
	return chemicals.Base().With(at)
}

// Electrons balance: what A gives goes to hydrogen, and every surface group
// takes its own: H2 = e/2 + (F + OH + Cl)/2 + O with two groups.
func TestHydrogenByElectronCount(t *testing.T) {
	for _, tt := range []struct {
		phase   string
		oxygen  float64
		bath    etching.Bath
		h       float64
		f, cl   float64
		comment string
	}{
		{"Ti3AlC2", 1, etching.Bath{Fluoride: true}, 3.0, 0.9, 0, "O1.0 F0.9 OH0.1"},
		{"Ti3AlC2", 1, etching.Bath{Fluoride: true, Chloride: true}, 3.0, 0.6, 0.3, "O1.0 F0.6 Cl0.3 OH0.1"},
		{"Ti3AlC2", 0, etching.Bath{Fluoride: true}, 2.5, 1.8, 0, "all F or OH"},
		{"Ti3AlC2", 2, etching.Bath{Fluoride: true}, 3.5, 0, 0, "all O"},
		{"Ti3AlC2", 0, etching.Bath{}, 2.5, 0, 0, "all OH: no fluoride in the bath"},
		{"Mo2Ga2C", 0, etching.Bath{Fluoride: true}, 4, 1.8, 0, "six electrons"},
		{"Mo2Ga2C", 2, etching.Bath{Fluoride: true}, 5, 0, 0, "six electrons"},
		{"Ti3SiC2", 1, etching.Bath{Fluoride: true}, 3.5, 0.9, 0, "four electrons"},
		{"Ti2SnC", 1, etching.Bath{Fluoride: true}, 2.5, 0.9, 0, "two electrons"},
	} {
		st := with(t, map[datum.ID]float64{"termination.oxygen": tt.oxygen})
		l := split(t, tt.phase)
		p := l.Etched(st, nil, tt.bath)
		if !nearly.To(p.Hydrogen.V, tt.h, 1e-12) || !nearly.To(p.Fluorine.V, tt.f, 1e-12) ||
			!nearly.To(p.Chlorine.V, tt.cl, 1e-12) {
			t.Errorf("%s, %s: %v H2, %v F, %v Cl; want %v, %v, %v", tt.phase, tt.comment, p.Hydrogen.V, p.Fluorine.V,
				p.Chlorine.V, tt.h, tt.f, tt.cl)
		}
		if sum := p.Oxygen.V + p.Fluorine.V + p.Hydroxyl.V + p.Chlorine.V; !nearly.To(sum, 2, 1e-12) {
			t.Errorf("%s, %s: %v groups", tt.phase, tt.comment, sum)
		}
	}
}

func TestMeasuredHydrogenSetsTheOxygen(t *testing.T) {
	st, _, err := chemicals.Base().Override([]chemicals.Override{{ID: "etch_hydrogen.Ti3AlC2", Value: 3.1,
		Low: math.NaN(), High: math.NaN(), Source: "gas burette", From: "route", At: "measured"}})
	if err != nil {
		t.Fatal(err)
	}
	l := split(t, "Ti3AlC2")
	p := l.Etched(st, nil, etching.Bath{Fluoride: true})
	if p.Hydrogen.V != 3.1 || !nearly.To(p.Oxygen.V, 1.2, 1e-12) {
		t.Errorf("%v H2 and %v O, want 3.1 and 2*3.1 - 3 - 2 = 1.2", p.Hydrogen.V, p.Oxygen.V)
	}
	if groups := p.Oxygen.V + p.Fluorine.V + p.Hydroxyl.V; !nearly.To(groups, 2, 1e-12) {
		t.Errorf("%v groups", groups)
	}
}

func TestHydrogenOfAnUnlistedLayerIsUnknown(t *testing.T) {
	for _, phase := range []string{"V2AsC", "Ti2CdC", "Ti2ZnC"} {
		l := split(t, phase)
		for name, n := range map[string]working.Num{"etched": l.Etched(chemicals.Base(), nil,
			etching.Bath{Fluoride: true}).Hydrogen, "dissolved": l.Dissolved(chemicals.Base(), nil)} {
			if !n.Unknown() || !slices.Contains(n.Missing(), working.LacksDatum(datum.Of("electrons", l.Unlisted))) {
				t.Errorf("%s, %s: %v", phase, name, n)
			}
		}
	}
}

// All metals at the highest valence that fluoride keeps, carbon left as solid:
// Ti 4, V 4, Nb 5, Mo 4, Zr 4 (memory).
func TestDissolved(t *testing.T) {
	for phase, want := range map[string]float64{
		"Ti3AlC2": 7.5, "V2AlC": 5.5, "Nb2AlC": 6.5, "Nb2InC": 6.5, "Mo2Ga2C": 7, "Mo2TiAlC2": 7.5, "Ti3SiC2": 8,
		"Zr3Al3C5": 10.5, "Cr2AlC": 4.5, "Ta4AlC3": 11.5,
	} {
		l := split(t, phase)
		n := l.Dissolved(chemicals.Base(), nil)
		if !nearly.To(n.V, want, 1e-12) || n.Status != working.Bound {
			t.Errorf("%s: %v, want %v as a bound", phase, n, want)
		}
	}
}

// A guess of the composition is no better than an estimate.
func TestHydrogenIsEstimated(t *testing.T) {
	l := split(t, "Ti3AlC2")
	if p := l.Etched(chemicals.Base(), nil, etching.Bath{Fluoride: true}); p.Hydrogen.Status != working.Estimated {
		t.Errorf("hydrogen is %v", p.Hydrogen.Status)
	}
}

func TestSheetChangesNothing(t *testing.T) {
	f, _ := chemicals.ParseFormula("Ti3AlC2")
	w := working.NewSheet()
	l, err := etching.Split(chemicals.Base(), w, f, nil)
	if err != nil {
		t.Fatal(err)
	}
	m := split(t, "Ti3AlC2")
	b := etching.Bath{Fluoride: true, Chloride: true}
	if x, y := l.Etched(chemicals.Base(), w, b), m.Etched(chemicals.Base(), nil, b); x.Hydrogen.V != y.Hydrogen.V ||
		x.Chlorine.V != y.Chlorine.V || x.Hydrogen.Status != y.Hydrogen.Status {
		t.Errorf("%v on a sheet, %v without", x, y)
	}
	if len(w.Lines) < 10 {
		t.Errorf("only %d lines", len(w.Lines))
	}
}
