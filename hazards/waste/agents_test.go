package waste_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/waste"
)

const bath = `route: etchbound/1
title: check
basis: {status: invented}
places: {pot: {kind: vessel, closure: vented, capacity: 1 L}}
steps:
  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 10 mL}]}
`

// asWritten is how a substance can be put in by its mass, and the mol of it.
func asWritten(s *chemicals.Substance, grams float64) (string, float64) {
	mol := grams / s.Formula.MolarMass(chemicals.Base(), nil).V
	if s.Sold != "" || (s.Kind == "acid" || s.Kind == "base") && s.State != "s" {
		return fmt.Sprintf("{substance: %q, mass: %g g, strength: 25 wt%%}", s.Name, 4*grams), mol
	}
	return fmt.Sprintf("{substance: %q, mass: %g g}", s.Name, grams), mol
}

// Whatever is written as the agent, what it brings is held against what the acid
// needs: 10 mL of 10 wt% hydrofluoric acid are 51.784 mmol (1.036 g/mL). What
// brings no base, or not enough, never passes, and none goes without a figure.
func TestEveryAgentIsHeldAgainstTheAcid(t *testing.T) {
	const need, grams = 0.051784, 2.0
	seen := 0
	for _, s := range chemicals.Library().All() {
		what, mol := asWritten(s, grams)
		c, ok := caseOf(t, bath+"  - {do: neutralise, in: pot, what: ["+what+"]}\n")
		if !ok {
			continue
		}
		seen++
		k, err := process.Go(c, nil)
		if err != nil {
			t.Fatal(err)
		}
		needed := massAt(waste.Read(c, nil, k, nil, nil), 2)
		if needed == nil {
			t.Errorf("%s: nothing is said of what the acid needs", s.Name)
			continue
		}
		has := -s.Acid * mol
		switch passes := needed.Value.V <= k.Treated[0].Added.V; {
		case has < need && passes:
			t.Errorf("%s brings %.3g mmol of base for %.3g and passes", s.Name, 1000*has, 1000*need)
		case has >= need && !passes:
			t.Errorf("%s brings %.3g mmol of base for %.3g: %v of %v", s.Name, 1000*has, 1000*need, k.Treated[0].Added,
				needed.Value)
		}
	}
	if seen < 150 {
		t.Errorf("%d substances tried", seen)
	}
}

func massAt(figs []figure.Figure, step int) *figure.Figure {
	for i := range figs {
		if f := &figs[i]; f.Quantity == "neutralise.mass" && f.Place == figure.Step(step) {
			return f
		}
	}
	return nil
}

func caseOf(t *testing.T, yaml string) (route.Case, bool) {
	t.Helper()
	r, _, err := route.Load("check.yaml", strings.NewReader(yaml))
	if r == nil || err != nil {
		return route.Case{}, false
	}
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	return c, true
}

// The mass of several is that of the mixture as written; carbonate and lime both
// take their part.
func TestSeveralAgentsCountTogether(t *testing.T) {
	c, _ := caseOf(t, bath+"  - {do: neutralise, in: pot, what: [{substance: calcium hydroxide, mass: 1 g}, "+
		"{substance: sodium carbonate, mass: 1 g}]}\n")
	k, err := process.Go(c, nil)
	if err != nil {
		t.Fatal(err)
	}
	figs := waste.Read(c, nil, k, nil, nil)
	// 2/74.092 + 2/105.988 = 45.863 mmol of base in 2 g; 51.784/45.863*2 = 2.2582 g,
	// with 9.435*51.784/45.863 = 10.653 mmol of carbon dioxide at 24.4654 L/mol.
	for id, want := range map[string]float64{"neutralise.mass@2/calcium_hydroxide_and_sodium_carbonate": 0.0022582,
		"neutralise.carbon_dioxide@2/calcium_hydroxide_and_sodium_carbonate": 0.26064} {
		found := false
		for i := range figs {
			if figs[i].ID.String() == id {
				found = true
				if v := figs[i].Value.V; !(v >= want*0.999 && v <= want*1.001) {
					t.Errorf("%s is %g, want %g", id, v, want)
				}
			}
		}
		if !found {
			t.Errorf("no %s", id)
		}
	}
}

// What a complex of fluoride frees as it hydrolyses takes base as well: HBF4 is
// four HF and boric acid, H2SiF6 six HF and silica, PF6- six HF and phosphoric
// acid less its cation.
func TestHydrolysisTakesBase(t *testing.T) {
	for what, want := range map[string]float64{
		"{substance: tetrafluoroboric acid, strength: 50 wt%, mass: 10 g}":  5 / 87.81 * 4,
		"{substance: hexafluorosilicic acid, strength: 35 wt%, mass: 10 g}": 3.5 / 144.09 * 6,
		"{substance: sodium tetrafluoroborate, mass: 10 g}":                 10 / 109.79 * 3,
		"{substance: lithium hexafluorophosphate, mass: 10 g}":              10 / 151.90 * 8,
	} {
		c, ok := caseOf(t, bath+"  - {do: charge, in: pot, what: ["+what+"]}\n"+
			"  - {do: neutralise, in: pot, what: [{substance: sodium hydroxide, mass: 1 g}]}\n")
		if !ok {
			t.Errorf("%s is refused", what)
			continue
		}
		k, err := process.Go(c, nil)
		if err != nil {
			t.Fatal(err)
		}
		got := massAt(waste.Read(c, nil, k, nil, nil), 3).Value.V * 1000 / 39.997
		if want += 0.051784; !(got >= want*0.999 && got <= want*1.001) {
			t.Errorf("%s takes %g mol of base, want %g", what, got, want)
		}
	}
}

// The demonstration needs 351 mmol of base. What its step writes is held against
// that, whatever it is.
func TestAgentsOfTheDemonstration(t *testing.T) {
	raw, err := os.ReadFile("../../testdata/routes/demo-lif-hcl-2g.yaml")
	if err != nil {
		t.Fatal(err)
	}
	const lime = "{substance: calcium hydroxide, mass: 16 g}"
	for _, row := range []struct {
		what   string
		enough bool
		agent  string
		from   string
	}{
		{lime, true, "calcium_hydroxide", "432 mmol"},
		{"{substance: calcium hydroxide, mass: 3 g}", false, "calcium_hydroxide", "81 mmol"},
		{"{substance: potassium hydroxide, mass: 3 g}", false, "potassium_hydroxide", "53 mmol"},
		{"{substance: magnesium oxide, mass: 3 g}", false, "magnesium_oxide", "149 mmol"},
		{"{substance: magnesium oxide, mass: 16 g}", true, "magnesium_oxide", "794 mmol"},
		{"{substance: calcium chloride, mass: 50 g}", false, "calcium_chloride", "no base"},
		{"{substance: sodium chloride, mass: 50 g}", false, "sodium_chloride", "no base"},
		{"{substance: water, volume: 1 mL}", false, "water", "nothing but water"},
		{"{substance: calcium hydroxide, mass: 8 g}\n      - {substance: calcium oxide, mass: 3 g}", false,
			"calcium_hydroxide_and_calcium_oxide", "216 + 107 mmol"},
		{"{substance: calcium hydroxide, mass: 8 g}\n      - {substance: calcium oxide, mass: 6 g}", true,
			"calcium_hydroxide_and_calcium_oxide", "216 + 214 mmol"},
		{"{substance: sodium hydroxide, strength: 10 wt%, volume: 100 mL}", false, "sodium_hydroxide",
			"277 mmol at 1.109 g/mL"},
		{"{substance: sodium hydroxide, strength: 10 wt%, volume: 200 mL}", true, "sodium_hydroxide", "555 mmol"},
		{lime + "\n      - {substance: hydrochloric acid, strength: 9 mol/L, volume: 20 mL}", false, "calcium_hydroxide",
			"180 mmol more acid"},
		{lime + "\n      - {substance: calcium chloride, mass: 5 g}", true, "calcium_hydroxide", "calcium chloride " +
			"takes no acid"},
	} {
		c, ok := caseOf(t, strings.Replace(string(raw), lime, row.what, 1))
		if !ok {
			t.Fatalf("%s is refused", row.what)
		}
		k, err := process.Go(c, nil)
		if err != nil {
			t.Fatal(err)
		}
		f := massAt(waste.Read(c, nil, k, nil, nil), 10)
		for i := range k.Treated {
			if l := &k.Treated[i]; l.Step == 10 && (f == nil || f.Agent != row.agent || f.Value.V <= l.Added.V != row.enough) {
				t.Errorf("%s (%s): %+v of %v", row.what, row.from, f, l.Added)
			}
		}
	}
}
