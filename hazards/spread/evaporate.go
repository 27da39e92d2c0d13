// Package spread knows how a vapour leaves a liquid and how it spreads in a
// room, past a hood and out of doors. It works on plain floats and must not know
// what the vapour is of, nor any limit. Concentrations are shares of the air by
// volume unless a name says otherwise.
package spread

import "math"

// R is the gas constant, J/mol/K, and Atmosphere the pressure all of it holds at.
const (
	R          = 8.314462618
	Atmosphere = 101325.0
)

// Leaving is a liquid surface that gives a vapour off.
type Leaving struct {
	Area     float64 // m2
	Velocity float64 // m/s of air over it; the laws hold from about 0.1 to 3
	Molar    float64 // g/mol of the vapour
	Pressure float64 // Pa of the vapour over the liquid, below 101.325 kPa
	Kelvin   float64 // temperature of the liquid and the air over it
	Diffuses float64 // m2/s, diffusivity of the vapour in air
	Board    float64 // m from the rim down to the liquid; 0: none
}

// Pool is the coefficient of mass transfer in m/s by the rate law of the EPA
// guidance for offsite consequence analysis (appendix D, 1999):
//
//	k = 0.01757 U^0.78 M^(-1/3)
func (l Leaving) Pool() float64 {
	return 0.01757 * math.Pow(l.Velocity, 0.78) * math.Pow(l.Molar, -1/3.0)
}

// Pond is the coefficient in m/s by the fit to ponds and a wind tunnel of 1973,
// with the width of the surface as of a circle:
//
//	k = 0.00479 U^0.78 d^(-0.11) Sc^(-0.67),  Sc = nu/D
func (l Leaving) Pond() float64 {
	const nu = 1.56e-5 // m2/s, air at 25 degC
	d := math.Sqrt(4 * l.Area / math.Pi)
	return 0.00479 * math.Pow(l.Velocity, 0.78) * math.Pow(d, -0.11) * math.Pow(nu/l.Diffuses, -0.67)
}

// driving is the pressure that drives the vapour, Pa: above a fifth of an
// atmosphere the vapour that leaves carries more with it.
func (l Leaving) driving() float64 {
	if l.Pressure > 0.2*Atmosphere {
		return -Atmosphere * math.Log(1-math.Min(l.Pressure, 0.999*Atmosphere)/Atmosphere)
	}
	return l.Pressure
}

// By is what leaves, mol/s, by one coefficient, with the freeboard as a second
// resistance:
//
//	n = A p/(R T)/(1/k + L/D)
func (l Leaving) By(coefficient float64) float64 {
	return l.Area * l.driving() / (R * l.Kelvin) / (1/coefficient + l.Board/l.Diffuses)
}

// Most is what leaves, mol/s, by the law that gives more.
func (l Leaving) Most() float64 { return l.By(math.Max(l.Pool(), l.Pond())) }

// Carried is the vapour, in the unit of the gas, that a gas takes along when it
// leaves saturated: gas p/(P - total), total being the pressure of all vapours
// over the liquid in Pa. It has no end at the boiling point, and is NaN there.
func Carried(gas, pressure, total float64) float64 {
	if !(total < Atmosphere) {
		return math.NaN()
	}
	return gas * pressure / (Atmosphere - total)
}
