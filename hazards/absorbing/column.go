package absorbing

import (
	_ "embed"
	"math"
	"sync"

	"etchbound/schemas/columns"
)

// Packing is what a column is filled with: slotted rings of plastic, since glass and
// ceramics do not stand fluoride.
type Packing struct {
	Name   string
	Size   float64 // m
	Area   float64 // m2/m3
	Factor float64 // 1/m, for flooding
	Wets   float64 // N/m, surface tension that its material is wetted by
	Least  float64 // m3/(m s) of liquor per length of edge, below which it is not wetted
}

//go:embed packings.csv
var packingsCSV string

// Packings are those held, the smallest first.
var Packings = sync.OnceValue(func() []Packing {
	var out []Packing
	columns.Must("hazards/absorbing/packings.csv", packingsCSV, func(r columns.Row) string {
		r.Named("status")
		p := Packing{r.Named("packing"), r.Stated("size"), r.Stated("area"), r.Stated("factor"), r.Stated("wets"),
			r.Stated("least_wetting")}
		out = append(out, p)
		return p.Name
	})
	return out
})

// Fluid is a gas or a liquor.
type Fluid struct {
	Density   float64 // kg/m3
	Viscosity float64 // Pa s
	Diffuses  float64 // m2/s, of what is taken up in it
	Molar     float64 // kg/mol
	Tension   float64 // N/m, of a liquor
}

// Flows are what goes through a column.
type Flows struct {
	Gas, Liquor float64 // kg/(m2 s)
	Celsius     float64
	Pressure    float64 // Pa
}

const (
	gravity = 9.80665
	molarR  = 8.314462618
	kelvin  = 273.15
)

// Wetted is the area of a packing that is wetted, m2/m3.
func (p Packing) Wetted(l Fluid, flow float64) float64 {
	a := p.Area
	re, fr := flow/(a*l.Viscosity), flow*flow*a/(l.Density*l.Density*gravity)
	we := flow * flow / (l.Density * l.Tension * a)
	return a * (1 - math.Exp(-1.45*math.Pow(p.Wets/l.Tension, 0.75)*math.Pow(re, 0.1)*math.Pow(fr, -0.05)*
		math.Pow(we, 0.2)))
}

// GasFilm is the coefficient of the film of gas, mol/(m2 s Pa): rings below 15 mm have a
// smaller one.
func (p Packing) GasFilm(g Fluid, flow, celsius float64) float64 {
	k := 5.23
	if p.Size < 0.015 {
		k = 2
	}
	return k * math.Pow(flow/(p.Area*g.Viscosity), 0.7) * math.Cbrt(g.Viscosity/(g.Density*g.Diffuses)) *
		math.Pow(p.Area*p.Size, -2) * p.Area * g.Diffuses / (molarR * (celsius + kelvin))
}

// slow is the Re of the gas below which nobody measured what the correlation rests on.
const slow = 5

// Unit is the height of a transfer unit for a gas that reacts at once, m.
func (p Packing) Unit(g, l Fluid, f Flows) float64 {
	flow := math.Max(f.Gas, slow*p.Area*g.Viscosity)
	return flow / g.Molar / (p.GasFilm(g, flow, f.Celsius) * p.Wetted(l, f.Liquor) * f.Pressure)
}

// Units are the transfer units from a share of gas to another where nothing of it comes
// back: 0 where it is that low already.
func Units(from, to float64) float64 {
	if !(from > 0 && to > 0) {
		return math.NaN()
	}
	return math.Max(0, math.Log(from/to))
}

// Floods is the flow of gas that floods a packing, kg/(m2 s), by the line that wet scrubbers
// for acid gas are estimated with: lg Y = -1.668 - 1.085 lg X - 0.297 (lg X)^2, from X 0.01
// to 10 and as at these ends beyond.
func (p Packing) Floods(g, l Fluid, liquor float64) float64 {
	y := func(gas float64) float64 { // what the flow takes over what floods
		x := math.Log10(math.Min(10, math.Max(0.01, liquor/gas*math.Sqrt(g.Density/l.Density))))
		most := math.Pow(10, -1.668-1.085*x-0.297*x*x)
		return gas*gas*p.Factor*math.Pow(l.Viscosity*1000, 0.2)/(g.Density*l.Density*gravity) - most
	}
	low, high := 1e-6, 20.0
	if !(y(low) < 0) || !(y(high) > 0) {
		return math.NaN()
	}
	for range 80 {
		if m := math.Sqrt(low * high); y(m) < 0 {
			low = m
		} else {
			high = m
		}
	}
	return low
}

// Column is a column that is sized.
type Column struct {
	Packing  Packing
	Diameter float64 // m
	Liquor   float64 // kg/s round it
	Unit     float64 // m
	Units    float64
	Height   float64 // m of packing
	Most     float64 // m, with the scatter of the correlation
}

// The least a column is: so many rings wide, and as high as its liquor needs to spread. It
// takes a share of the gas that floods it, and the correlation scatters by a factor.
const (
	across  = 8
	least   = 0.3
	flooded = 0.6
	scatter = 1.5
)

// Size is the narrowest column of the packings for a flow of gas in kg/s that carries shares
// of what reacts at once, each with the share it is brought to: the gas that needs most
// decides.
func Size(g, l Fluid, gas, celsius, pressure, units float64) Column {
	best := Column{Diameter: math.NaN(), Height: math.NaN(), Most: math.NaN(), Unit: math.NaN(), Units: units}
	for _, p := range Packings() {
		wets := p.Least * p.Area * l.Density
		d := math.Max(across*p.Size, math.Sqrt(4*gas/(math.Pi*flooded*p.Floods(g, l, wets))))
		if math.IsNaN(d) || d >= best.Diameter {
			continue
		}
		area := math.Pi * d * d / 4
		h := p.Unit(g, l, Flows{gas / area, wets, celsius, pressure})
		best = Column{Packing: p, Diameter: d, Liquor: wets * area, Unit: h, Units: units,
			Height: math.Max(least, h*units), Most: math.Max(least, scatter*h*units)}
		if math.IsNaN(units) {
			best.Height, best.Most = math.NaN(), math.NaN()
		}
	}
	return best
}
