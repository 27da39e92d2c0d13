package aqueous

import "math"

// vapour is a gas by the cubic equation of state of 1976 (Peng and Robinson's form).
type vapour struct{ critical, pressure, acentric float64 } // K, atm, 1

var carbonDioxide = vapour{304.2, 72.86, 0.225}

const litreAtm = 0.0820597 // L atm/mol/K

// at is the fugacity coefficient and the compressibility at t kelvin and p atm.
func (v vapour) at(t, p float64) (phi, z float64) {
	k := 0.37464 + 1.54226*v.acentric - 0.26992*v.acentric*v.acentric
	s := 1 + k*(1-math.Sqrt(t/v.critical))
	rtc := litreAtm * v.critical
	a := 0.457235 * rtc * rtc / v.pressure * s * s * p / (litreAtm * t * litreAtm * t)
	b := 0.077796 * rtc / v.pressure * p / (litreAtm * t)
	z = 1.0
	for range 60 { // the gas is the largest root, and from above the steps cannot miss it
		f := ((z-(1-b))*z+(a-3*b*b-2*b))*z - (a*b - b*b - b*b*b)
		d := (3*z-2*(1-b))*z + a - 3*b*b - 2*b
		step := f / d
		z -= step
		if math.Abs(step) < 1e-14 {
			break
		}
	}
	const root2 = math.Sqrt2
	ln := z - 1 - math.Log(z-b) - a/(2*root2*b)*math.Log((z+(1+root2)*b)/(z+(1-root2)*b))
	return math.Exp(ln), z
}

// of is the pressure, atm, and compressibility of the gas at a fugacity in atm.
func (v vapour) of(t, fugacity float64) (p, z float64) {
	p, z = fugacity, 1
	for range 40 {
		var phi float64
		if phi, z = v.at(t, p); math.Abs(fugacity/phi-p) < 1e-13*p {
			return fugacity / phi, z
		}
		p = fugacity / phi
	}
	return p, z
}
