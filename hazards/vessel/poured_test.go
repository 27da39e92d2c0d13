package vessel_test

import (
	"math"
	"testing"

	"etchbound/hazards/vessel"
	"etchbound/schemas/nearly"
)

// Liquor that goes in warms and cools by mixing: C T is the sum of what came in
// (energy balance by hand), all at once or over a time, and in steps of both.
func TestLiquorPouredInMixes(t *testing.T) {
	for _, c := range []struct {
		label  string
		pieces []vessel.Piece
		want   float64 // K
	}{
		{"poured over 1000 s", []vessel.Piece{{Until: 1000, Pour: 0.3, PourAt: 280}}, (100*320 + 300*280) / 400.0},
		{"added at the beginning", []vessel.Piece{{Until: 10, Added: 300, PourAt: 280}}, (100*320 + 300*280) / 400.0},
		{"added in the middle of a step", []vessel.Piece{{Until: 10}, {Until: 20, Added: 50, PourAt: 290}},
			(100*320 + 50*290) / 150.0},
		{"added in a step of its own, then poured", []vessel.Piece{{Step: 2, Until: 10},
			{Step: 4, Until: 20, Added: 50, PourAt: 290}, {Step: 5, Until: 120, Pour: 0.5, PourAt: 300}},
			(100*320 + 50*290 + 50*300) / 200.0},
	} {
		if r := run(t, plain(c.pieces...)); !nearly.To(r.End.Temperature, c.want, 1e-6) {
			t.Errorf("%s: %.9f K, want %.9f", c.label, r.End.Temperature, c.want)
		}
	}
}

// What waits heats what is there at the time, not what is added after it: 1000 J in
// 100 J/K is 10 K before, and 2.5 K once 300 J/K more are in (by hand).
func TestWhatWaitsHeatsWhatIsThere(t *testing.T) {
	r := run(t, plain(vessel.Piece{Step: 2, Until: 10}, vessel.Piece{Step: 4, Until: 20, Added: 300, PourAt: 320}))
	for i, want := range []float64{330, 322.5} {
		if w := r.Windows[i]; !nearly.To(w.End.MTSR, want, 1e-6) {
			t.Errorf("window %d: %.9f K, want %.9f", i, w.End.MTSR, want)
		}
	}
	if !nearly.To(r.Rise, 10, 1e-9) {
		t.Errorf("rise %.9f K, want 10: the water that came later had no part in it", r.Rise)
	}
}

// A run interrupted between two portions of liquor goes on as the whole run does.
func TestGoingOnAfterLiquorWentIn(t *testing.T) {
	p := plain(vessel.Piece{Until: 1000, Pour: 0.1, PourAt: 280, UA: 0.2, Coolant: 290},
		vessel.Piece{Until: 2000, Added: 40, PourAt: 285, UA: 0.2, Coolant: 290})
	p.Slow.Rate = 1e-3
	whole := run(t, p)
	for _, at := range []float64{500, 1000, 1500} {
		from, err := whole.Path.State(at)
		if err != nil {
			t.Fatal(err)
		}
		rest := p
		rest.Begin, rest.Pieces = &from, vessel.After(p.Pieces, at)
		if r := run(t, rest); !nearly.To(r.End.Temperature, whole.End.Temperature, 1e-6) {
			t.Errorf("from %g s: %.9f K, want %.9f", at, r.End.Temperature, whole.End.Temperature)
		}
	}
}

// Liquor cannot be taken out, nor can it be unknown.
func TestLiquorThatCannotBe(t *testing.T) {
	for _, x := range []float64{-1, math.NaN()} {
		if _, err := vessel.Simulate(plain(vessel.Piece{Until: 1, Added: x, PourAt: 300})); err == nil {
			t.Errorf("%g J/K of liquor went in", x)
		}
	}
}
