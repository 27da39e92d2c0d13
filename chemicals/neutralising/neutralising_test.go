package neutralising_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/neutralising"
)

var acids = []neutralising.Acid{neutralising.HF, neutralising.Strong, neutralising.AluminiumFluoride}

func substance(t *testing.T, name string) *chemicals.Substance {
	t.Helper()
	s, ok := chemicals.Library().Find(name)
	if !ok {
		t.Fatalf("%s is not held", name)
	}
	return s
}

// Reactions balanced by hand; products positive, reactants negative.
func TestReactionsByHand(t *testing.T) {
	for _, row := range []struct {
		agent string
		acid  neutralising.Acid
		want  map[string]float64
	}{
		{"Ca(OH)2", neutralising.HF, map[string]float64{"CaF2(s)": 0.5, "H2O(l)": 1, "HF(aq)": -1, "Ca(OH)2(s)": -0.5}},
		{"Ca(OH)2", neutralising.AluminiumFluoride, map[string]float64{"CaF2(s)": 1.5, "Al(OH)3(s)": 1, "AlF3(aq)": -1,
			"Ca(OH)2(s)": -1.5}},
		{"CaCO3", neutralising.Strong, map[string]float64{"Ca(2+)(aq)": 0.5, "CO2(g)": 0.5, "H2O(l)": 0.5, "CaCO3(s)": -0.5}},
		{"CaCO3", neutralising.AluminiumFluoride, map[string]float64{"CaF2(s)": 1.5, "Al(OH)3(s)": 1, "CO2(g)": 1.5,
			"AlF3(aq)": -1, "CaCO3(s)": -1.5, "H2O(l)": -1.5}},
		{"NaHCO3", neutralising.HF, map[string]float64{"Na(+)(aq)": 1, "F(-)(aq)": 1, "CO2(g)": 1, "H2O(l)": 1,
			"HF(aq)": -1, "NaHCO3(s)": -1}},
		{"NaHCO3", neutralising.AluminiumFluoride, map[string]float64{"Al(OH)3(s)": 1, "Na(+)(aq)": 3, "F(-)(aq)": 3,
			"CO2(g)": 3, "AlF3(aq)": -1, "NaHCO3(s)": -3}},
		{"NaOH", neutralising.Strong, map[string]float64{"Na(+)(aq)": 1, "H2O(l)": 1, "NaOH(s)": -1}},
		{"CaO", neutralising.HF, map[string]float64{"CaF2(s)": 0.5, "H2O(l)": 0.5, "HF(aq)": -1, "CaO(s)": -0.5}},
		{"MgO", neutralising.HF, map[string]float64{"MgF2(s)": 0.5, "H2O(l)": 0.5, "HF(aq)": -1, "MgO(s)": -0.5}},
		{"KOH", neutralising.HF, map[string]float64{"K(+)(aq)": 1, "F(-)(aq)": 1, "H2O(l)": 1, "HF(aq)": -1, "KOH(s)": -1}},
		{"ammonia", neutralising.HF, map[string]float64{"NH4(+)(aq)": 1, "F(-)(aq)": 1, "HF(aq)": -1, "NH3(aq)": -1}},
		{"NH4HCO3", neutralising.Strong, map[string]float64{"NH4(+)(aq)": 1, "CO2(g)": 1, "H2O(l)": 1, "NH4HCO3(s)": -1}},
	} {
		terms, ok := neutralising.Reaction(substance(t, row.agent), row.acid)
		got := map[string]float64{}
		for _, x := range terms {
			got[x.Row] += x.X
		}
		same := ok && len(got) == len(row.want)
		for k, x := range row.want {
			same = same && math.Abs(got[k]-x) <= 1e-12
		}
		if !same {
			t.Errorf("%s: %v, want %v", row.agent, got, row.want)
		}
	}
}

// Every reaction that is given balances in every element.
func TestReactionsBalance(t *testing.T) {
	followed := 0
	for _, s := range chemicals.Library().All() {
		for _, a := range acids {
			terms, ok := neutralising.Reaction(s, a)
			if !ok {
				continue
			}
			followed++
			left := map[string]float64{"H": 0, "F": 0}
			if a == neutralising.Strong {
				left["H"] = -1 // the proton that is taken
			}
			for _, x := range terms {
				f := formula(t, x.Row)
				for _, el := range f.Order {
					left[el] += x.X * f.Count(el)
				}
			}
			for el, n := range left {
				if !(math.Abs(n) <= 1e-9) {
					t.Errorf("%s on acid %d: %g %s over in %v", s.Name, a, n, el, terms)
				}
			}
		}
	}
	if followed < 3*15 {
		t.Errorf("%d reactions are followed", followed)
	}
}

func formula(t *testing.T, row string) chemicals.Formula {
	t.Helper()
	text := row[:strings.LastIndex(row, "(")]
	if i := strings.LastIndex(text, "("); i > 0 && strings.ContainsAny(text[i:], "+-") {
		text = text[:i]
	}
	f, err := chemicals.ParseFormula(text)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestBrings(t *testing.T) {
	for name, want := range map[string]neutralising.Brings{
		"magnesium oxide":        {Base: 2, Magnesium: 1},
		"potassium hydroxide":    {Base: 1},
		"calcium chloride":       {Calcium: 1},
		"calcium carbonate":      {Base: 2, Carbon: 1, Calcium: 1},
		"sodium chloride":        {},
		"water":                  {},
		"ammonium bicarbonate":   {Base: 1, Carbon: 1, Ammonium: 1},
		"hydrochloric acid":      {Base: -1},
		"calcium nitrate":        {Calcium: 1},
		"lithium carbonate":      {Base: 2, Carbon: 1},
		"hexafluorosilicic acid": {Base: -2},
		"propylene carbonate":    {}, // a solvent by that name brings no carbonate
	} {
		got := neutralising.Of(substance(t, name))
		got.Base += 0 // no negative zero
		if got != want {
			t.Errorf("%s brings %+v, want %+v", name, got, want)
		}
	}
}

// A base is known by what it is: the heat of every base of the library can be balanced but of
// those with nitrogen in the cation and those with a metal that the ions do not hold, whatever
// rows come to it.
func TestNothingWithBaseIsLeftOut(t *testing.T) {
	balanced := 0
	for _, s := range chemicals.Library().All() {
		if neutralising.Of(s).Base <= 0 {
			continue
		}
		if _, ok := neutralising.Reaction(s, neutralising.HF); ok {
			balanced++
			continue
		}
		followed := s.Formula.Count("N") == 0
		for i := range chemicals.NumElements {
			symbol := chemicals.ElementSymbol(i)
			if s.Formula.Count(symbol) > 0 && !slices.Contains([]string{"H", "O", "C", "Li", "Na", "K", "Mg", "Ca"}, symbol) {
				followed = false
			}
		}
		if followed {
			t.Errorf("%s is not balanced", s.Slug)
		}
	}
	if balanced < 15 {
		t.Errorf("only %d bases are balanced", balanced)
	}
}

func TestBinding(t *testing.T) {
	for acid, of := range map[bool]string{false: "F(-)(aq)", true: "HF(aq)"} {
		got := neutralising.Binding(substance(t, "calcium chloride"), acid)
		want := []neutralising.Term{{X: 1, Row: "CaF2(s)"}, {X: -1, Row: "Ca(2+)(aq)"}, {X: -2, Row: of}}
		if !slices.Equal(got, want) {
			t.Errorf("%v", got)
		}
	}
}
