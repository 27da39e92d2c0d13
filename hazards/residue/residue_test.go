package residue_test

import (
	"fmt"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/residue"
	"etchbound/hazards/route"
	"etchbound/schemas/nearly"
)

const spent = `route: etchbound/1
title: check
basis: {status: invented}
places:
  tank: {kind: drum, material: HDPE, lid_material: HDPE, capacity: 5 L, closure: vented, vent: 10 mm}
steps:
  - {do: charge, in: tank, what: [%s], temperature: 20 degC, attended: true}
  - {do: neutralise, in: tank, what: [{substance: water, volume: 100 mL}, {substance: %s, mass: 10 g}], over: 30 min,
     attended: true}
`

func left(t *testing.T, what, base string) *figure.Figure {
	t.Helper()
	r, problems, err := route.Load("r.yaml", strings.NewReader(fmt.Sprintf(spent, what, base)))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	c.Brief = true
	v, err := hazards.Make(c)
	if err != nil {
		t.Fatal(err)
	}
	for i := range v.Figures {
		if f := &v.Figures[i]; f.Quantity == "neutralise.residual_fluoride" && f.Agent != "" {
			return f
		}
	}
	t.Fatal("no figure of the fluoride that is left")
	return nil
}

// Fluoride left over fluorite and hydroxide of aluminium: the solubility of fluorite at
// 10^-10.6 leaves some 7 to 8 mg/L in pure lime water (handbook value, from memory), of
// lithium fluoride 0.0516 mol/L or about 1 g/L of fluoride (handbook, from memory); soda lye
// alone settles nothing of hydrofluoric acid, so that all 9.5 g stay, in 1 L and the 0.1 L of the step.
func TestFluorideLeft(t *testing.T) {
	for _, v := range []struct {
		what, base string
		low, high  float64 // mg/L at the end
	}{
		{"{substance: hydrofluoric acid, strength: 1 wt%, volume: 1 L}", "calcium hydroxide", 3, 12},
		{"{substance: hydrofluoric acid, strength: 1 wt%, volume: 1 L}", "sodium hydroxide", 8500, 8900},
		{"{substance: lithium fluoride, mass: 5 g}, {substance: hydrochloric acid, strength: 1 wt%, volume: 1 L}",
			"sodium hydroxide", 700, 1500},
		{"{substance: tetrafluoroboric acid, strength: 1 wt%, volume: 1 L}", "calcium hydroxide", 7000, 9000},
		// 0.1 mol of it: the 7.4 g of lime that acid and ammonium take leave what fluorite does, not the half
		// of the fluoride, 3800 mg/L, that is still dissolved at pH 8 and stands in the range.
		{"{substance: ammonium bifluoride, mass: 5.704 g}, {substance: water, volume: 400 mL}", "calcium hydroxide", 1, 30},
		// Phosphate takes calcium from fluoride and hides none of it: of the 8700 mg/L tens are left at most.
		{"{substance: hydrofluoric acid, strength: 1 wt%, volume: 1 L}, {substance: phosphoric acid, strength: 85 wt%, " +
			"volume: 5 mL}", "calcium hydroxide", 2, 40},
	} {
		f := left(t, v.what, v.base)
		if strings.Contains(v.what, "ammonium") && !nearly.Share(f.High().V, 3800, 0.15) {
			t.Errorf("%s: up to %g mg/L, want half of the fluoride", v.what, f.High().V)
		}
		if !nearly.Between(f.Value.V, v.low, v.high) || f.High().V < f.Value.V || f.Low().V > f.Value.V {
			t.Errorf("%s with %s: %g (%g to %g), want %g to %g", v.what, v.base, f.Value.V, f.Low().V, f.High().V, v.low,
				v.high)
		}
	}
}

// Where no equilibrium is held of something, no fluoride is taken to settle: 10 g/kg of HF
// is 9.595 g of fluoride a kg of water, in 0.993 kg of it and the 0.1 kg of the step.
func TestWhatIsNotHeldSettlesNothing(t *testing.T) {
	f := left(t, "{substance: hydrofluoric acid, strength: 1 wt%, volume: 1 L}, {substance: dmso, mass: 5 g}",
		"calcium hydroxide")
	if !nearly.Share(f.Value.V, 9595*0.993/1.093, 0.01) {
		t.Errorf("%g mg/L, want all of it", f.Value.V)
	}
}

// Fluoride that stays in its complex is told of the water that is there: 20 g of 48 wt% HBF4
// hold 0.1093 mol and 10.4 g of water; with the 100 mL of the step that is 4*0.1093*18.998 g
// in 0.110 kg, 75.3 g/L, whatever water the equilibria need (hand calculation).
func TestComplexesAreToldOfTheWaterThatIsThere(t *testing.T) {
	for _, base := range []string{"calcium hydroxide", "calcium carbonate"} {
		f := left(t, "{substance: tetrafluoroboric acid, strength: 48 wt%, mass: 20 g}", base)
		if !nearly.Share(f.Value.V, 75300, 0.01) || !nearly.Share(f.High().V, 75300, 0.01) {
			t.Errorf("%s: %g (to %g) mg/L, want 75300", base, f.Value.V, f.High().V)
		}
	}
}

// What a step writes that ends at no pH of its own is told by its amount: 1 L of 1 wt% HF holds
// 0.497 mol of fluoride in 1.093 kg of water with the step's. 10 g of CaCl2.2H2O (147.01 g/mol)
// bind 0.136 of it and leave 6.27 g/L, 10 g of chalk (100.09 g/mol) 0.200 and 5.17 g/L (by hand:
// what stays in solution beside fluorite is less than a twentieth of that in acid).
func TestAnAgentWithoutAnEndIsToldByItsAmount(t *testing.T) {
	const acid = "{substance: hydrofluoric acid, strength: 1 wt%, volume: 1 L}"
	for base, want := range map[string]float64{"calcium chloride dihydrate": 6270, "calcium carbonate": 5170} {
		f := left(t, acid, base)
		if !nearly.Share(f.Value.V, want, 0.05) || f.High().V < f.Value.V*1.01 || f.Agent == "calcium_hydroxide" {
			t.Errorf("%s: %s %g (to %g) mg/L, want about %g", base, f.ID, f.Value.V, f.High().V, want)
		}
	}
}

// Carbonate of an earlier rinse takes calcium that would bind fluoride: with 0.05 mol/kg of it as
// HCO3- at pH 8, CO3 2- is some 2.3e-4 (pK 10.33), calcium over calcite (10^-8.48) 1.4e-5 and fluoride
// over fluorite (10^-10.6) 1.3e-3 mol/kg or 25 mg/L without activities, which raise it, against 7.4.
func TestCarbonateOfARinseLeavesMoreFluoride(t *testing.T) {
	const acid = "{substance: hydrofluoric acid, strength: 0.1 wt%, volume: 1 L}"
	plain := left(t, acid, "calcium hydroxide").Value.V
	rinsed := left(t, acid+", {substance: sodium hydrogencarbonate, mass: 8.4 g}", "calcium hydroxide").Value.V
	if !nearly.Between(plain, 5, 10) || !nearly.Between(rinsed, 20, 80) {
		t.Errorf("%g mg/L without, %g with", plain, rinsed)
	}
}

// Citrate and ascorbate are held: lime in excess of both leaves what fluorite does, below
// 20 mg/L, where all of the fluoride would be 8.7 g/L.
func TestCitrateAndAscorbateAreHeld(t *testing.T) {
	f := left(t, "{substance: hydrofluoric acid, strength: 1 wt%, volume: 1 L}, {substance: citric acid, mass: 5 g}, "+
		"{substance: sodium ascorbate, mass: 1 g}", "calcium hydroxide")
	if !nearly.Between(f.Value.V, 0.5, 20) {
		t.Errorf("%g mg/L", f.Value.V)
	}
}

// What the table of anions names is in the library.
func TestAnionsAreOfSubstances(t *testing.T) {
	for slug := range residue.Anions() {
		if _, there := chemicals.Library().Find(slug); !there {
			t.Errorf("%s is no substance", slug)
		}
	}
}
