package classifying

import (
	"math"
	"slices"
	"testing"

	"etchbound/chemicals"
	"etchbound/schemas/nearly"
)

func sub(t *testing.T, name string) *chemicals.Substance {
	t.Helper()
	s, ok := chemicals.Library().Find(name)
	if !ok {
		t.Fatalf("%s is not held", name)
	}
	return s
}

// Estimates of acute toxicity of hydrofluoric acid and the classes they fall in:
// Regulation (EC) 1272/2008 Tables 3.1.1 and 3.1.2, recomputed by hand as 100/(share/ATE)
// with 5 mg/kg by mouth and skin and 0.5 mg/L of vapour.
func TestEstimateOfHydrofluoricAcid(t *testing.T) {
	for _, v := range []struct{ share, oral, vapour float64 }{
		{0.5, 1000, 100}, {1, 500, 50}, {2.5, 200, 20}, {5, 100, 10}, {10, 50, 5}, {20, 25, 2.5}, {30, 16.7, 1.67},
		{49, 10.2, 1.02},
	} {
		mix := []Part{{sub(t, "hf"), v.share}, {sub(t, "water"), 100 - v.share}}
		for way, want := range map[string]float64{"acute_oral": v.oral, "acute_dermal": v.oral, "acute_inhal": v.vapour} {
			if got := Estimate(way, mix); !nearly.Share(got, want, 0.003) {
				t.Errorf("%g wt%% by %s: %g, want %g", v.share, way, got, want)
			}
		}
	}
}

// Classes of mixtures: Regulation (EC) 1272/2008 Annex I, recomputed by hand; from 7 wt% of
// hydrofluoric acid on the stricter of two published readings (see substances.csv).
func TestClassesOfMixtures(t *testing.T) {
	for _, v := range []struct {
		name string
		mix  map[string]float64
		want []string
	}{
		{"hydrofluoric acid 0.5 %", map[string]float64{"hf": 0.5}, []string{"acute_oral_4", "acute_dermal_3", "eye_irrit_2"}},
		{"hydrofluoric acid 2.5 %", map[string]float64{"hf": 2.5}, []string{"met_corr_1", "acute_oral_3", "acute_dermal_2",
			"acute_inhal_4", "skin_corr_1b"}},
		{"hydrofluoric acid 5 %", map[string]float64{"hf": 5}, []string{"met_corr_1", "acute_oral_3", "acute_dermal_2",
			"acute_inhal_3", "skin_corr_1b"}},
		{"hydrofluoric acid 10 %", map[string]float64{"hf": 10}, []string{"met_corr_1", "acute_oral_2", "acute_dermal_1",
			"acute_inhal_2", "skin_corr_1a"}},
		{"hydrochloric acid 37 %", map[string]float64{"hcl": 37}, []string{"met_corr_1", "skin_corr_1b", "stot_se_3"}},
		{"hydrochloric acid 12 %", map[string]float64{"hcl": 12}, []string{"met_corr_1", "skin_irrit_2", "eye_irrit_2",
			"stot_se_3"}},
		{"hydrochloric acid 5 %", map[string]float64{"hcl": 5}, []string{"met_corr_1"}},
		{"sulfuric acid 14 %, hydrochloric acid 10 %: shares add up", map[string]float64{"sulfuric_acid": 14, "hcl": 10},
			[]string{"met_corr_1", "skin_corr_1b", "stot_se_3"}},
		{"two general irritants of 6 %", map[string]float64{"lithium_chloride": 6, "potassium_carbonate": 6},
			[]string{"skin_irrit_2", "eye_irrit_2"}},
		{"ammonia 3 %", map[string]float64{"ammonia": 3}, []string{"skin_irrit_2", "eye_dam_1", "aquatic_chronic_3"}},
		{"copper chloride 3 %: ten times 3 is over 25", map[string]float64{"copper_ii_chloride": 3},
			[]string{"eye_dam_1", "aquatic_chronic_2"}},
		{"copper chloride 0.35 %: a hundred times 0.35 is over 25", map[string]float64{"copper_ii_chloride": 0.35},
			[]string{"aquatic_chronic_3"}},
		{"copper chloride 0.2 %", map[string]float64{"copper_ii_chloride": 0.2}, nil},
		{"salt water", map[string]float64{"sodium_chloride": 20}, nil},
	} {
		var mix []Part
		for name, share := range v.mix {
			mix = append(mix, Part{sub(t, name), share})
		}
		c := Mixture(mix)
		var got []string
		for _, f := range c.Classes {
			got = append(got, f.Class.Key)
		}
		if !slices.Equal(got, v.want) {
			t.Errorf("%s: %v, want %v", v.name, got, v.want)
		}
	}
}

// What is not held is named, and a share that is not known counts as all of it.
func TestWhatIsNotKnownIsSevere(t *testing.T) {
	c := Mixture([]Part{{sub(t, "copper(I) iodide"), 10}, {sub(t, "hf"), math.NaN()}})
	if !slices.Contains(c.NotHeld, sub(t, "copper(I) iodide").Name) {
		t.Errorf("not held: %v", c.NotHeld)
	}
	if !c.Has("skin_corr_1a") || !c.Has("acute_dermal_1") {
		t.Errorf("an unknown share of hydrofluoric acid: %+v", c.Classes)
	}
}

// More of anything never takes a class away nor makes one milder.
func TestMoreIsNeverMilder(t *testing.T) {
	for slug := range held().substances {
		s := sub(t, slug)
		last := Classified{}
		for _, share := range []float64{0.05, 0.1, 0.3, 1, 2, 2.5, 5, 7, 10, 15, 20, 25, 35, 50, 70, 99, 100} {
			c := Mixture([]Part{{s, share}})
			for _, was := range last.Classes {
				milder := !slices.ContainsFunc(c.Classes, func(f Found) bool {
					return f.Class.Family == was.Class.Family && f.Class.Rank <= was.Class.Rank ||
						f.Class.Code == "H314" && was.Class.Family == "eye"
				})
				if milder {
					t.Errorf("%s at %g wt%% loses %s", slug, share, was.Class.Key)
				}
			}
			last = c
		}
	}
}

// Entries of the model regulations by strength (data sheets and a carrier's list, see
// transport.csv).
func TestEntriesByStrength(t *testing.T) {
	for _, v := range []struct {
		mix        map[string]float64
		dry        bool
		un, group  string
		subsidiary string
	}{
		{map[string]float64{"hf": 70}, false, "UN 1790", "I", "6.1"},
		{map[string]float64{"hf": 49}, false, "UN 1790", "II", "6.1"},
		{map[string]float64{"hf": 10, "sulfuric_acid": 40}, false, "UN 1786", "I", "6.1"},
		{map[string]float64{"hf": 5, "hcl": 20}, false, "UN 2922", "II", "6.1"},
		{map[string]float64{"hcl": 36}, false, "UN 1789", "II", ""},
		{map[string]float64{"hcl": 10}, false, "UN 1789", "III", ""},
		{map[string]float64{"tmaoh": 25}, false, "UN 3560", "I", "8"},
		{map[string]float64{"tmaoh": 10}, false, "UN 1835", "II", "6.1"},
		{map[string]float64{"ammonium_fluoride": 100}, true, "UN 2505", "III", ""},
		{map[string]float64{"hf": 60}, false, "UN 1790", "II", "6.1"},
		{map[string]float64{"tmaoh": 2.5}, false, "UN 1835", "III", ""},
		{map[string]float64{"sulfuric_acid": 51}, false, "UN 2796", "II", ""},
		{map[string]float64{"hydrogen_peroxide": 60}, false, "UN 2014", "II", "8"},
		{map[string]float64{"hydrogen_peroxide": 65}, false, "UN 2015", "I", "8"},
		{map[string]float64{"hydrogen_peroxide": 8}, false, "UN 2984", "III", ""},
		{map[string]float64{"hydrogen_peroxide": 3}, false, free, "", ""},
		{map[string]float64{"sodium_hydroxide": 100}, true, "UN 1823", "II", ""},
		{map[string]float64{"potassium_bifluoride": 100}, true, "UN 1811", "II", "6.1"},
		{map[string]float64{"hydrazine": 37}, false, "UN 3293", "III", ""},
		{map[string]float64{"hydrazine_monohydrate": 100}, false, "UN 2030", "II", "6.1"},
		{map[string]float64{"acetic_acid": 80}, false, "UN 2790", "II", ""},
		{map[string]float64{"acetic_acid": 10}, false, free, "", ""},
		{map[string]float64{"tbaoh": 2}, false, "UN 3267", "II", ""},
		// Class 3 of group II comes before class 8 of group II (2.0.3.3, memory).
		{map[string]float64{"isopropanol": 95, "hf": 0.05, "hcl": 0.1}, false, "UN 1219", "II", ""},
		{map[string]float64{"methanol": 95, "hf": 0.03, "hcl": 0.03}, false, "UN 1230", "II", "6.1"},
		{map[string]float64{"isopropanol": 70, "hcl": 26}, false, "UN 2924", "II", "8"},
		{map[string]float64{"isopropanol": 90, "hf": 2, "hcl": 2}, false, "UN 3286", "II", "6.1, 8"},
		{map[string]float64{"isopropanol": 10, "hf": 0.05, "hcl": 0.1}, false, "UN 1993", "II", ""},
		{map[string]float64{"dmf": 95, "hf": 0.05, "hcl": 0.1}, false, "UN 2265", "III", ""},
		{map[string]float64{"isopropanol": 60, "hydrogen_peroxide": 20}, false, "", "", ""},
		// What has no entry is not restricted only where all of it has none (memory).
		{map[string]float64{"ammonia": 9, "lithium_chloride": 5}, false, free, "", ""},
		{map[string]float64{"lithium_chloride": 100}, true, free, "", ""},
		{map[string]float64{"lithium_chloride": 20, "hcl": 1}, false, "UN 1789", "III", ""},
		{map[string]float64{"lithium_chloride": 20, "oxalic_acid": 1}, false, "", "", ""},
		{map[string]float64{"lithium_chloride": math.NaN()}, false, "", "", ""},
	} {
		var mix []Part
		for name, share := range v.mix {
			mix = append(mix, Part{sub(t, name), share})
		}
		c := Mixture(mix)
		e, ok := Carried(&c, mix, v.dry)
		if ok != (v.un != "") || e.Number != v.un || e.Group != v.group || e.Subsidiary != v.subsidiary {
			t.Errorf("%v: %+v", v.mix, e)
		}
	}
}
