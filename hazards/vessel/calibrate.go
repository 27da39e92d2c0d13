package vessel

import "math"

// Complete is the conversion a stated hold is taken to end at.
const Complete = 0.99

// Calibrate returns the rate constant, in 1/s at the temperature of the hold,
// with which a law reaches Complete in hold seconds at that temperature. Closed
// forms, with X = Complete:
//
//	first order        k = -ln(1-X)/t
//	contracting        k = 3 (1 - (1-X)^(1/3))/t
//	self-accelerating  k = ln((X + s)/(s (1-X)))/((1+s) t),  s = seed
//
// It is NaN for another law, and for a hold or a seed that is not above zero.
func Calibrate(law Law, hold, seed float64) float64 {
	return CalibrateTo(law, hold, seed, Complete)
}

// CalibrateTo is Calibrate for a hold that ends at conversion x, above 0 and
// below 1.
func CalibrateTo(law Law, hold, seed, x float64) float64 {
	if !(hold > 0) || !(x > 0 && x < 1) {
		return math.NaN()
	}
	switch law {
	case FirstOrder:
		return -math.Log(1-x) / hold
	case Contracting:
		return 3 * (1 - math.Cbrt(1-x)) / hold
	case SelfAccelerating:
		if seed > 0 {
			return math.Log((x+seed)/(seed*(1-x))) / ((1 + seed) * hold)
		}
	}
	return math.NaN()
}
