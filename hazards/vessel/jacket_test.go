package vessel_test

import (
	"math"
	"testing"

	"etchbound/hazards/vessel"
	"etchbound/schemas/nearly"
)

// jacketed is a vessel of 100 J/K at 320 K in a jacket that begins as warm, with coolant at 280 K.
func jacketed(ua float64, j vessel.Jacket, stirring float64) vessel.Plan {
	p := plain(vessel.Piece{Until: 3600, UA: ua, Coolant: 280, Jacketed: true, Stirring: stirring})
	p.Jacket = j
	return p
}

// Batch and jacket are two bodies with one exchange between them and one to the coolant:
// C T' = -UA (T - Tj), Cj Tj' = UA (T - Tj) - J (Tj - Ti). Both are sums of two
// exponentials, whose rates are the roots of s2 + (a + b + c) s + a c, with a = UA/C,
// b = UA/Cj and c = J/Cj.
func TestABatchAndItsJacketAreTwoBodies(t *testing.T) {
	for _, c := range []struct{ ua, flow, capacity float64 }{{2, 5, 300}, {2, 0.5, 20}, {0.3, 400, 1000}, {20, 3, 80}} {
		r := run(t, jacketed(c.ua, vessel.Jacket{Capacity: c.capacity, Flow: c.flow, Power: math.Inf(1), Begins: 320}, 0))
		a, b, f := c.ua/100, c.ua/c.capacity, c.flow/c.capacity
		root := math.Sqrt((a+b+f)*(a+b+f) - 4*a*f)
		fast, slow := -(a+b+f+root)/2, -(a+b+f-root)/2
		// u = T - Ti begins at 40 K with no slope, since the jacket begins as warm
		x := 40 * -fast / (slow - fast)
		y := 40 - x
		for _, at := range []float64{30, 200, 900, 3600} {
			p, err := r.Path.At(at)
			if err != nil {
				t.Fatal(err)
			}
			batch := x*math.Exp(slow*at) + y*math.Exp(fast*at)
			around := batch + (slow*x*math.Exp(slow*at)+fast*y*math.Exp(fast*at))/a
			if !nearly.To(p.Temperature, 280+batch, 1e-4) || !nearly.To(p.Jacket, 280+around, 1e-4) {
				t.Errorf("%+v at %g s: %.6f K in a jacket of %.6f K, in closed form %.6f in %.6f", c, at, p.Temperature,
					p.Jacket, 280+batch, 280+around)
			}
		}
	}
}

// A jacket of little liquid follows at once, and what it passes is what a mixed stream of
// NTU = UA/J takes up: J NTU/(1 + NTU) (Fundamentals of Heat and Mass Transfer, Wiley, 2007,
// section 11.4, with the outlet as warm as the jacket). Much flow leaves a coolant of one
// temperature, where ln((T1 - t)/(T2 - t)) = UA time/C (Process Heat Transfer, McGraw-Hill,
// 1950, chapter 18).
func TestAThinJacketTakesWhatItsFlowTakesUp(t *testing.T) {
	for _, c := range []struct{ ua, flow float64 }{{2, 1}, {1, 3}, {0.5, 1e4}} {
		r := run(t, jacketed(c.ua, vessel.Jacket{Capacity: 1e-3 * c.flow, Flow: c.flow, Power: math.Inf(1), Begins: 320}, 0))
		ntu := c.ua / c.flow
		passes := c.flow * ntu / (1 + ntu)
		at, ok := r.Path.When(func(p vessel.Point) float64 { return -p.Temperature }, -290)
		if want := 100 / passes * math.Log(40/10.); !ok || !nearly.Share(at, want, 1e-3) {
			t.Errorf("NTU %g: from 320 to 290 K in %g s, in closed form %g", ntu, at, want)
		}
	}
}

// What a chiller does not take stays: 100 W of stirring and 60 W of chiller warm 100 J/K of
// batch and 300 J/K of jacket by 40/400 K/s, the batch 100 W less its own share ahead.
func TestAChillerTakesNoMoreThanItsPower(t *testing.T) {
	r := run(t, jacketed(20, vessel.Jacket{Capacity: 300, Flow: 50, Power: 60, Begins: 320}, 100))
	end := r.End
	early, err := r.Path.At(1800)
	if err != nil {
		t.Fatal(err)
	}
	if want := 40 / 400. * 1800; !nearly.To(end.Temperature-early.Temperature, want, 0.02) {
		t.Errorf("warmed by %g K, by hand %g", end.Temperature-early.Temperature, want)
	}
	if want := (100 - 100*0.1) / 20; !nearly.To(end.Temperature-end.Jacket, want, 0.01) {
		t.Errorf("%g K over its jacket, by hand %g", end.Temperature-end.Jacket, want)
	}
	warmest, load := r.Jacketed(&r.Windows[0])
	if !nearly.To(warmest.Value, end.Jacket, 1e-6) || !nearly.To(load.Value, 90, 0.05) {
		t.Errorf("the jacket comes to %g K and takes %g W, by hand %g and 90", warmest.Value, load.Value, end.Jacket)
	}
}

// What a failure begins from has the jacket as it is then, and a plan without one has none.
func TestAJacketGoesOnFromWhereItIs(t *testing.T) {
	p := jacketed(2, vessel.Jacket{Capacity: 300, Flow: 5, Power: 40, Begins: 320}, 0)
	whole := run(t, p)
	from, err := whole.Path.State(600)
	if err != nil {
		t.Fatal(err)
	}
	p.Begin, p.Pieces = &from, vessel.After(p.Pieces, 600)
	if rest := run(t, p); !nearly.To(rest.End.Jacket, whole.End.Jacket, 1e-4) ||
		!nearly.To(rest.End.Temperature, whole.End.Temperature, 1e-4) {
		t.Errorf("%+v is not %+v", rest.End, whole.End)
	}
	p = jacketed(2, vessel.Jacket{}, 0)
	if r := run(t, p); r.End.Jacket != 0 {
		t.Errorf("a jacket of %g K without any liquid", r.End.Jacket)
	}
	for _, j := range []vessel.Jacket{{Capacity: 300, Flow: math.NaN(), Power: 1, Begins: 300},
		{Capacity: 300, Flow: 1, Power: math.NaN(), Begins: 300}, {Capacity: math.NaN()},
		{Capacity: 300, Flow: 1, Power: 1}} {
		if _, err := vessel.Simulate(jacketed(2, j, 0)); err == nil {
			t.Errorf("%+v was run", j)
		}
	}
}

// A printed worked example: 2.1 MJ/K at 293 K, 610 W/K to steam of 393 K in a coil and 50 W/K to a
// room of 293 K come to 333 K in 1800 s, to 363 K in 4509 s and to no more than 385.4 K (solutions
// to the problems of Chemical Engineering, volume 1, problem 9.80, read in an excerpt; its
// 61.0 W/(m2 K) is rounded, which moves the times by 0.3 %). Again with the coil as a jacket whose
// much steam is one temperature.
func TestABatchHeatsAsAPrintedExampleSays(t *testing.T) {
	steam := vessel.Piece{Until: 40000, UA: 610, Coolant: 393, Loss: 50, Room: 293}
	around := steam
	around.Jacketed = true
	for name, x := range map[string]vessel.Piece{"coil": steam, "jacket": around} {
		p := plain(x)
		p.Start, p.Liquor.Capacity = 293, 2.1e6-2
		p.Jacket = vessel.Jacket{Capacity: 1000, Flow: 1e7, Power: math.Inf(1), Begins: 393}
		if name == "coil" {
			p.Jacket = vessel.Jacket{}
		}
		r := run(t, p)
		for kelvin, want := range map[float64]float64{333: 1800, 363: 4509} {
			at, ok := r.Path.When(func(p vessel.Point) float64 { return p.Temperature }, kelvin)
			if !ok || !nearly.Share(at, want, 0.005) {
				t.Errorf("%s: %g K in %g s, printed %g", name, kelvin, at, want)
			}
		}
		if !nearly.To(r.End.Temperature, 385.4, 0.05) {
			t.Errorf("%s: comes to %g K, printed 385.4", name, r.End.Temperature)
		}
	}
}

// A medium that warms on its way through the jacket, as handbooks have it, leaves as a plug: with
// K = exp(UA/J) the time is ln((T1 - t)/(T2 - t)) C K/((K - 1) J) (Process Heat Transfer,
// McGraw-Hill, 1950, chapter 18, coil in tank or jacketed vessel, medium not isothermal; read in a
// worksheet that says its eight cases are from there). A mixed jacket takes less: the time is that
// of the plug by (1 - 1/K)(1 + N)/N with N = UA/J, 1.0242 at a twentieth, 1.1804 at a half, 1.297
// at two, and never shorter than the handbook's.
func TestAMediumThatWarmsAsHandbooksHaveIt(t *testing.T) {
	for _, c := range []struct{ ua, flow, over float64 }{{2, 40, 1.0242}, {2, 4, 1.1804}, {2, 1, 1.297}} {
		r := run(t, jacketed(c.ua, vessel.Jacket{Capacity: 1e-3 * c.flow, Flow: c.flow, Power: math.Inf(1), Begins: 320}, 0))
		k := math.Exp(c.ua / c.flow)
		handbook := math.Log(40/10.) * 100 * k / ((k - 1) * c.flow)
		at, ok := r.Path.When(func(p vessel.Point) float64 { return -p.Temperature }, -290)
		if !ok || at < handbook*(1-1e-4) || !nearly.Share(at/handbook, c.over, 2e-3) {
			t.Errorf("UA/J %g: %g s, handbook %g", c.ua/c.flow, at, handbook)
		}
	}
}

// A coefficient that changes as the batch warms: 600 kg of 1850 J/kg/K from 15 to 150 degC by steam
// of 170 degC through 4.5 m2, with 390, 465, 568, 625, 664 and 680 W/m2/K at 15, 30, 60, 90, 120 and
// 150 degC (a printed exercise, read as a question without its answer). By quadrature of
// M cp dT/(U A (Ts - T)), U straight between the points, in 0.01 K; run five kelvins by five with U
// of the middle.
func TestACoefficientThatChangesAsTheBatchWarms(t *testing.T) {
	at, us := []float64{15, 30, 60, 90, 120, 150}, []float64{390, 465, 568, 625, 664, 680}
	u := func(c float64) float64 {
		i := 0
		for i < len(at)-2 && c > at[i+1] {
			i++
		}
		return us[i] + (us[i+1]-us[i])*(c-at[i])/(at[i+1]-at[i])
	}
	want := 0.0
	for c := 15.005; c < 150; c += 0.01 {
		want += 600 * 1850 * 0.01 / (u(c) * 4.5 * (170 - c))
	}
	got := 0.0
	for c := 15.0; c < 150; c += 5 {
		x := vessel.Piece{Until: 2000, UA: u(c+2.5) * 4.5, Coolant: 273.15 + 170}
		p := plain(x)
		p.Start, p.Liquor.Capacity = 273.15+c, 600*1850-2
		r := run(t, p)
		k, ok := r.Path.When(func(p vessel.Point) float64 { return p.Temperature }, 273.15+c+5)
		if !ok {
			t.Fatalf("not past %g degC", c)
		}
		got += k
	}
	if !nearly.Share(got, want, 3e-3) || !nearly.Between(want, 700, 1100) {
		t.Errorf("%g s, by quadrature %g", got, want)
	}
}
