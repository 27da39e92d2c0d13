package hazards_test

import (
	"testing"

	"etchbound/hazards/figure"
)

// Acid that meets base outside of a step called neutralise releases the same
// heat: 55.8 kJ/mol for strong acid and strong base (H+ + OH-, -285.83 +
// 230.015; read), 68.8 for HF(aq), 113.3 for HF(aq) and NaOH(s), 129.5 for
// 2 H+ and Ca(OH)2(s). A review may leave it unknown, but not out.
func TestAcidThatMeetsBase(t *testing.T) {
	for _, tt := range []struct {
		name        string
		first, then string
		least       float64 // kJ
	}{
		{"hydrochloric acid and lye", hcl9, "{substance: sodium hydroxide, strength: 4 mol/L, volume: 45 mL}", 0.180 * 55.8},
		{"lye and hydrochloric acid", "{substance: sodium hydroxide, strength: 4 mol/L, volume: 45 mL}", hcl9, 0.180 * 55.8},
		{"hydrochloric acid and organic base", hcl9, "{substance: TMAOH, strength: 25 wt%, volume: 60 mL}", 0.16 * 55.8},
		{"hydrofluoric acid and solid lye", "{substance: HF, strength: 10 wt%, volume: 20 mL}", "{substance: sodium " +
			"hydroxide, mass: 4 g}", 0.100 * 113.3 * 0.99},
		{"hydrochloric acid and lime", hcl9, "{substance: calcium hydroxide, mass: 6 g}", 0.081 * 129.5 * 0.99},
	} {
		t.Run(tt.name, func(t *testing.T) {
			rv := review(t, head+places+"steps:\n"+charges(tt.first)+charges(tt.then))
			f := figureOf(&rv, "heat.mix.total@2")
			if f == nil {
				t.Fatal("the step releases heat and has no figure of it")
			}
			if !f.Value.Unknown() && f.Value.V < tt.least*0.98 {
				t.Errorf("%v, at least %.3g kJ are released", f.Value, tt.least)
			}
			if r := figureOf(&rv, "heat.mix.rise@2"); r == nil || f.Value.Unknown() != r.Value.Unknown() {
				t.Errorf("heat %v, rise %v", f.Value, r)
			}
		})
	}
}

// Base frees ammonia from an ammonium liquor in whatever step it meets it.
func TestBaseThatMeetsAmmonium(t *testing.T) {
	rv := review(t, head+places+"steps:\n"+charges("{substance: water, volume: 20 mL}", "{substance: ammonium "+
		"bifluoride, mass: 5 g}")+
		charges("{substance: sodium hydroxide, mass: 8 g}"))
	found := false
	for _, s := range said(&rv) {
		found = found || containsAny(s, "ammonia")
	}
	for i := range rv.Figures {
		found = found || rv.Figures[i].Quantity == "neutralise.ammonia" &&
			(rv.Figures[i].Value.Unknown() || rv.Figures[i].Value.V > 0)
	}
	if !found {
		t.Error("87.7 mmol of ammonium meet 200 mmol of hydroxide and nothing says ammonia")
	}
}

// Carbonate frees carbon dioxide in whatever step acid meets it; in a shut
// place that is pressure.
func TestCarbonateThatMeetsAcid(t *testing.T) {
	carbonate := "{substance: sodium carbonate, mass: 5 g}"
	for name, then := range map[string]string{"charge": charges(carbonate),
		"neutralise": "  - {do: neutralise, in: pot, what: [" + carbonate + "]}\n"} {
		rv := review(t, head+"places:\n  pot: {kind: bottle, closure: closed, capacity: 500 mL}\nsteps:\n"+charges(hcl9)+then)
		if v, ok := verdicts(&rv)["gas.closed.pressure@pot+no_rated_container"]; !ok || v != figure.Exceeds {
			t.Errorf("%s: 47 mmol of carbon dioxide in a shut bottle: verdict %v (there %v)", name, v, ok)
		}
	}
}
