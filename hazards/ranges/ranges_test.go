package ranges_test

import (
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/assess"
	"etchbound/hazards/bench"
	"etchbound/hazards/ranges"
	"etchbound/schemas/nearly"
)

// The enthalpy of the etch lies between 685 and 835 kJ/mol and the hydrogen between
// 2.5 and 3.5 mol a mol (data of the project), so a gram of 194.605 g/mol gives 3.51995
// to 4.29074 kJ and 24.4654 L/mol times as much gas: 0.314296 to 0.440014 L.
func TestEnds(t *testing.T) {
	c := bench.Steps(t, bench.Etch).Case
	c.Brief = true
	w := working.NewSheet()
	a := assess.Case(c, w)
	used := ranges.Used(c.Store, w)
	s := ranges.Set(c, used, &a)
	for _, row := range []struct {
		id        string
		low, high float64
	}{{"heat.etch.total@2", 685 / 194.605, 835 / 194.605},
		{"gas.hydrogen.total@2", 2.5 * 24.4654 / 194.605, 3.5 * 24.4654 / 194.605}} {
		if f := bench.Find(t, a.Figures, row.id); !nearly.Share(f.Low().V, row.low, 1e-4) ||
			!nearly.Share(f.High().V, row.high, 1e-4) {
			t.Errorf("%s from %g to %g, want %g to %g", row.id, f.Low().V, f.High().V, row.low, row.high)
		}
	}
	for v, d := range s.Data {
		low, high := s.Ends(v)
		if len(low) != len(a.Figures) || len(high) != len(a.Figures) {
			t.Errorf("%s: %d and %d of %d figures at its ends", d.ID, len(low), len(high), len(a.Figures))
		}
	}
}

// At the middle of every distribution a draw is the centre, of a figure that one
// normal datum makes.
func TestMiddleOfADraw(t *testing.T) {
	d, err := ranges.NewDrawing(bench.Steps(t, bench.Etch).Case)
	if err != nil {
		t.Fatal(err)
	}
	shares := make([]float64, len(d.Inputs()))
	for i := range shares {
		shares[i] = 0.5
	}
	x, err := d.At(shares)
	if err != nil {
		t.Fatal(err)
	}
	if f := bench.Find(t, x.Figures, "heat.etch.total@2"); !nearly.Share(f.Value.V, 3.90535, 1e-5) {
		t.Errorf("%v, want 3.90535 kJ", f.Value)
	}
}
