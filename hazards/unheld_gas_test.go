package hazards_test

import (
	"slices"
	"testing"
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
		"in acid, then powder":  {etches("phase: Ti3AlC2, mass: 1 g, "+pure, hcl, strange), []string{"fact.gas_of_unheld"}},
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
