package absorbing

import "math"

// Reacting is a gas that the film of liquor holds up too, since its reaction with the base takes
// time.
type Reacting struct {
	Dissolves float64 // mol/(m3 Pa) in the liquor
	Rate      float64 // m3/(mol s) with the base
	Base      float64 // mol/m3 of base
	Takes     float64 // mol of base by one of the gas
	Faster    float64 // how many times faster the base diffuses than the gas
	Share     float64 // of the gas where it comes in
}

// LiquorFilm is the coefficient of the film of liquor without a reaction, m/s, by the same
// correlation as that of gas.
func (p Packing) LiquorFilm(l Fluid, flow float64) float64 {
	return 0.0051 * math.Pow(flow/(p.Wetted(l, flow)*l.Viscosity), 2.0/3) *
		math.Pow(l.Viscosity/(l.Density*l.Diffuses), -0.5) * math.Pow(p.Area*p.Size, 0.4) *
		math.Pow(l.Density/(l.Viscosity*gravity), -1.0/3)
}

// Enhanced is how many times faster a gas is taken up by its reaction, where it comes in and
// most of it stands against the base: the root of E^2 (E_i - 1) = Ha^2 (E_i - E), which holds
// from Ha 3 on.
//
//	Ha = sqrt(D k B)/k_L,  E_i = 1 + (D_B/D) B/(b c*),  c* = H y P
func (x Reacting) Enhanced(l Fluid, film, pressure float64) float64 {
	ha := math.Sqrt(l.Diffuses*x.Rate*x.Base) / film
	most := 1 + x.Faster*x.Base/(x.Takes*x.Dissolves*x.Share*pressure)
	h := ha * ha
	return math.Max(1, (math.Sqrt(h*h+4*(most-1)*h*most)-h)/(2*(most-1)))
}

// Slower is the height of a unit in m for a gas that both films hold up, as fast through the
// whole of the packing as where it comes in: a bound.
func (p Packing) Slower(g, l Fluid, f Flows, x Reacting) float64 {
	film := p.LiquorFilm(l, f.Liquor)
	passes := 1 / (1/p.GasFilm(g, math.Max(f.Gas, slow*p.Area*g.Viscosity), f.Celsius) +
		1/(x.Dissolves*film*x.Enhanced(l, film, f.Pressure)))
	return f.Gas / g.Molar / (passes * p.Wetted(l, f.Liquor) * f.Pressure)
}

// Holds makes a column for a flow of gas in kg/s high enough for a gas that reacts slowly too,
// brought down by so many units, and gives the height in m that this alone takes, with the
// scatter of the correlation.
func (c *Column) Holds(g, l Fluid, gas, celsius, pressure, units float64, x Reacting) (height, most float64) {
	area := math.Pi * c.Diameter * c.Diameter / 4
	height = units * c.Packing.Slower(g, l, Flows{gas / area, c.Liquor / area, celsius, pressure}, x)
	most = scatter * height
	c.Height, c.Most = math.Max(c.Height, height), math.Max(c.Most, most)
	return height, most
}
