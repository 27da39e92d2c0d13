package solution_test

import (
	"math"
	"slices"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/schemas/nearly"
	"etchbound/schemas/quantity"
)

func TestDensities(t *testing.T) {
	for _, row := range published(t, "thermochemistry_density.csv") {
		w := working.NewSheet()
		got := solution.Density(chemicals.Base(), w, row["model"], given("w", "g/g", number(t, row["wt_pct"])/100),
			row["degc"] == "20")
		if want := number(t, row["g_ml"]); !(math.Abs(got.V-want) <= number(t, row["tolerance"])) {
			t.Errorf("%s %s wt%%: %.4f g/mL, published %.4f (%s)", row["model"], row["wt_pct"], got.V, want, row["source"])
		}
		if last := w.Lines[len(w.Lines)-1]; last.Status != got.Status || last.Kind != working.KindTable {
			t.Errorf("%s: line %+v", row["model"], last)
		}
	}
}

func TestStrengths(t *testing.T) {
	for _, row := range published(t, "thermochemistry_strengths.csv") {
		st, sub := chemicals.Base(), substance(t, row["substance"])
		litre := given("V", "mL", 1000)
		c := solution.Charged(st, nil, sub, strength(quantity.Molarity, 1000*number(t, row["mol_l"])), litre, working.Num{})
		if want := number(t, row["wt_pct"]); !(math.Abs(100*c.Fraction.V-want) <= number(t, row["tolerance"])) {
			t.Errorf("%s mol/L %s: %.3f wt%%, published %.2f", row["mol_l"], sub, 100*c.Fraction.V, want)
		}
		if want := number(t, row["mol_l"]); !nearly.To(c.Solute.V, want, 1e-9) {
			t.Errorf("%s: %g mol in a litre, want %g", sub, c.Solute.V, want)
		}
	}
}

func TestHeatCapacityIsTheLowEnd(t *testing.T) {
	for _, row := range published(t, "thermochemistry_heat_capacity.csv") {
		sub, x := substance(t, row["model"]), number(t, row["wt_pct"])/100
		c := solution.Charged(chemicals.Base(), nil, sub, strength(quantity.MassFraction, x), working.Num{},
			given("m", "g", 1))
		want := number(t, row["j_g_k"])
		if !nearly.Between(c.HeatCapacity.V, want*(1-number(t, row["below"])), want) {
			t.Errorf("%s wt%% %s: %.3f J/g/K, printed %.2f", row["wt_pct"], sub, c.HeatCapacity.V, want)
		}
	}
}

// One litre of 48 wt% holds 27.6 mol at 1.150 g/mL (printed table 1.152 times
// 0.9982), and every way of stating the same strength gives the same portion.
func TestChargedTheSameHoweverStated(t *testing.T) {
	st, hf := chemicals.Base(), substance(t, "hydrofluoric acid")
	want := solution.Charged(st, nil, hf, strength(quantity.MassFraction, 0.48), given("V", "mL", 1000), working.Num{})
	if !nearly.To(want.Solute.V, 27.6, 0.05) || !nearly.To(want.Mass.V, 1150, 3) {
		t.Fatalf("%+v", want)
	}
	molality := want.Solute.V / (want.Mass.V * 0.52 / 1000)
	for name, c := range map[string]solution.Charge{
		"by mass": solution.Charged(st, nil, hf, strength(quantity.MassFraction, 0.48), working.Num{},
			given("m", "g", want.Mass.V)),
		"mol/L": solution.Charged(st, nil, hf, strength(quantity.Molarity, 1000*want.Solute.V), given("V", "mL", 1000),
			working.Num{}),
		"mol/L by mass": solution.Charged(st, nil, hf, strength(quantity.Molarity, 1000*want.Solute.V), working.Num{},
			given("m", "g", want.Mass.V)),
		"mol/kg": solution.Charged(st, nil, hf, strength(quantity.Molality, molality), given("V", "mL", 1000), working.Num{}),
		"g/L": solution.Charged(st, nil, hf, strength(quantity.MassConc, 0.48*want.Mass.V), given("V", "mL", 1000),
			working.Num{}),
	} {
		for k, pair := range [][2]working.Num{{c.Mass, want.Mass}, {c.Volume, want.Volume}, {c.Solute, want.Solute},
			{c.Water, want.Water}, {c.Fraction, want.Fraction}, {c.HeatCapacity, want.HeatCapacity}} {
			if !(math.Abs(pair[0].V-pair[1].V) <= 1e-9*pair[1].V) {
				t.Errorf("%s, number %d: %v, want %v", name, k, pair[0], pair[1])
			}
		}
	}
}

func TestChargedUndiluted(t *testing.T) {
	st := chemicals.Base()
	water := solution.Charged(st, nil, substance(t, "water"), quantity.Value{}, given("V", "mL", 100), working.Num{})
	// 99.705 g of water at 25 degC, 5.5345 mol, 4.184 J/g/K: handbook values.
	if !nearly.To(water.Water.V, 5.5345, 0.001) || water.Solute.V != 0 || !nearly.To(water.HeatCapacity.V, 417.2, 0.1) ||
		water.Fraction.V != 0 {
		t.Errorf("%+v", water)
	}
	ethanol := solution.Charged(st, nil, substance(t, "ethanol"), quantity.Value{}, given("V", "mL", 100), working.Num{})
	// 78.9 g, 1.713 mol, 112.3 J/mol/K: handbook values.
	if !nearly.To(ethanol.Solute.V, 1.713, 0.003) || !nearly.To(ethanol.HeatCapacity.V, 192.4, 0.5) ||
		ethanol.Water.V != 0 {
		t.Errorf("%+v", ethanol)
	}
	salt := solution.Charged(st, nil, substance(t, "LiF"), quantity.Value{}, working.Num{}, given("m", "g", 1.6))
	if !nearly.To(salt.Solute.V, 0.06169, 1e-5) || salt.Volume.V != 0 || salt.Volume.Unknown() {
		t.Errorf("%+v", salt)
	}
	// C5H9NO by Kopp's rule: 5*7.5 + 9*9.6 + 26 + 17 = 166.9 J/mol/K as a solid.
	nmp := solution.Charged(st, nil, substance(t, "NMP"), quantity.Value{}, given("V", "mL", 10), working.Num{})
	if want := 1.3 * 166.9 * nmp.Solute.V; nmp.HeatCapacity.Status != working.Estimated ||
		!nearly.Share(nmp.HeatCapacity.V, want, 1e-9) {
		t.Errorf("a solvent without a row, %g J/K by hand: %+v", want, nmp)
	}
}

// What is not known is unknown and never a number.
func TestChargedUnknowns(t *testing.T) {
	st := chemicals.Base()
	hcl := substance(t, "hcl")
	noStrength := solution.Charged(st, nil, hcl, quantity.Value{}, given("V", "mL", 100), working.Num{})
	if !noStrength.Solute.Unknown() || !noStrength.Mass.Unknown() {
		t.Errorf("acid without a strength: %+v", noStrength)
	}
	tooStrong := solution.Charged(st, nil, hcl, strength(quantity.Molarity, 20000), given("V", "mL", 100), working.Num{})
	if !tooStrong.Mass.Unknown() || !slices.Contains(tooStrong.Mass.Missing(),
		working.LacksDatum("density.hcl")) || !nearly.To(tooStrong.Solute.V, 2, 1e-12) {
		t.Errorf("20 mol/L hydrochloric acid: %+v", tooStrong)
	}
	nothing := solution.Charged(st, nil, hcl, strength(quantity.MassFraction, 0.3), working.Num{}, working.Num{})
	if !nothing.Mass.Unknown() || !nothing.Solute.Unknown() {
		t.Errorf("no amount: %+v", nothing)
	}
	d, _ := st.Row("weight.Cl")
	without := solution.Charged(st.With(map[int]float64{d.Index: math.NaN()}), nil, hcl,
		strength(quantity.MassFraction, 0.3),
		given("V", "mL", 100), working.Num{})
	if !without.Solute.Unknown() || !slices.Contains(without.Solute.Missing(),
		working.LacksDatum("weight.Cl")) || without.Mass.Unknown() {
		t.Errorf("without the weight of chlorine: %+v", without)
	}
}

// A solution without tables takes the assumed density and an estimate of its heat
// capacity: 10 g of 40 wt% C16H37NO are 6 g of water at 4.18 J/g/K and 15.4 mmol of
// 16*7.5 + 37*9.6 + 26 + 17 = 518.2 J/mol/K by Kopp's rule.
func TestChargedWithoutModel(t *testing.T) {
	w := working.NewSheet()
	c := solution.Charged(chemicals.Base(), w, substance(t, "tbaoh"), strength(quantity.MassFraction, 0.40),
		given("V", "mL", 10), working.Num{})
	if want := 0.97 * (6*4.18 + 4/259.5*518.2); c.Mass.Status != working.Estimated || c.Mass.V != 10 ||
		c.HeatCapacity.Status != working.Estimated || !nearly.Share(c.HeatCapacity.V, want, 2e-3) {
		t.Errorf("%g J/K by hand: %+v", want, c)
	}
	recheck(t, w)
}

// TestEstimateHoldsTheTabledSolutions: what is estimated of a solution that has a table, or
// a line, holds the tabled value, which the estimate does not use: standard tables of the
// Handbook of Chemistry and Physics and the Journal of Chemical and Engineering Data, vol.
// 54, p. 1725, as the rows of the tables cite them.
func TestEstimateHoldsTheTabledSolutions(t *testing.T) {
	st := chemicals.Base()
	share, _ := st.Row("cp.kopp.solution")
	for _, row := range []struct {
		slug    string
		percent []float64
	}{{"sulfuric_acid", []float64{10, 30, 50, 70, 90}}, {"sodium_hydroxide", []float64{5, 15, 30}},
		{"potassium_hydroxide", []float64{10, 20, 30}}, {"ammonia", []float64{5, 10, 25}},
		{"hydrochloric_acid", []float64{5, 10, 20, 37}}, {"hydrofluoric_acid", []float64{10, 30, 50, 70}}} {
		sub := substance(t, row.slug)
		for _, wt := range row.percent {
			x := wt / 100
			held := solution.Charged(st, nil, sub, strength(quantity.MassFraction, x), working.Num{}, given("m", "g", 1))
			rule := (1-x)*4.18 + x*sub.Formula.KoppHeat(st, nil).V/sub.Formula.MolarMass(st, nil).V
			if low, high := share.Low*rule, share.High*rule; !nearly.Between(held.HeatCapacity.V, low, high) {
				t.Errorf("%g wt%% %s: %v J/g/K is outside %.3g to %.3g", wt, row.slug, held.HeatCapacity.V, low, high)
			}
		}
	}
}

func TestLinesOfChargesHold(t *testing.T) {
	amounts := []quantity.Value{
		strength(quantity.MassFraction, 0.1), strength(quantity.Molarity, 2000), strength(quantity.Molality, 3),
		strength(quantity.MassConc, 50), {},
	}
	for _, sub := range chemicals.Library().All() {
		if sub.State == "aq" {
			continue
		}
		for _, s := range amounts {
			for _, byVolume := range []bool{true, false} {
				w := working.NewSheet()
				v, m := given("V_acid", "mL", 40), working.Num{}
				if !byVolume {
					v, m = working.Num{}, given("m_acid", "g", 40)
				}
				c := solution.Charged(chemicals.Base(), w, sub, s, v, m)
				plain := solution.Charged(chemicals.Base(), nil, sub, s, v, m)
				if !same(c.Mass, plain.Mass) || !same(c.Solute, plain.Solute) || !same(c.HeatCapacity, plain.HeatCapacity) {
					t.Errorf("%s: a sheet changes the numbers", sub)
				}
				recheck(t, w)
			}
		}
	}
}

func same(a, b working.Num) bool {
	return a.Status == b.Status && (a.V == b.V || a.Unknown() && b.Unknown())
}
