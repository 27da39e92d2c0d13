package aqueous

import "math"

// Range of temperature, degC. Below and above it nothing is answered.
const (
	Coldest = 0
	Hottest = 100
)

const kelvin = 273.15

// density is that of water at 1 atm in g/cm3, t in K: the saturation line of the
// international formulation of 1995, and the compression to 1 atm.
func density(t float64) float64 {
	x := 1 - t/647.096
	sum := 1.0
	for _, c := range [...][2]float64{{1.99274064, 1. / 3}, {1.09965342, 2. / 3}, {-0.510839303, 5. / 3},
		{-1.75493479, 16. / 3}, {-45.5170352, 43. / 3}, {-6.74694450e5, 110. / 3}} {
		sum += c[0] * math.Pow(x, c[1])
	}
	const compression = 4.6e-5 // of 1 atm; its change with temperature moves nothing that is printed
	return 0.322 * sum * (1 + compression)
}

// permittivity is the relative one of water at 1 atm, t in K (J. Phys. Chem. 1979, 83, 1599).
func permittivity(t float64) float64 {
	const bar = 1.01325
	b := -8.0325e3 + 4.2142e6/t + 2.1417*t
	c := -2.0525 + 3.1159e3/(t-1.8289e2)
	return 3.4279e2*math.Exp(-5.0866e-3*t+9.4690e-7*t*t) + c*math.Log((b+bar)/(b+1000))
}

// debye gives A, (kg/mol)^0.5, and B, (kg/mol)^0.5 per angstrom, at t kelvin.
func debye(t float64) (a, b float64) {
	rho := density(t)
	q := 1.671008e-3 / (permittivity(t) * t) // cm
	b = 1e-8 * math.Sqrt(8*math.Pi*6.02252e23*q*rho/1000)
	return 1e8 * b * q / (2 * math.Ln10), b
}
