package measuring_test

import (
	"os"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/bench"
	"etchbound/scaling/measuring"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

func reviewed(t *testing.T, brief bool) hazards.Review {
	t.Helper()
	text, err := os.ReadFile("../../testdata/routes/demo-lif-hcl-2g.yaml")
	if err != nil {
		t.Fatal(err)
	}
	c := bench.CaseOf(t, string(text))
	c.Brief = brief
	out, err := hazards.Make(c)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// What is asked for first and not known stands there, with what is missing.
func TestWhatIsNotKnownIsAskedFirst(t *testing.T) {
	r := reviewed(t, true)
	seen := false
	for _, f := range measuring.Of(&r) {
		if f.ID.Quantity == "air.breathing_zone" {
			seen = f.Missing != nil && f.By == nil
		}
	}
	if !seen {
		t.Error("without a site what is breathed is not told as unknown")
	}
}

// All data back at their best estimates is the best estimate; the heat of the etch hangs on
// the calorimeter alone, as does the temperature it brings the liquor to.
func TestExperimentsCutWhatTheySettle(t *testing.T) {
	long.Only(t)
	r := reviewed(t, false)
	seen := 0
	for _, f := range measuring.Of(&r) {
		for i := range f.By {
			if i > 0 && f.Cut(&f.By[i]) > f.Cut(&f.By[i-1])+1e-9 {
				t.Errorf("%s: %s cuts more than what stands before it", f.ID, f.By[i].Experiment)
			}
		}
		if q := f.ID.Quantity; q != "heat.etch.total" && q != "heat.mtsr" {
			continue
		}
		seen++
		b := f.By[0]
		if len(f.By) != 1 || b.Experiment != "calorimeter" || b.Keys[0] != "measured: etch_heat" ||
			!nearly.To(b.Left, f.Best, 1e-9) || !nearly.To(b.Alone, f.End, 1e-9) {
			t.Errorf("%s: %+v", f.ID, f.By)
		}
	}
	if seen != 2 {
		t.Errorf("%d of two figures", seen)
	}
}
