package hazards_test

import (
	"slices"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/process"
)

// What a substance that is not held may give is one short sentence, once, however many
// gases that could be; a gas that the rest gives by itself is named beside it (NaCl and
// sulfuric acid free HCl; what people read: one line of a page holds about 110 signs).
func TestGasesOfWhatIsNotHeldAreOneSentence(t *testing.T) {
	const strange = "{substance: florbide, mass: 1 g, not_held: true}"
	const hcl = "{substance: HCl, strength: 20 wt%, mass: 10 g}"
	const salt, sulfuric = "{substance: NaCl, mass: 1 g}", "{substance: sulfuric acid, strength: 50 wt%, mass: 10 g}"
	for name, c := range map[string]struct {
		yaml string
		says []string
	}{
		"in acid, then powder": {etches("phase: Ti3AlC2, mass: 1 g, "+pure, hcl, strange), []string{"fact.gas_of_unheld"}},
		"two of them": {etches("phase: Ti3AlC2, mass: 1 g, "+pure, hcl, strange, "{substance: morvane, mass: 1 g, "+
			"not_held: true}"), []string{"fact.gas_of_unheld", "fact.gas_of_unheld"}},
		"beside what frees HCl": {bottle(salt, sulfuric, strange), []string{"fact.gas_of_unheld", "fact.toxic_gas_unknown"}},
		"all held":              {bottle(salt, sulfuric), []string{"fact.toxic_gas"}},
	} {
		var got []string
		for _, f := range assess(t, c.yaml).Walk.Facts {
			if f.ID == "toxic_gas" {
				got = append(got, f.Says.Key)
			}
		}
		slices.Sort(got)
		if !slices.Equal(got, c.says) {
			t.Errorf("%s: %v, want %v", name, got, c.says)
		}
	}
}

// What is not held and stands in a shut bottle may give gas, so that it is kept vented; and under
// the skin it may be as bad as what is put between the layers later.
func TestWhatIsNotHeldStaysInTheLiquor(t *testing.T) {
	const strange, water = "{substance: florbide, mass: 1 g, not_held: true}", "{substance: water, volume: 10 mL}"
	for what, unheld := range map[string]bool{strange + ", " + water: true, water: false} {
		a := assess(t, bottle(what)+"  - {do: intercalate, in: pot, what: [{substance: TMAOH, strength: 25 wt%, "+
			"volume: 1 mL}], temperature: 20 degC}\n")
		gas := slices.ContainsFunc(a.Walk.Facts, func(f process.Fact) bool {
			return f.ID == "unfollowed" && f.Says.Key == "fact.unfollowed_unheld"
		})
		skin := slices.ContainsFunc(a.Figures, func(f figure.Figure) bool {
			return f.Quantity == "skin.lethal" && f.Place == figure.Step(2) && f.Value.Unknown()
		})
		if gas != unheld || skin != unheld {
			t.Errorf("%s: gas %v, skin %v, want both %v", what, gas, skin, unheld)
		}
	}
}

// Oxygen of a peroxide is bounded by what of it there is; beside what may be more of it nobody
// knows a bound, and it is told as gas that is not worked out.
func TestOxygenOfPeroxideBesideWhatIsNotHeldHasNoBound(t *testing.T) {
	const peroxide = "{substance: hydrogen peroxide, strength: 3 wt%, volume: 10 mL}"
	const strange = "{substance: florbide, formula: H2O2, strength: 5 wt%, volume: 9 mL, not_held: true}"
	for says, bath := range map[string][]string{"fact.bounded": {peroxide}, "fact.unfollowed": {peroxide, strange}} {
		facts := assess(t, bottle(bath...)).Walk.Facts
		if !slices.ContainsFunc(facts, func(f process.Fact) bool { return f.ID == "unfollowed" && f.Says.Key == says }) {
			t.Errorf("%v: nothing says %s: %+v", bath, says, facts)
		}
	}
}

// Nitric acid poured for 10 mL of hydrochloric acid holds 15.7 mol/L (70 wt% of 1.41 g/mL,
// molar mass 63.01 g/mol), so no more than 0.157 mol of nitrogen dioxide: 3.841 L at 24.4654
// L/mol. What is not held and may hold nitrogen can bring more of it.
func TestGasOfAWrongAcidIsUnknownBesideWhatIsNotHeld(t *testing.T) {
	const hcl = "{substance: HCl, strength: 20 wt%, volume: 10 mL}"
	const id = "gas.evolved.bound@2/nitrogen_dioxide:nitric_for_hydrochloric"
	for salt, want := range map[string]float64{
		"{substance: lithium fluoride, mass: 1 g}":                        3.841,
		"{substance: florbide, not_held: true, mass: 1 g}":                unknown,
		"{substance: florbide, formula: KNO3, not_held: true, mass: 1 g}": unknown,
		"{substance: florbide, formula: CsF, not_held: true, mass: 1 g}":  3.841,
	} {
		a := assess(t, etches("phase: Ti3AlC2, mass: 1 g, "+pure, hcl, salt))
		i := slices.IndexFunc(a.Figures, func(f figure.Figure) bool { return f.ID.String() == id })
		if i < 0 {
			t.Errorf("%s: no %s", salt, id)
		} else if got := a.Figures[i].Value.V; !within(got, want, 1e-3) {
			t.Errorf("%s: %g L, want %g", salt, got, want)
		}
	}
}

// Silicide gives silane with acid and silicon tetrafluoride where fluoride is left; how much is
// left beside what is not held nobody knows, so both are told.
func TestGasesOfSilicideBesideWhatIsNotHeld(t *testing.T) {
	const strange = "{substance: florbide, mass: 1 g, not_held: true}"
	const powder = "phase: Ti3AlC2, mass: 1 g, impurities: [{formula: CrSi2, share: 1 wt%}]"
	var got []string
	for _, x := range assess(t, etches(powder, hf10, strange)).Walk.Evolved {
		if x.Gas != nil {
			got = append(got, x.Gas.Slug)
		}
	}
	for _, gas := range []string{"silane", "silicon_tetrafluoride"} {
		if !slices.Contains(got, gas) {
			t.Errorf("no %s among %v", gas, got)
		}
	}
}
