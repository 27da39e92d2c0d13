package vessel

import (
	"math"

	"etchbound/hazards/roots"
)

// Settling is a batch beside the liquid of a jacket, both as far from the coolant at first,
// where nothing reacts. With gaps g of the batch and h of the jacket to the coolant
//
//	C dg/dt = -U (g - h),   C_j dh/dt = U (g - h) - min(J h, P)
//
// While the chiller gives all it can, the difference D = g - h comes to P C/((C + C_j) U) by the
// rate U/C + U/C_j, and C g + C_j h falls by P; after it both fall by two exponentials.
type Settling struct {
	Batch, Jacket float64 // J/K
	Wall, Flow    float64 // W/K
	Power         float64 // W; infinite where nothing limits it
}

// Within is the time in s from a gap to a smaller one, both in K; not a number where anything is
// not known, or not above zero.
func (s Settling) Within(from, to float64) float64 {
	if !(s.Batch > 0 && s.Jacket > 0 && s.Wall > 0 && s.Flow > 0 && s.Power > 0 && to > 0) || math.IsNaN(from) {
		return math.NaN()
	}
	if from <= to {
		return 0
	}
	spent, g, h := 0.0, from, from
	if s.Flow*from > s.Power {
		both := s.Batch + s.Jacket
		rate := s.Wall/s.Batch + s.Wall/s.Jacket
		apart := func(t float64) float64 { return float64(s.Power / (s.Jacket * rate) * -math.Expm1(-rate*t)) }
		jacket := func(t float64) float64 { return from - (float64(s.Power*t)+float64(s.Batch*apart(t)))/both }
		spent = when(func(t float64) float64 { return jacket(t) - s.Power/s.Flow }, both*from/s.Power)
		if at := func(t float64) float64 { return jacket(t) + apart(t) - to }; at(spent) <= 0 {
			return when(at, spent)
		}
		g, h = jacket(spent)+apart(spent), jacket(spent)
	}
	a, b := s.Wall/s.Batch+(s.Wall+s.Flow)/s.Jacket, s.Wall*s.Flow/(s.Batch*s.Jacket)
	fast := (a + math.Sqrt(float64(a*a)-float64(4*b))) / 2
	slow := b / fast
	most := (float64(fast*g) - s.Wall*(g-h)/s.Batch) / (fast - slow)
	left := func(t float64) float64 {
		return float64(most*math.Exp(-slow*t)) + float64((g-most)*math.Exp(-fast*t)) - to
	}
	return spent + when(left, math.Log(2*math.Max(g, most)/to)/slow)
}

// when is the time at which what falls is nothing, up to a time at which it is less.
func when(f func(t float64) float64, last float64) float64 {
	r, err := roots.Find(f, 0, last, 1e-9*last)
	if err != nil {
		return math.NaN()
	}
	return r.X
}
