package upset

import (
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/schemas/nearly"
)

// Both spellings of a step are the same acid: mol/L = 1000 w rho/M, by the
// densities of the tables and the molar masses of IUPAC 2021.
func TestAcidSteps(t *testing.T) {
	molar := map[string]float64{"hf": 20.006, "hcl": 36.46}
	for _, s := range chemicals.Strengths("bought") {
		w := s.WT / 100
		rho := solution.Density(chemicals.Base(), nil, s.Substance, working.Exact("w", "1", w, "test"), true)
		if got := 1000 * w * rho.V / molar[s.Substance]; !nearly.Share(got, s.Molar, 0.01) {
			t.Errorf("%s: %g wt%% is %.4g mol/L, the step says %g", s.Substance, s.WT, got, s.Molar)
		}
	}
}
