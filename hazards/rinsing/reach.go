package rinsing

import (
	"math"

	"etchbound/chemicals/aqueous"
)

// reach is how the written target is reached by the liquid as it is written, but without carbon
// dioxide, and by bicarbonate in one rinse more after those in air. The acid between the layers
// that is left then is the most there can be.
func (b *bench) reach(w *Wash) Reach {
	free := *b
	free.air, free.target = 0, w.Written
	out := Reach{Free: [2]int{free.times(free.first), free.times(free.slow)}, Bicarbonate: math.NaN(), Salt: math.NaN()}
	a, ok := b.slow, w.Ways[0].Slowly > 0
	for n := 1; ok && n <= w.Ways[0].Slowly; n++ {
		a, ok = b.rinse(&a, n, AsWritten)
	}
	if !ok {
		return out
	}
	m, kg := b.cycle(&a)
	m.Reagent, m.FixedPH, m.Gas = "NaHCO3", w.Written, aqueous.Gas{Kind: aqueous.Open, Value: b.air}
	if s, err := b.model.Solve(m); err == nil && len(s.Outside()) == 0 && s.Reagent() <= bicarbonate {
		out.Salt = math.Max(s.Reagent(), 0) * kg * b.salt
		out.Bicarbonate = math.Max(s.Reagent(), 0) * kg / b.water * 1000
	}
	return out
}

// times is how many cycles bring the target; 0 where not within Most.
func (b *bench) times(a bath) int {
	for n := 1; n <= Most; n++ {
		var ok bool
		if a, ok = b.rinse(&a, n, AsWritten); !ok {
			return 0
		}
		if b.washed(&a) {
			return n
		}
	}
	return 0
}
