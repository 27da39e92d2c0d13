package vessel

import (
	"math"

	"etchbound/hazards/roots"
)

// Gravity is the standard acceleration of free fall, m/s2.
const Gravity = 9.80665

// Share is the volume fraction of a gas in a vented headspace that began as air,
// once volume has come through it, both in the same unit. The headspace mixes at
// once and nothing comes back:
//
//	dy = (1 - y) dV/space,  so  y = 1 - exp(-volume/space)
func Share(volume, space float64) float64 { return -math.Expm1(-volume / space) }

// VolumeFor is the volume that brings a headspace to a share, below 1.
func VolumeFor(share, space float64) float64 { return -space * math.Log1p(-share) }

// RiseVelocity is the velocity in m/s of a bubble in the bubbly regime,
// 1.18 (sigma g/rho)^(1/4), for a surface tension in N/m and a density in kg/m3.
func RiseVelocity(tension, density float64) float64 {
	return 1.18 * math.Pow(tension*Gravity/density, 0.25)
}

// Void is the mean share of gas in a liquid that gives gas off evenly and foams
// no more than bubbles make it, for a superficial velocity at the top over the
// rise velocity of a bubble (drift flux, bubbly regime):
//
//	velocity/rise = a (1-a)^2/((1-a^3)(1 - C0 a))
//
// with the distribution parameter C0 above 1. It is NaN outside that.
func Void(velocity, rise, c0 float64) float64 {
	x := velocity / rise
	if !(x >= 0) || !(c0 > 1) {
		return math.NaN()
	}
	f := func(a float64) float64 {
		return float64(a*math.Pow(1-a, 2)) - float64(x*(1-float64(a*a*a))*(1-float64(c0*a)))
	}
	r, err := roots.Find(f, 0, 1/c0, 1e-12)
	if err != nil {
		return math.NaN()
	}
	return r.X
}
