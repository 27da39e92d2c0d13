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

// Some gives what Case does, as far as it goes.
func TestSome(t *testing.T) {
	c := bench.Steps(t, bench.Etch).Case
	whole, want := assess.Case(c, nil), assess.Of(assess.Gas, assess.Air)
	some := assess.Some(c, want)
	for p, n := range whole.Counts {
		if !want.Has(assess.Part(p)) {
			n = 0
		}
		if some.Counts[p] != n {
			t.Errorf("part %d: %d figures, want %d", p, some.Counts[p], n)
		}
	}
	for i := range some.Figures {
		if got, want := &some.Figures[i], bench.Find(t, whole.Figures, some.Figures[i].ID.String()); got.Value.V !=
			want.Value.V && !(got.Value.Unknown() && want.Value.Unknown()) {
			t.Errorf("%s: %v, want %v", got.ID, got.Value, want.Value)
		}
	}
}
