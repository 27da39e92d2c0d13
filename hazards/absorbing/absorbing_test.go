package absorbing_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"etchbound/hazards/absorbing"
	"etchbound/schemas/nearly"
)

// Chemical Engineering, Volume 6: Chemical Engineering Design, 4th edition, Elsevier
// Butterworth-Heinemann, 2005, section 11.14, example 11.14, its printed values from memory:
// sulfur dioxide at 20 degC through 38 mm saddles of 194 m2/m3, 17.6 kg/(m2 s) of water and
// 0.79 kg/(m2 s) of air.
func TestFilmsOfATextbook(t *testing.T) {
	p := absorbing.Packing{Size: 0.038, Area: 194, Wets: 0.061}
	g := absorbing.Fluid{Density: 1.21, Viscosity: 1.8e-5, Diffuses: 1.45e-5, Molar: 0.029}
	l := absorbing.Fluid{Density: 1000, Viscosity: 1e-3, Diffuses: 1.7e-9, Molar: 0.018, Tension: 0.07}
	for _, row := range []struct {
		what      string
		got, want float64
	}{
		{"wetted share", p.Wetted(l, 17.6) / 194, 0.71},
		{"film of gas, mol/(m2 s Pa): 5.0e-4 kmol/(m2 s bar)", p.GasFilm(g, 0.79, 20), 5.0e-6},
		{"height of a unit of the film of gas, m", p.Unit(g, l, absorbing.Flows{Gas: 0.79, Liquor: 17.6, Celsius: 20,
			Pressure: 101300}), 0.39},
	} {
		if !nearly.Share(row.got, row.want, 0.02) {
			t.Errorf("%s is %g, printed %g", row.what, row.got, row.want)
		}
	}
}

// The same book, section 12.6, example 12.1, from memory: methanol from 95 to 40 degC against
// water from 25 to 40 degC has a mean difference of 31 K.
func TestMeanDifferenceOfATextbook(t *testing.T) {
	if got := absorbing.MeanDifference(55, 15); !nearly.Share(got, 31, 0.02) {
		t.Errorf("%g K, printed 31", got)
	}
}

// By hand: 99 % of a gas that reacts at once are ln 100 units, 2.3 kW at 100 degC against
// water from 20 to 25 degC are 2300/(200 x 77.47) m2, and 800 m3/h at 10 m/s a duct of 168 mm.
func TestByHand(t *testing.T) {
	for _, row := range []struct{ got, want float64 }{
		{absorbing.Units(1, 0.01), 4.60517}, {absorbing.Units(1e-7, 1e-6), 0},
		{absorbing.Condenser(2300, 100, 20, 200), 0.148440}, {1000 * absorbing.Duct(800.0/3600, 10), 168.209},
		{absorbing.Warms(131, 2, 3.8), 17.2368}, {absorbing.Dissolved(500, 1.2), 500}, {absorbing.Dissolved(500, 0.1), 50},
		{absorbing.Sweeps(0.209, 0.03), 1.94120},
	} {
		if !nearly.Share(row.got, row.want, 1e-4) && !(row.got == row.want) {
			t.Errorf("got %g, by hand %g", row.got, row.want)
		}
	}
}

// More gas takes no narrower column, and none with less than eight rings across; more units
// take no lower one, and units that nobody knows leave the height unknown.
func TestMoreGasTakesMore(t *testing.T) {
	g := absorbing.Fluid{Density: 1.2, Viscosity: 1.8e-5, Diffuses: 1.7e-5, Molar: 0.029}
	l := absorbing.Fluid{Density: 1000, Viscosity: 1e-3, Diffuses: 1.7e-9, Molar: 0.018, Tension: 0.072}
	rapid.Check(t, func(t *rapid.T) {
		flow := math.Pow(10, rapid.Float64Range(-7, 0).Draw(t, "flow"))
		units := rapid.Float64Range(0, 20).Draw(t, "units")
		a, b := absorbing.Size(g, l, flow, 20, 101325, units), absorbing.Size(g, l, 1.5*flow, 20, 101325, 1.5*units)
		if !(b.Diameter >= a.Diameter*(1-1e-9)) || !(a.Diameter >= 8*a.Packing.Size*(1-1e-9)) {
			t.Fatalf("%g kg/s: %g m, half as much again %g m", flow, a.Diameter, b.Diameter)
		}
		if !(a.Height >= 0.3 && a.Most >= a.Height) {
			t.Fatalf("%g units: %+v", units, a)
		}
		if x := absorbing.Size(g, l, flow, 20, 101325, math.NaN()); !math.IsNaN(x.Height) || !math.IsNaN(x.Most) {
			t.Fatalf("units that nobody knows: %+v", x)
		}
	})
}

// A flow that nobody knows leaves the column unknown.
func TestAnUnknownFlowIsNoColumn(t *testing.T) {
	g := absorbing.Fluid{Density: 1.2, Viscosity: 1.8e-5, Diffuses: 1.7e-5, Molar: 0.029}
	l := absorbing.Fluid{Density: 1000, Viscosity: 1e-3, Diffuses: 1.7e-9, Molar: 0.018, Tension: 0.072}
	x := absorbing.Size(g, l, math.NaN(), 20, 101325, 5)
	if !math.IsNaN(x.Diameter) || !math.IsNaN(x.Height) || !math.IsNaN(x.Most) {
		t.Errorf("%+v", x)
	}
}
