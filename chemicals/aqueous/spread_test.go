package aqueous_test

import (
	"testing"

	"etchbound/chemicals/aqueous"
	"etchbound/schemas/nearly"
)

// What others make of a solution stands beside ours: 0.5 mol/kg of HF is pH 1.537 by ours, and 1.584
// and 1.778 by two other sets; calcium fluoride leaves 7.4 mg/kg by ours and 7.4 to 11.3 by four (a
// file of published sets, worked out by another program). Strong acid is beyond ours.
func TestSpreadOfOtherSets(t *testing.T) {
	all := aqueous.Spreads()
	find := func(f, cl float64, solid string) *aqueous.Spread {
		for i := range all {
			s := &all[i]
			mol := map[string]float64{}
			for _, a := range s.Totals {
				mol[a.Of] = a.Mol
			}
			if s.Solid == solid && mol["F"] == f && mol["Cl"] == cl && mol["K"] == 0 {
				return s
			}
		}
		t.Fatalf("no solution of %g F, %g Cl, %s", f, cl, solid)
		return nil
	}
	hf, fluorite, acid := find(0.5, 0, ""), find(0, 0, "Fluorite"), find(3, 6, "")
	if !nearly.To(hf.PH.Central, 1.537, 0.005) || !nearly.To(hf.OtherPH[0], 1.584, 1e-9) ||
		!nearly.To(hf.OtherPH[1], 1.778, 1e-9) || hf.Sets != 2 || hf.PH.High < 1.77 {
		t.Errorf("%+v", hf)
	}
	if !nearly.To(fluorite.Fluoride.Central, 7.407, 0.02) || !nearly.To(fluorite.OtherFluoride[1], 11.3, 1e-9) ||
		fluorite.Sets != 4 {
		t.Errorf("%+v", fluorite)
	}
	if len(acid.PH.Outside) == 0 || len(all) != 18 {
		t.Errorf("%d solutions, %+v", len(all), acid.PH)
	}
}
