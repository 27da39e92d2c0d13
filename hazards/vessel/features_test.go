package vessel_test

import (
	"math"
	"testing"

	"etchbound/hazards/vessel"
	"etchbound/schemas/nearly"
)

// plain is a vessel of 100 J/K with an amount of powder that does not react.
func plain(pieces ...vessel.Piece) vessel.Plan {
	return vessel.Plan{Law: vessel.FirstOrder, Start: 320, Ready: 0.01, Tolerance: 1e-9,
		Slow:   vessel.Solid{Amount: 0.01, Heat: 100000, Gas: 3, Capacity: 2, Kinetics: vessel.Kinetics{Reference: 298.15}},
		Liquor: vessel.Liquor{Capacity: 98}, Pieces: pieces}
}

func run(t *testing.T, p vessel.Plan) vessel.Run {
	t.Helper()
	r, err := vessel.Simulate(p)
	if err != nil {
		t.Fatal(err)
	}
	if !(r.Closure <= 1e-6) {
		t.Errorf("the energy balance is off by %g", r.Closure)
	}
	return r
}

// Loss to the room alone: Newton's law of cooling, T = Tr + (T0 - Tr) exp(-L t/C).
func TestLossToTheRoom(t *testing.T) {
	r := run(t, plain(vessel.Piece{Until: 3600, Loss: 0.05, Room: 293}))
	if want := 293 + 27*math.Exp(-0.05*3600/100); !nearly.To(r.End.Temperature, want, 1e-6) {
		t.Errorf("%.9f K, want %.9f", r.End.Temperature, want)
	}
	if r.End.Removed != 0 {
		t.Errorf("%g J of it counted as taken by the coolant", r.End.Removed)
	}
}

// Ice: heat P flows through the wall all the time, so the ice of Q lasts Q/P
// and the bath warms by P/(Cb + C) from then on (energy balance by hand).
func TestIceRunsOut(t *testing.T) {
	const power, melting, bath = 10.0, 20000.0, 400.0
	p := plain(vessel.Piece{Until: 4000, UA: 50, Coolant: 273.15, Iced: true, Stirring: power})
	p.Start, p.Ice = 273.15+power/50, vessel.Ice{Melting: melting, Bath: bath}
	r := run(t, p)
	held, err := r.Path.At(0.99 * melting / power)
	if err != nil {
		t.Fatal(err)
	}
	if !nearly.To(held.Temperature, p.Start, 1e-6) {
		t.Errorf("%.9f K while there is ice, want %.9f", held.Temperature, p.Start)
	}
	left := power * (4000 - melting/power) // J after the ice has gone
	want := p.Start + left/(bath+100)
	if !nearly.To(r.End.Temperature, want, 0.05) { // the wall lags by a few C/UA
		t.Errorf("%.4f K at the end, want about %.4f", r.End.Temperature, want)
	}
	p.Ice = vessel.Ice{}
	if r := run(t, p); !nearly.To(r.End.Temperature, p.Start, 1e-6) {
		t.Errorf("ice without end let it warm to %g K", r.End.Temperature)
	}
}

// Gas that leaves saturated carries x/(1-x) mol of vapour with each mol, x the
// share of the pressure (Dalton's law). A strong bath holds the temperature.
func TestGasLeavesSaturated(t *testing.T) {
	p := plain(vessel.Piece{Until: 1e5, UA: 1e4, Coolant: 330})
	p.Start, p.Slow.Rate = 330, 1e-3
	p.Liquor.Vapour = &vessel.Vapour{Molar: 0.018, Specific: 4000, Latent: 40660, Boiling: 373.15, Stripped: true}
	r := run(t, p)
	x := math.Exp(-40660 / vessel.R * (1/330. - 1/373.15))
	if want := 0.03 * x / (1 - x); !nearly.Share(r.End.Evaporated, want, 1e-4) {
		t.Errorf("%.8g mol went with the gas, want %.8g", r.End.Evaporated, want)
	}
}

// A curve measured at one temperature comes out again at that temperature, and
// twice as fast where the rate is twice as high.
func TestMeasuredCurveComesBack(t *testing.T) {
	curve := vessel.Curve{Time: []float64{600, 3600, 7200}, Conversion: []float64{0.05, 0.6, 0.95}}
	const ea, ref = 60000.0, 308.15
	double := 1 / (1/ref - vessel.R*math.Ln2/ea)
	for _, x := range []struct{ at, factor float64 }{{ref, 1}, {double, 0.5}} {
		p := plain(vessel.Piece{Until: 7200, UA: 1e5, Coolant: x.at})
		p.Law, p.Start, p.Slow.Heat = vessel.Measured, x.at, 0
		p.Slow.Kinetics = vessel.Kinetics{Rate: 1, Activation: ea, Reference: ref, Curve: curve}
		r := run(t, p)
		for i, at := range curve.Time {
			got, err := r.Path.At(at * x.factor)
			if err != nil {
				t.Fatal(err)
			}
			if !nearly.To(got.Conversion, curve.Conversion[i], 1e-5) {
				t.Errorf("at %g K and %g s: conversion %.7f, want %g", x.at, at*x.factor, got.Conversion, curve.Conversion[i])
			}
		}
	}
}

// A run that stops and goes on from its state ends where the whole run does.
func TestGoingOnFromAState(t *testing.T) {
	p := references(t, 1e-10)["R4b"]
	p.Fast = vessel.Solid{Amount: 0.01, Heat: 500000, Gas: 1.5, Capacity: 0.2,
		Kinetics: vessel.Kinetics{Rate: 1e-3, Activation: 50000, Reference: 298.15}}
	whole := run(t, p)
	const at = 2400.0
	from, err := whole.Path.State(at)
	if err != nil {
		t.Fatal(err)
	}
	rest := p
	rest.Begin, rest.Pieces = &from, nil
	for _, x := range p.Pieces {
		if x.Until > at {
			x.Until -= at
			rest.Pieces = append(rest.Pieces, x)
		}
	}
	r := run(t, rest)
	for name, d := range map[string]float64{"temperature": r.End.Temperature - whole.End.Temperature,
		"reacted": r.End.Reacted - whole.End.Reacted,
		"removed": (r.End.Removed - whole.End.Removed) / whole.End.Removed, "gas": r.Released - whole.Released} {
		if !nearly.To(d, 0, 1e-7) {
			t.Errorf("%s differs by %g", name, d)
		}
	}
}

// Windows are told apart by the step of their pieces, and the peaks of the run
// are the greatest of theirs.
func TestWindows(t *testing.T) {
	p := references(t, 1e-10)["R1"]
	p.Pieces[0].Step, p.Pieces[1].Step = 2, 3
	r := run(t, p)
	if len(r.Windows) != 2 || r.Windows[0].Step != 2 || r.Windows[1].Step != 3 {
		t.Fatalf("windows %+v", r.Windows)
	}
	// Reference: the charge is 0.077410234 reacted when the dose ends at 600 s.
	if c := r.Windows[0].End.Conversion; !nearly.To(c, 0.077410234, 1e-8) {
		t.Errorf("conversion %.9f at the end of the dose, want 0.077410234", c)
	}
	// Reference: greatest gas flow 3.373679530e-05 mol/s at 624.3911 s, after the dose.
	if g := r.Windows[1].Gas; !nearly.To(g.Value, 3.373679530e-05, 1e-12) || !nearly.To(g.At, 624.3911, 1e-3) ||
		r.Gas != g {
		t.Errorf("peak gas %+v, want 3.373679530e-05 at 624.3911", g)
	}
	if g := r.Windows[0].Gas; !(g.Value < r.Gas.Value) || g.At != 600 {
		t.Errorf("during the dose %+v", g)
	}
}

// A level is found where it is first reached.
func TestWhen(t *testing.T) {
	r := run(t, references(t, 1e-10)["R6"])
	// Reference, by quadrature alone: conversion 0.5 at 9994.4445964 s.
	at, ok := r.Path.When(func(p vessel.Point) float64 { return p.Conversion }, 0.5)
	if !ok || !nearly.To(at, 9994.4445964, 1e-3) {
		t.Errorf("half of it at %v s (%v), want 9994.4446", at, ok)
	}
	if at, ok := r.Path.When(func(p vessel.Point) float64 { return p.Temperature }, 1000); ok {
		t.Errorf("1000 K reached at %g s", at)
	}
}

// A coarse run is the same run; its greatest values stand at steps and so never
// above those that were sought, and close to them.
func TestCoarsePeaks(t *testing.T) {
	p := plain(vessel.Piece{Until: 600, UA: 1, Coolant: 280}, vessel.Piece{Until: 7200, UA: 0.1, Coolant: 280})
	p.Slow.Rate, p.Slow.Activation = 1e-3, 60000
	fine := run(t, p)
	p.Coarse = true
	rough := run(t, p)
	if fine.End != rough.End {
		t.Errorf("the run ends at %v, want %v", rough.End, fine.End)
	}
	for name, m := range map[string][2]vessel.Moment{"temperature": {rough.Peak, fine.Peak},
		"heat": {rough.Heat, fine.Heat}, "gas": {rough.Gas, fine.Gas}, "mtsr": {rough.MTSR, fine.MTSR}} {
		if !nearly.Between(m[0].Value, 0.98*m[1].Value, m[1].Value*(1+1e-9)) {
			t.Errorf("%s: %g at the steps, %g sought", name, m[0].Value, m[1].Value)
		}
	}
}

// Gas given off is found where a search for any value finds it.
func TestGivenIsWhen(t *testing.T) {
	p := plain(vessel.Piece{Until: 600, UA: 1, Coolant: 280}, vessel.Piece{Until: 7200, UA: 0.1, Coolant: 280})
	p.Slow.Rate, p.Slow.Activation = 1e-3, 60000
	r := run(t, p)
	for _, share := range []float64{1e-6, 0.1, 0.5, 0.9} {
		gas := share * r.Released
		a, ok := r.Path.Given(gas)
		b, there := r.Path.When(func(p vessel.Point) float64 { return p.Released }, gas)
		if !ok || !there || !nearly.To(a, b, 1e-6) {
			t.Errorf("%g mol: %g s (%v) and %g s (%v)", gas, a, ok, b, there)
		}
	}
	if at, ok := r.Path.Given(1.01 * r.Released); ok {
		t.Errorf("more gas than there is after %g s", at)
	}
}

// Rates grow as Arrhenius has it up to the boiling point, and not beyond 1 K
// above it: 10 K over it the flow is that of 1 K over it, at it that of Arrhenius
// (hand-worked, the definition).
func TestRatesStopGrowingAtBoiling(t *testing.T) {
	flow := func(at, boils float64) float64 {
		p := plain(vessel.Piece{Until: 1, UA: 1e6, Coolant: at})
		p.Start, p.Liquor.Boils = at, boils
		p.Slow.Rate, p.Slow.Activation = 1e-5, 60000
		return run(t, p).Gas.Value
	}
	for _, row := range []struct{ at, as float64 }{{360, 360}, {373, 373}, {375, 374}, {383, 374}} {
		if got, want := flow(row.at, 373), flow(row.as, 0); !nearly.Share(got, want, 1e-6) {
			t.Errorf("at %g K a flow of %.9g mol/s, want the %.9g of %g K", row.at, got, want, row.as)
		}
	}
}

// Ice melts in the air of the room: 8 W/m2/K on 0.058 m2, 25 K warmer than it, takes
// 300 g in 2.4 h (0.3 x 334 kJ over 11.6 W, by hand); after it the bath warms to the
// air, T = Ta - dT exp(-G t/C). A bath that begins warm by more than its ice takes up
// has no ice at all.
func TestIceMeltsInTheRoom(t *testing.T) {
	const room, air, gone = 8 * 0.058, 298.15, 0.3 * 334000 / (8 * 0.058 * 25)
	p := plain(vessel.Piece{Until: 48 * 3600, UA: 5, Coolant: 273.15, Iced: true})
	p.Start, p.Ice = 273.15, vessel.Ice{Melting: 0.3 * 334000, Bath: 1300 * 4.18, Room: room, Air: air}
	r := run(t, p)
	if !nearly.To(gone/3600, 2.4, 0.01) {
		t.Errorf("gone after %g h", gone/3600)
	}
	before, err := r.Path.At(0.99 * gone)
	if err != nil || !nearly.To(before.Temperature, 273.15, 1e-4) {
		t.Errorf("%+v while there is ice, %v", before, err)
	}
	later, err := r.Path.At(gone + 3600*4)
	want := air - 25*math.Exp(-room*4*3600/(1300*4.18+100))
	if err != nil || !nearly.To(later.Temperature, want, 0.1) { // the vessel lags by C/UA
		t.Errorf("%+v four hours later, want %g K; %v", later, want, err)
	}
	if !nearly.To(r.End.Temperature, air, 0.5) {
		t.Errorf("%g K after two days, want that of the room", r.End.Temperature)
	}
	p.Ice.Melting -= 1000 * 4.18 * 25 * 2 // two litres from 25 degC
	if r := run(t, p); !nearly.To(r.End.Temperature, air, 0.5) || !(r.Windows[0].Peak.Value <= air+1e-6) {
		t.Errorf("a warm bath ends at %g K", r.End.Temperature)
	}
}
