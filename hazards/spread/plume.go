package spread

import "math"

// Sky is how a plume spreads: stable and slow (F), or neutral and faster (D),
// over open country or between buildings.
type Sky struct {
	Stable, Urban bool
}

// spread of a plume in m at a distance in m downwind, across and up: the
// interpolation formulas of a textbook on air pollution (third edition, tables
// 19-6 and 19-7), for an average of ten minutes, from 100 m to 10 km.
func (s Sky) spread(x float64) (across, up float64) {
	root := math.Sqrt(1 + 0.0001*x)
	switch {
	case s.Urban && s.Stable:
		return 0.11 * x / math.Sqrt(1+0.0004*x), 0.08 * x / math.Sqrt(1+0.0015*x)
	case s.Urban:
		return 0.16 * x / math.Sqrt(1+0.0004*x), 0.14 * x / math.Sqrt(1+0.0003*x)
	case s.Stable:
		return 0.04 * x / root, 0.016 * x / (1 + 0.0003*x)
	}
	return 0.08 * x / root, 0.06 * x / math.Sqrt(1+0.0015*x)
}

// Plume is the concentration at the ground under the middle of a plume, in the
// unit of the emission per m3, of an emission per s at a height in m, with wind
// in m/s at a distance in m:
//
//	C = Q/(pi u sy sz) exp(-H^2/(2 sz^2))
func (s Sky) Plume(emission, wind, height, distance float64) float64 {
	across, up := s.spread(distance)
	return emission / (math.Pi * wind * across * up) * math.Exp(-height*height/(2*up*up))
}

// Worst is the distance in m, from nearest to 10 km, at which a plume that leaves
// at a height in m is strongest at the ground.
func (s Sky) Worst(height, nearest float64) float64 {
	const farthest, steps = 10e3, 400
	at, most := nearest, s.Plume(1, 1, height, nearest)
	if height == 0 {
		return at // it only falls
	}
	for i := 1; i <= steps; i++ {
		x := nearest * math.Pow(farthest/nearest, float64(i)/steps)
		if c := s.Plume(1, 1, height, x); c > most {
			at, most = x, c
		}
	}
	return at
}
