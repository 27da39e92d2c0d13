package hazards_test

import (
	"strings"
	"testing"

	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// salty is a gram of powder in 20 mL of 6 mol/L hydrochloric acid with a gram of lithium
// fluoride, 0.12 mol of chloride and 0.03855 mol of fluoride.
var salty = etches("phase: Ti3AlC2, mass: 1 g, "+pure,
	"{substance: hydrochloric acid, strength: 6 mol/L, volume: 20 mL}",
	"{substance: lithium fluoride, mass: 1 g}")

// Another acid taken for the hydrochloric acid, 20 mL of it, by hand: nitric acid of 15.7
// mol/L is 0.314 mol, sulfuric acid of 18.4 mol/L is 0.368 mol. NOCl takes one of acid and one of
// chloride, chlorine 2/3 and 2 (three electrons to NO), HCl 1/2 and 1, each 1/(a/n + b/n_Cl)
// where part of what is poured came from either bottle, at 24.4654 L/mol.
func TestAcidTakenForAnother(t *testing.T) {
	long.NotShort(t)
	rv := followed(t, salty)
	for id, want := range map[string]float64{
		"gas.evolved.bound@2/nitrogen_dioxide:nitric_for_hydrochloric":  0.314 * 24.4654,
		"gas.evolved.bound@2/nitrosyl_chloride:nitric_for_hydrochloric": 24.4654 / (1/0.314 + 1/0.12),
		"gas.evolved.bound@2/chlorine:nitric_for_hydrochloric":          24.4654 / (0.6667/0.314 + 2/0.12),
		"gas.evolved.bound@2/hf:sulfuric_for_hydrochloric":              0.03855 * 24.4654,
		"gas.evolved.bound@2/hcl:sulfuric_for_hydrochloric":             24.4654 / (0.5/0.368 + 1/0.12),
	} {
		f := figureOf(&rv, id)
		if f == nil || !nearly.Share(f.Value.V, want, 0.002) {
			t.Errorf("%s is %+v, want %g L", id, f, want)
		}
	}
	set := 20.0
	heat, bound := figureOf(&rv, "heat.etch.total@2").Value.V, figureOf(&rv, "heat.etch.dissolution_bound@2").Value.V
	c := 1000 * heat / figureOf(&rv, "heat.adiabatic_rise@2").Value.V
	// 5.1386 mmol of 15 electrons are 38.54 mmol of hydrogen, at 260.3 kJ/mol to water and nitrogen.
	nitric := set + 1000*(bound+0.03854*260.3)/(c*3.5/4.2)
	// 0.977 mol of water to 0.368 mol of acid: 74.73*r/(r + 1.798) is 44.6 kJ/mol.
	sulfuric := set + 1000*(heat+0.368*44.6)/(c+2.5*20)
	for key, want := range map[string]float64{"nitric": nitric, "sulfuric": sulfuric} {
		id := "heat.temperature_peak@2:" + key + "_for_hydrochloric"
		if f := figureOf(&rv, id); f == nil || !nearly.To(f.Value.V, want, 0.05*(want-set)) {
			t.Errorf("%s is %+v, want %.0f degC", id, f, want)
		}
		if v := verdicts(&rv)[id+"+boiling_if_it_fails"]; v != exceeds {
			t.Errorf("%s: %v", id, v)
		}
	}
}

// Where no hydrochloric acid is there, none is mistaken; where nobody says how much, it is
// not known what comes.
func TestNoAcidToBeMistaken(t *testing.T) {
	long.NotShort(t)
	rv := followed(t, etches("phase: Ti3AlC2, mass: 1 g, "+pure, hf10))
	for i := range rv.Figures {
		if strings.Contains(rv.Figures[i].Case.Failure, "_for_hydrochloric") {
			t.Errorf("%s without hydrochloric acid", rv.Figures[i].ID)
		}
	}
	rv = followed(t, strings.Replace(salty, "volume: 20 mL", "amount: 0.12 mol", 1))
	for _, id := range []string{"gas.evolved.bound@2/nitrogen_dioxide:nitric_for_hydrochloric",
		"heat.temperature_peak@2:sulfuric_for_hydrochloric"} {
		if f := figureOf(&rv, id); f == nil || !f.Value.Unknown() {
			t.Errorf("%s of nobody knows how much is %+v", id, f)
		}
	}
}
