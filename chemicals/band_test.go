package chemicals_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
)

// Every datum has a band that its own value and range lie in, and no band is of
// nothing: one with neither end would believe anything.
func TestEveryDatumHasABand(t *testing.T) {
	for _, d := range chemicals.Base().Rows() {
		b, ok := chemicals.BandOf(d.ID)
		if !ok || math.IsInf(b.Low, 0) || math.IsInf(b.High, 0) {
			t.Errorf("%s: band %+v, found %t", d.ID, b, ok)
			continue
		}
		for _, x := range []float64{d.Value, d.Low, d.High} {
			if !math.IsNaN(x) && !(x >= b.Low && x <= b.High) {
				t.Errorf("%s: our own %g lies outside of its band of %g to %g", d.ID, x, b.Low, b.High)
			}
		}
	}
}

// What a chemist would not believe, by the sign of what is meant (an exothermic etch,
// a share, a heat capacity) or by the kind: water is 1 kg/L, hydrogen burns from 4 %.
func TestOverridesOutsideOfTheBandAreRefused(t *testing.T) {
	nan := math.NaN()
	for _, row := range []struct {
		id               datum.ID
		value, low, high float64
		taken            bool
		says             string
	}{
		{"etch_heat.Ti3AlC2", -720, nan, nan, false, "heat released is written positive here"},
		{"etch_heat.Ti3AlC2", 720, 650, 790, true, ""},
		{"etch_heat.Ti3AlC2", 720, -650, 790, false, "the low end of etch_heat.Ti3AlC2 cannot be -650 kJ/mol"},
		{"etch_heat.V4AlC3", -700, nan, nan, false, "50 to 3000 kJ/mol"},
		{"etch_hydrogen.Ti3AlC2", -3, nan, nan, false, "0 to 20 mol/mol"},
		{"etch_conversion.Ti3AlC2", 97, nan, nan, false, "0 to 1: a share of one"},
		{"heat.impurity.hf.Al", -568, nan, nan, false, "positive here"},
		{"hydrogen.impurity.Al", -1.5, nan, nan, false, "positive here"},
		{"density.Ti3AlC2", 0.42, nan, nan, false, "2 to 20 g/mL"}, {"density.Ti3AlC2", 4.2, 4.1, 4.3, true, ""},
		{"density.LiF(s)", 26.4, nan, nan, false, "g/mL"},
		{"cp.LiF(s)", -41.6, nan, nan, false, "positive"}, {"cp.H2O(l)", 4.18, nan, nan, false, "J/mol/K"},
		{"enthalpy.AlF3(s)", 1510, nan, nan, false, "negative here"}, {"enthalpy.AlF3(s)", -1500, nan, nan, true, ""},
		{"enthalpy.Al(s)", -1, nan, nan, false, "zero by definition"},
		{"hydrogen.flammable", 0.04, nan, nan, false, "lower flammable limit"},
		{"kinetics.activation", -60, nan, nan, false, "positive"}, {"kinetics.activation", 80, nan, nan, true, ""},
		{"kinetics.seed", 10, nan, nan, false, "a share of one"}, {"air.oxygen", 0.209, nan, nan, false, "19 to 21 vol%"},
		{"dissolution_water.NaOH(s)", -44.5, nan, nan, false, "positive here"},
		{"weight.Ti", 22, nan, nan, false, "g/mol"}, {"weight.Li", 6.99, nan, nan, true, ""},
		{"water.density", 997, nan, nan, false, "g/mL"}, {"wash.retained.acid", -5, nan, nan, false, "mL/g"},
	} {
		_, _, err := chemicals.Base().Override([]chemicals.Override{{ID: row.id, Value: row.value, Low: row.low,
			High: row.high, At: "data[0]", From: "route", Source: "own"}})
		var out *chemicals.OutsideBand
		switch {
		case row.taken && err != nil:
			t.Errorf("%s of %g: %v", row.id, row.value, err)
		case !row.taken && (!errors.As(err, &out) || !strings.Contains(err.Error(), row.says)):
			t.Errorf("%s of %g: %v, want %q", row.id, row.value, err, row.says)
		}
	}
}

// A route is held against our value, not against what a site made of it.
func TestBandsDoNotDrift(t *testing.T) {
	nan := math.NaN()
	of := func(value float64, from string) chemicals.Override {
		return chemicals.Override{ID: "density.LiF(s)", Value: value, Low: nan, High: nan, From: from, Source: "own"}
	}
	if _, _, err := chemicals.Base().Override([]chemicals.Override{of(3.1, "site"), of(3.6, "route")}); err == nil {
		t.Error("the second of two steps away is taken")
	}
}
