package vessel_test

import (
	"math"
	"testing"

	"etchbound/hazards/vessel"
	"etchbound/schemas/nearly"
)

// A first-order vessel of which all powder waits and that nothing cools is as bad as can be: the
// bound is what it does, and by hand its rate k(T) (1 - X) N is greatest where
//
//	1 - X = R T^2/(E_a dT),  T = T_0 + X dT
//
// With 0.01 mol of 400 kJ/mol in 98 + 2 J/K dT is 40 K; from 298.15 K the two give X 0.6371 and T
// 323.64 K, and 3 mol of gas a mol with 1e-4/s there at 298.15 K and 60 kJ/mol 7.32e-6 mol/s.
func TestTheBoundOfAFirstOrderVesselIsReached(t *testing.T) {
	p := plain(vessel.Piece{Until: 1e6})
	p.Start, p.Slow.Heat = 298.15, 400000
	p.Slow.Kinetics = vessel.Kinetics{Rate: 1e-4, Activation: 60000, Reference: 298.15}
	x := 0.5
	for range 100 {
		temperature := 298.15 + 40*x
		x = 1 - vessel.R*temperature*temperature/(60000*40)
	}
	at := 298.15 + 40*x
	want := 3 * 0.01 * (1 - x) * 1e-4 * math.Exp(-60000/vessel.R*(1/at-1/298.15))
	b, r := p.Bound(1e6), run(t, p)
	if !nearly.Share(want, 7.32e-6, 1e-3) || !nearly.Share(r.Gas.Value, want, 1e-4) || !(b.Gas >= want) ||
		!nearly.Share(b.Gas, want, 0.01) || !(b.Peak >= r.Peak.Value-1e-3) || !nearly.To(b.Peak, 338.15, 1e-6) {
		t.Errorf("the run gives %g mol/s, the bound is %+v, by hand %g at X %g and %g K", r.Gas.Value, b, want, x, at)
	}
}

// No run of a plan passes its bound in any window, whatever cools it, by every law: with powder
// that goes in at once or slowly, lies in a heap, or has liquor poured on to it; with metal, ice,
// a jacket and a stirrer.
func TestNoRunPassesItsBound(t *testing.T) {
	n := 0
	for _, law := range []vessel.Law{vessel.FirstOrder, vessel.Contracting, vessel.SelfAccelerating, vessel.Measured} {
		for _, heat := range []float64{100e3, 800e3} {
			for _, ua := range []float64{0, 0.02, 0.5} {
				for _, over := range []float64{60, 7200} {
					for _, how := range []string{"", "heap", "pour", "ice", "jacket"} {
						p := boundless(law, heat, ua, over, how)
						r, err := vessel.Simulate(p)
						if err != nil {
							t.Fatal(err)
						}
						for i := range r.Windows {
							w := &r.Windows[i]
							b := p.Bound(w.To)
							warm, load := r.Jacketed(w)
							if n++; !(b.Gas >= w.Gas.Value*(1-1e-6) && b.Heat >= w.Heat.Value*(1-1e-6) &&
								b.Peak >= w.Peak.Value-1e-3 && b.Jacket >= warm.Value-1e-3 && b.Load >= load.Value*(1-1e-6)) {
								t.Errorf("%s %g J/mol %g W/K over %g s %s, window %d: %+v, jacket %g K %g W, bound %+v", law, heat,
									ua, over, how, i, *w, warm.Value, load.Value, b)
							}
						}
					}
				}
			}
		}
	}
	if n != 480 {
		t.Errorf("%d windows", n)
	}
}

// boundless is a vessel that may run away: 0.01 mol into 100 J/K, a fifth as much metal.
func boundless(law vessel.Law, heat, ua, over float64, how string) vessel.Plan {
	k := vessel.Kinetics{Rate: 2e-4, Activation: 70000, Reference: 298.15, Seed: 0.01}
	if law == vessel.Measured {
		k.Rate, k.Curve = 1, vessel.Curve{Time: []float64{3600, 7200, 20000}, Conversion: []float64{0.1, 0.7, 0.95}}
	}
	add := vessel.Piece{Step: 2, Until: over, Dose: 0.01 / over, Feed: 293.15, UA: ua, Coolant: 288.15, Stirring: 0.01}
	hold := vessel.Piece{Step: 3, Until: over + 40000, UA: ua, Coolant: 298.15, Stirring: 0.01}
	p := vessel.Plan{Law: law, Start: 293.15, Tolerance: 1e-6,
		Slow: vessel.Solid{Amount: 0.01, Heat: heat, Gas: 3, Capacity: 2, Kinetics: k},
		Fast: vessel.Solid{Amount: 0.002, Heat: 400e3, Gas: 1.5,
			Kinetics: vessel.Kinetics{Rate: 0.01, Activation: 48000, Reference: 298.15}},
		Liquor: vessel.Liquor{Capacity: 100, Boils: 375}}
	switch how {
	case "heap":
		add.Settled, hold.Lift = true, true
	case "pour":
		p.Liquor.Capacity, add.Pour, add.PourAt = 1, 99/over, 293.15
	case "ice":
		add.Iced, add.Coolant = true, 273.15
		p.Ice = vessel.Ice{Melting: 3000, Bath: 400, Room: 0.05, Air: 298.15}
	case "jacket":
		add.Jacketed, hold.Jacketed = true, true
		p.Jacket = vessel.Jacket{Capacity: 50, Flow: 2, Power: 5, Begins: 293.15}
	}
	p.Pieces = []vessel.Piece{add, hold}
	return p
}
