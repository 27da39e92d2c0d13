package absorbing

import "math"

// Warms is by how much a liquor warms that takes up heat in kJ and loses none, K: so much
// liquor in kg, of a heat capacity in kJ/(kg K).
func Warms(heat, liquor, capacity float64) float64 {
	if !(liquor > 0 && capacity > 0) {
		return math.NaN()
	}
	return heat / (liquor * capacity)
}

// Condenser is the area in m2 that condenses steam of a duty in W with water that comes in
// at a temperature in degC and leaves 5 K warmer: U in W/(m2 K).
//
//	A = P/(U dT),  dT = (dT1 - dT2)/ln(dT1/dT2)
func Condenser(duty, boils, coolant, u float64) float64 {
	return duty / (u * MeanDifference(boils-coolant, boils-coolant-5))
}

// MeanDifference is the logarithmic mean of two differences of temperature, K.
func MeanDifference(a, b float64) float64 {
	switch {
	case !(a > 0 && b > 0):
		return math.NaN()
	case math.Abs(a-b) < 1e-9*a:
		return a
	}
	return (a - b) / math.Log(a/b)
}

// Dissolved is what a liquor is drawn up by, at most, when the share y of a gas space
// dissolves in it, in the unit of that space: the rest keeps its pressure.
func Dissolved(space, y float64) float64 { return space * math.Min(1, math.Max(0, y)) }

// Sweeps is how many times its volume of an inert gas a gas space takes, mixed all the time,
// until oxygen comes from one share to another.
func Sweeps(from, to float64) float64 { return Units(from, to) }

// Duct is the bore in m through which a flow in m3/s goes at a speed in m/s.
func Duct(flow, speed float64) float64 { return math.Sqrt(4 * flow / (math.Pi * speed)) }
