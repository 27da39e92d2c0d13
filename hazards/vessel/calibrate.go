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
	if !(hold > 0) {
		return math.NaN()
	}
	switch law {
	case FirstOrder:
		return -math.Log(1-Complete) / hold
	case Contracting:
		return 3 * (1 - math.Cbrt(1-Complete)) / hold
	case SelfAccelerating:
		if seed > 0 {
			return math.Log((Complete+seed)/(seed*(1-Complete))) / ((1 + seed) * hold)
		}
	}
	return math.NaN()
}
