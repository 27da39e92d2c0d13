package course

import "math"

// Dose is how hot a vessel gets with a share of what is dosed, in degC.
type Dose struct{ Share, Hottest float64 }

// doses is in how many equal parts the share is shown.
const doses = 40

// Dosed is the highest temperature of a stage in which an etch begins against the share
// of what it doses that is in, with nothing lost; nil where it is not known. Powder that
// goes into liquor reacts as far as it is in:
//
//	T = T_set + x Q/(C - (1 - x) C_s)
//
// Liquor that goes on to powder lets as much of it react as there is liquor for, in what
// lies there and has gone in, so that the highest is where the last of it can react:
//
//	T = T_set + min(1, x/s) Q/(C_0 + x (C - C_0))
func (s *Stage) Dosed() []Dose {
	if s.Etches == nil {
		return nil
	}
	q, all, solid := 1000*s.Heat.V, s.Filled.V, s.Done.Contents().SolidCapacity(nil).V
	at := func(x float64) float64 { return s.Set.V + x*q/(all-(1-x)*solid) }
	least := 0.0
	if s.Onto != nil {
		there, share := s.Onto.There.V, s.Onto.Share.V
		at = func(x float64) float64 { return s.Set.V + math.Min(1, x/share)*q/(there+x*(all-there)) }
		least = share
	}
	if t := at(1); math.IsNaN(t) || math.IsInf(t, 0) {
		return nil
	}
	out := []Dose{{0, s.Set.V}}
	for i := 1; i <= doses; i++ {
		x := float64(i) / doses
		if before := out[len(out)-1].Share; least > before && least < x {
			out = append(out, Dose{least, at(least)})
		}
		out = append(out, Dose{x, at(x)})
	}
	return out
}
