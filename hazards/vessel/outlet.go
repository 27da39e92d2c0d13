package vessel

import (
	"math"

	"etchbound/hazards/roots"
)

// Outlet is the way gas leaves a vessel: a bore, a line of that bore behind it,
// and a head of liquid that it bubbles through.
type Outlet struct {
	Discharge float64 // coefficient of the orifice, such as 0.62
	Density   float64 // kg/m3 of the gas
	Viscosity float64 // Pa s
	Line      float64 // m; 0: none
	Head      float64 // Pa
}

// Drop is the pressure in Pa that a flow in m3/s takes through a bore in m:
//
//	orifice  8 rho Q^2/(Cd pi d^2)^2
//	line     f L/d rho v^2/2,  f the greater of 64/Re and 0.316/Re^(1/4)
//	head     as it is
//
// Both friction factors are those of a smooth tube (laminar, and Blasius up to
// Re 1e5); the greater counts where the flow may be either.
func (o Outlet) Drop(flow, bore float64) float64 {
	if !(flow > 0) {
		return o.Head
	}
	orifice := 8 * o.Density * flow * flow / math.Pow(o.Discharge*math.Pi*bore*bore, 2)
	if o.Line == 0 {
		return orifice + o.Head
	}
	v := 4 * flow / (math.Pi * bore * bore)
	re := o.Density * v * bore / o.Viscosity
	f := math.Max(64/re, 0.316*math.Pow(re, -0.25))
	return orifice + o.Head + float64(f*o.Line/bore*o.Density*v*v/2)
}

// Bore is the least bore in m through which a flow in m3/s takes no more than a
// pressure in Pa. It is NaN where the head alone takes that much.
func (o Outlet) Bore(flow, pressure float64) float64 {
	left := pressure - o.Head
	if !(left > 0) || !(flow >= 0) {
		return math.NaN()
	}
	if flow == 0 {
		return 0
	}
	least := math.Sqrt(4 * flow / (o.Discharge * math.Pi) * math.Sqrt(o.Density/(2*left))) // without the line
	if o.Line == 0 {
		return least
	}
	most := 2 * least
	for o.Drop(flow, most) > pressure {
		most *= 2
	}
	r, err := roots.Find(func(d float64) float64 { return o.Drop(flow, d) - pressure }, 0.999*least, most, 1e-12*least)
	if err != nil {
		return math.NaN()
	}
	return r.X
}

// Flow is the greatest flow in m3/s that a bore in m lets through at a pressure
// in Pa; zero where the head alone takes that much, NaN for no bore.
func (o Outlet) Flow(bore, pressure float64) float64 {
	left := pressure - o.Head
	switch {
	case !(bore > 0) || math.IsNaN(left):
		return math.NaN()
	case left <= 0:
		return 0
	}
	most := o.Discharge * math.Pi / 4 * bore * bore * math.Sqrt(2*left/o.Density) // without the line
	if o.Line == 0 {
		return most
	}
	r, err := roots.Find(func(q float64) float64 { return o.Drop(q, bore) - pressure }, 0, 1.001*most, 1e-12*most)
	if err != nil {
		return math.NaN()
	}
	return r.X
}
