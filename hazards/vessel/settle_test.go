package vessel_test

import (
	"math"
	"testing"

	"etchbound/hazards/vessel"
	"etchbound/schemas/nearly"
)

// Process Heat Transfer, McGraw-Hill, 1950, chapter 18, batch cooling by a medium that stays as
// it is, from memory: ln((T1 - t)/(T2 - t)) = U A time/(M c). With 2000 kg of water, 300 W/(m2 K)
// over 5 m2, from 90 to 40 degC against 20 degC: 2000 x 4180/1500 ln(70/20) = 6982 s by hand. A
// chiller that alone limits takes (M c + jacket) x the difference over its power.
func TestSettlingByHand(t *testing.T) {
	steady := vessel.Settling{Batch: 2000 * 4180, Jacket: 1, Wall: 1500, Flow: 1e9, Power: math.Inf(1)}
	if got := steady.Within(70, 20); !nearly.Share(got, 6982, 1e-3) {
		t.Errorf("%g s, by hand 6982", got)
	}
	weak := vessel.Settling{Batch: 8e5, Jacket: 2e5, Wall: 1e5, Flow: 1e5, Power: 1000}
	if got := weak.Within(50, 10); !nearly.Share(got, 1e6*40/1000, 1e-3) {
		t.Errorf("%g s, by hand 40000", got)
	}
	if got := steady.Within(10, 20); got != 0 {
		t.Errorf("there already: %g s", got)
	}
	for _, x := range []vessel.Settling{{Jacket: 1, Wall: 1, Flow: 1, Power: 1},
		{Batch: math.NaN(), Jacket: 1, Wall: 1, Flow: 1, Power: 1}} {
		if got := x.Within(50, 10); !math.IsNaN(got) {
			t.Errorf("%+v: %g s", x, got)
		}
	}
}

// A stronger chiller, a better wall and more flow never take longer.
func TestMoreCoolingNeverTakesLonger(t *testing.T) {
	for _, power := range []float64{5, 50, 500, 5000} {
		x := vessel.Settling{Batch: 800, Jacket: 3700, Wall: 2, Flow: 185, Power: power}
		was := x.Within(40, 1)
		for name, y := range map[string]vessel.Settling{
			"chiller": {Batch: 800, Jacket: 3700, Wall: 2, Flow: 185, Power: 1.5 * power},
			"wall":    {Batch: 800, Jacket: 3700, Wall: 3, Flow: 185, Power: power},
			"flow":    {Batch: 800, Jacket: 3700, Wall: 2, Flow: 300, Power: power},
		} {
			if got := y.Within(40, 1); !(got <= was*(1+1e-6)) || !(got > 0) {
				t.Errorf("%g W, more %s: %g s, was %g", power, name, got, was)
			}
		}
	}
}
