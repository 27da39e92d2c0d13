package solution_test

import (
	"math"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/schemas/nearly"
)

func exactly(symbol, unit string, v float64) working.Num {
	return working.Exact(symbol, unit, v, "check")
}

func vapour(st *chemicals.Store, model string, wt, celsius float64) float64 {
	return solution.Vapour(st, nil, model, exactly("w", "1", wt/100), exactly("T", "degC", celsius)).V / 0.133322
}

// Pressures in mmHg by the printed coefficients of an encyclopedia article on
// hydrofluoric acid, and by those of the International Critical Tables for
// hydrochloric acid (checked against 13 printed pressures).
func TestVapourOfAcids(t *testing.T) {
	for _, c := range []struct {
		model             string
		wt, celsius, want float64
		tolerance         float64
	}{
		{"hf", 10, 0, 0.0308, 0.005}, {"hf", 10, 20, 0.138, 0.005}, {"hf", 10, 25, 0.195, 0.003}, {"hf", 10, 60, 1.62, 0.005},
		{"hf", 20, 25, 0.574, 0.003}, {"hf", 30, 25, 1.77, 0.003}, {"hf", 50, 25, 16.4, 0.003}, {"hf", 70, 25, 149, 0.003},
		{"hf", 40, 25, 5.4, 0.01}, {"hf", 49, 25, 14.6, 0.01},
		{"hcl", 20, 25, 0.316, 0.005}, {"hcl", 28, 25, 7.05, 0.005}, {"hcl", 32, 25, 32.5, 0.005},
		{"hcl", 36, 25, 141, 0.005}, {"hcl", 38, 20, 211, 0.005},
	} {
		if got := vapour(chemicals.Base(), c.model, c.wt, c.celsius); !nearly.Share(got, c.want, c.tolerance) {
			t.Errorf("%g wt%% %s at %g degC: %.4g mmHg, want %.4g", c.wt, c.model, c.celsius, got, c.want)
		}
	}
}

// Saturated ppm at 25 degC with its range: 10 wt% 256 and up to 391; 5 wt% about
// 130 (100 to 200); 1 wt% about 25 (19 to 38).
func TestVapourRange(t *testing.T) {
	d, ok := chemicals.Base().Row("vapour.hf")
	if !ok {
		t.Fatal("no row vapour.hf")
	}
	end := func(z, wt float64) float64 {
		return vapour(chemicals.Base().With(map[int]float64{d.Index: z}), "hf", wt, 25) / 760e-6
	}
	for _, c := range []struct{ wt, low, mid, high, tolerance float64 }{
		{10, 200, 256, 391, 0.005}, {5, 100, 130, 200, 0.03}, {1, 19, 25, 38, 0.03},
	} {
		if got := end(0, c.wt); !nearly.Share(got, c.mid, c.tolerance) {
			t.Errorf("%g wt%%: %.1f ppm, want %g", c.wt, got, c.mid)
		}
		if got := end(1, c.wt); !nearly.Share(got, c.high, c.tolerance) {
			t.Errorf("%g wt%%: up to %.1f ppm, want %g", c.wt, got, c.high)
		}
		if got := end(-1, c.wt); !nearly.Share(got, c.low, 2*c.tolerance) {
			t.Errorf("%g wt%%: from %.1f ppm, want %g", c.wt, got, c.low)
		}
	}
}

// 1 g of LiF in 20 mL of 9 mol/L acid, as worked for the reference data: HF 0.11
// to 0.34 mmHg, HCl 5.6 (1.0 to 7.1) mmHg.
func TestVapourOverSaltAndAcid(t *testing.T) {
	base := chemicals.Base()
	at := func(id datum.ID, v float64) *chemicals.Store {
		d, ok := base.Row(id)
		if !ok {
			t.Fatal("no row " + id)
		}
		return base.With(map[int]float64{d.Index: v})
	}
	warm := exactly("T", "degC", 25)
	hf := func(s float64) float64 {
		return solution.OverStrongAcid(at("vapour.salting", s), nil, exactly("m", "mol/kg", 1.93), exactly("w", "1", 0.28),
			warm).V / 0.133322
	}
	if a, b := hf(0), hf(1); !nearly.To(a, 0.11, 0.005) || !nearly.To(b, 0.34, 0.01) {
		t.Errorf("HF %.3g to %.3g mmHg, want 0.11 to 0.34", a, b)
	}
	hcl := func(z float64) float64 {
		over := func(w float64) working.Num { return solution.Vapour(base, nil, "hcl", exactly("w", "1", w), warm) }
		return solution.OverSalt(at("vapour.hcl_salt", z), nil, over(0.23), over(0.28),
			exactly("r", "1", 7.1/9)).V / 0.133322
	}
	for z, want := range map[float64]float64{-1: 1.0, 0: 5.6, 1: 7.1} {
		if got := hcl(z); !nearly.Share(got, want, 0.03) {
			t.Errorf("HCl %.3g mmHg at %g, want %g", got, z, want)
		}
	}
}

// What data a row holds is moved to one of its ends, as ranges move it.
func moved(t *testing.T, id datum.ID, high bool) *chemicals.Store {
	t.Helper()
	d, ok := chemicals.Base().Row(id)
	if !ok {
		t.Fatal("no row " + id)
	}
	v := d.Low
	if high {
		v = d.High
	}
	return chemicals.Base().With(map[int]float64{d.Index: v})
}

// HF over hydrochloric acid: 0.0577 mmHg a molal by a paper of 1932, about half of it
// by one of 1947 (Ind. Eng. Chem. 39, 427).
func TestVapourOfHFOverStrongAcidIsRanged(t *testing.T) {
	over := func(high bool) float64 {
		return solution.OverStrongAcid(moved(t, "vapour.hf_strong", high), nil, exactly("m", "mol/kg", 1),
			exactly("w", "1", 0), exactly("T", "degC", 25)).V / 0.133322
	}
	if low, high := over(false), over(true); !nearly.To(low, 0.029, 1e-9) || !nearly.To(high, 0.0577, 1e-9) {
		t.Errorf("%g to %g mmHg over one molal, want 0.029 to 0.0577", low, high)
	}
}

// HCl over six parts of 12 mol/L acid, three of water and one of 50 wt% HF: 24.7 wt% in
// its water alone, 23.4 with the HF counted as water, 26.0 where each HF holds one
// water. A slope of 0.39 a wt% in the logarithm (0.316 mmHg at 20 wt%, 7.05 at 28) makes
// 0.6 and 1.65 of it; equal activity of water, by the pressures of both acids, 1.4.
func TestVapourOfHClBesideHFIsRanged(t *testing.T) {
	over := func(st *chemicals.Store) float64 {
		return solution.BesideHF(st, nil, exactly("w", "1", 0.247), exactly("w", "1", 0.234), exactly("w", "1", 0.260),
			exactly("T", "degC", 25)).V
	}
	middle, low := over(chemicals.Base()), over(moved(t, "vapour.hcl_hf", false))
	if high := over(moved(t, "vapour.hcl_hf", true)); !nearly.Share(low, 0.6*middle, 0.05) ||
		!nearly.Share(high, 1.65*middle, 0.05) {
		t.Errorf("%g (%g to %g) kPa, want 0.6 to 1.65 of it", middle, low, high)
	}
	if beyond := solution.BesideHF(chemicals.Base(), nil, exactly("w", "1", 0.40), exactly("w", "1", 0.39),
		exactly("w", "1", 0.45), exactly("T", "degC", 25)).V; !(beyond > 0) {
		t.Errorf("%g kPa where only the high end lies beyond the table", beyond)
	}
}

// Handbook: 2.3388 kPa at 20 degC, 3.169 at 25 (0.03 %), 101.4 at 100.
func TestSaturation(t *testing.T) {
	for c, want := range map[float64]float64{20: 2.3388, 25: 3.169, 100: 101.42} {
		if got := solution.Saturation(c + 273.15); !nearly.Share(got, want, 5e-4) {
			t.Errorf("%g degC: %.5g kPa, want %g", c, got, want)
		}
	}
}

// One molal ammonia gives about 13 mmHg at 25 degC; g in 100 g of water against a
// handbook table of its solubility in mmHg (from memory).
func TestAmmonia(t *testing.T) {
	mmHg := func(molality, celsius float64) float64 {
		return solution.Ammonia(chemicals.Base(), nil, exactly("m", "mol/kg", molality),
			exactly("T", "degC", celsius)).V / 0.133322
	}
	if got := mmHg(1, 25); !nearly.To(got, 13, 0.3) {
		t.Errorf("%.3g mmHg, want 13", got)
	}
	for celsius, table := range map[float64]map[float64]float64{
		20: {2: 12.0, 5: 31.7, 10: 69.6, 20: 166, 30: 298, 40: 470},
		30: {2: 19.3, 5: 51.0, 10: 110, 20: 260, 30: 454, 40: 719},
	} {
		for grams, want := range table {
			if got := mmHg(grams*10/17.0305, celsius); !nearly.Share(got, want, 0.06) {
				t.Errorf("%g g in 100 g of water at %g degC: %.4g mmHg, want %g", grams, celsius, got, want)
			}
		}
	}
	if got := mmHg(25, 20); !math.IsNaN(got) {
		t.Errorf("beyond the table: %g", got)
	}
}

// Out of the tables nothing is carried on: unknown.
func TestVapourOutOfRange(t *testing.T) {
	for _, c := range []struct {
		model       string
		wt, celsius float64
	}{{"hf", 71, 25}, {"hf", 49, 61}, {"hf", 49, -1}, {"hcl", 43, 25}, {"h2so4", 50, 25}} {
		if got := vapour(chemicals.Base(), c.model, c.wt, c.celsius); !math.IsNaN(got) {
			t.Errorf("%g wt%% %s at %g degC: %g mmHg", c.wt, c.model, c.celsius, got)
		}
	}
}
