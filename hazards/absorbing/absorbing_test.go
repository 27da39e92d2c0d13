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
		{"film of liquor, m/s", p.LiquorFilm(l, 17.6), 2.5e-4},
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

// Carbon dioxide and caustic soda by hand: 1.6e-9 m2/s, 6.2 m3/(mol s) and 500 mol/m3 are a film
// of 2.227e-3 m/s, at 1e-4 m/s Ha 22.27; undiluted, 2.5e-4 mol/(m3 Pa) of it are 25.33 mol/m3, two
// of base each and 1.7 times as fast, so E_i = 17.78; E solves E^2 16.78 = 496.0 (17.78 - E): 12.50.
// Thin, the reaction alone holds it up: E is Ha.
func TestAGasThatReactsSlowly(t *testing.T) {
	l := absorbing.Fluid{Density: 1000, Viscosity: 1e-3, Diffuses: 1.6e-9, Molar: 0.018, Tension: 0.072}
	x := absorbing.Reacting{Dissolves: 2.5e-4, Rate: 6.2, Base: 500, Takes: 2, Faster: 1.7, Share: 1}
	if got := x.Enhanced(l, 1e-4, 101325); !nearly.Share(got, 12.50, 2e-3) {
		t.Errorf("enhanced %g times, by hand 12.50", got)
	}
	if x.Share = 1e-6; !nearly.Share(x.Enhanced(l, 1e-4, 101325), 22.27, 2e-3) {
		t.Errorf("thin: %g times, by hand 22.27", x.Enhanced(l, 1e-4, 101325))
	}
	g := absorbing.Fluid{Density: 1.2, Viscosity: 1.8e-5, Diffuses: 1.7e-5, Molar: 0.029}
	c := absorbing.Size(g, l, 1e-3, 20, 101325, 0)
	least := c.Height
	c.Holds(g, l, 1e-3, 20, 101325, 5, absorbing.Reacting{Dissolves: 2.5e-4, Rate: 6.2, Base: 500, Takes: 2, Faster: 1.7,
		Share: 1})
	if !(c.Height > least && c.Most > c.Height) {
		t.Errorf("%+v is no higher than %g m", c, least)
	}
	if h, most := c.Holds(g, l, 1e-3, 20, 101325, math.NaN(), x); !math.IsNaN(h+most) || !math.IsNaN(c.Height+c.Most) {
		t.Errorf("units that nobody knows: %+v", c)
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
