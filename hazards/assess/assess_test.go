package assess_test

import (
	"testing"

	"etchbound/hazards/assess"
	"etchbound/hazards/bench"
	"etchbound/schemas/nearly"
)

// The heat of a gram in 20 mL of 10 wt% acid is 760/194.605 kJ, whoever reads it,
// and the bare id adds up its only step.
func TestCase(t *testing.T) {
	a := assess.Case(bench.Steps(t, bench.Etch).Case, nil)
	if a.Err != nil {
		t.Fatal(a.Err)
	}
	for _, id := range []string{"heat.etch.total", "heat.etch.total@2"} {
		if f := bench.Find(t, a.Figures, id); !nearly.Share(f.Value.V, 3.90535, 1e-5) {
			t.Errorf("%s = %v, want 3.90535", id, f.Value)
		}
	}
	n := 0
	for _, k := range a.Counts {
		n += k
	}
	if n != len(a.Figures) || a.Counts[assess.Gas] == 0 || a.Counts[assess.Wash] != 0 {
		t.Errorf("%d figures in parts of %v", len(a.Figures), a.Counts)
	}
}

func TestSets(t *testing.T) {
	s := assess.Of(assess.Air, assess.Wash)
	for p := assess.Gas; p < assess.Parts; p++ {
		if got, want := s.Has(p), p == assess.Air || p == assess.Wash; got != want {
			t.Errorf("part %d: %v, want %v", p, got, want)
		}
	}
	for quantity, part := range map[string]assess.Part{"gas.hydrogen.total": assess.Gas, "air.saturated": assess.Air,
		"wash.ph": assess.Wash, "fluoride.total": assess.Fluoride, "neutralise.mass": assess.Waste} {
		if !assess.GivenBy(quantity).Has(part) {
			t.Errorf("%s is not given by part %d", quantity, part)
		}
	}
}
