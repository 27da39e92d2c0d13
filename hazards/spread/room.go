package spread

import (
	"math"

	"etchbound/hazards/roots"
)

// Room is the air of a room with its exchange.
type Room struct {
	Volume float64 // m3
	Flow   float64 // m3/s that is changed; 0: none
}

// Mean is the share in the whole room after a time in s of an emission in m3/s
// into clean air, well mixed:
//
//	C = G/Q (1 - exp(-Q t/V))
func (r Room) Mean(emission, t float64) float64 {
	if r.Flow == 0 {
		return emission * t / r.Volume
	}
	return emission / r.Flow * -math.Expm1(-r.Flow*t/r.Volume)
}

// End is the share the room comes to, infinite without exchange.
func (r Room) End(emission float64) float64 { return emission / r.Flow }

// Reaches is the time in s after which the room is at a share, infinite where it
// never is.
func (r Room) Reaches(emission, share float64) float64 {
	switch {
	case emission <= 0:
		return math.Inf(1)
	case r.Flow == 0:
		return share * r.Volume / emission
	case emission/r.Flow <= share:
		return math.Inf(1)
	}
	return -r.Volume / r.Flow * math.Log1p(-share*r.Flow/emission)
}

// Near is the air around a source within arm's reach: half a sphere of a radius
// in m, with air that passes its surface at a velocity in m/s.
type Near struct{ Radius, Velocity float64 }

// Exchange is the flow between the near field and the room, m3/s: half its free
// surface times the velocity.
func (n Near) Exchange() float64 { return 0.5 * 2 * math.Pi * n.Radius * n.Radius * n.Velocity }

// Volume of the near field, m3.
func (n Near) Volume() float64 { return 2.0 / 3 * math.Pi * n.Radius * n.Radius * n.Radius }

// TwoZones is the share near the source and in the rest of the room after t s of
// an emission in m3/s, with an exchange in m3/s between a near field of a volume
// in m3 and the room. The room needs an exchange of its own. Exact solution of
//
//	Vn dCn = (G + B (Cf - Cn)) dt
//	Vf dCf = (B (Cn - Cf) - Q Cf) dt
func (r Room) TwoZones(emission, exchange, near, t float64) (close, far float64) {
	if t <= 0 {
		return 0, 0
	}
	far = r.Volume - near
	b, q := exchange, r.Flow
	a := (b*far + near*(b+q)) / (near * far)
	root := math.Sqrt(a*a - 4*b*q/(near*far))
	l1, l2 := (-a+root)/2, (-a-root)/2
	a1 := (b*q + l2*near*(b+q)) / (b * q * near * (l1 - l2))
	a2 := (b*q + l1*near*(b+q)) / (b * q * near * (l1 - l2))
	e1, e2 := math.Exp(l1*t), math.Exp(l2*t)
	close = emission/q + emission/b + emission*a1*e1 - emission*a2*e2
	far = emission/q + emission*(l1*near+b)/b*a1*e1 - emission*(l2*near+b)/b*a2*e2
	return max(close, 0), max(far, 0) // at the start the terms cancel but for rounding
}

// NearReaches is the time in s after which the air near a source is at a share,
// infinite where it is not within a day. Arguments as for TwoZones.
func (r Room) NearReaches(emission, exchange, near, share float64) float64 {
	const day = 86400
	over := func(t float64) float64 {
		close, _ := r.TwoZones(emission, exchange, near, t)
		return close - share
	}
	if !(emission > 0) || over(day) <= 0 {
		return math.Inf(1)
	}
	x, err := roots.Find(over, 0, day, 1e-3)
	if err != nil { // at the limit from the first moment on
		return 0
	}
	return x.X
}

// Oxygen is the share left of an oxygen share once a volume of another gas, in
// the unit of the room, has come into the room and mixed while as much air left:
//
//	x = x0 exp(-v/V)
func Oxygen(share, volume, room float64) float64 { return share * math.Exp(-volume/room) }
