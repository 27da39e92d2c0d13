package storage

import (
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// dosed is the mass of an additive that brings what is stored to its dose, at its most.
type dosed struct {
	of   *chemicals.Substance
	mass working.Num
}

// antioxidants adds what a stage takes of every additive whose dose is held: nothing where
// nothing is wet. What is in it already counts as not there, and a twentieth is weighed
// beyond the dose from which it counts.
func (r *reader) antioxidants(all *[]dosed, s *stage) {
	v := s.d.After.Volume(r.w).As("V")
	if more := s.d.After.Unsaid(); more != nil {
		v = working.Absent("V", "mL", more...)
	}
	if v.V == 0 {
		return
	}
	for _, x := range additives() {
		c, M := r.c.Store.Num(datum.Of("storage.dose", x.Slug)).As("c"), x.Formula.MolarMass(r.c.Store, r.w)
		m := r.w.Line("m", "g", "1.05*c*V*M/1000000", 1.05*c.V*v.V*M.V/1000000, c, v, M)
		at := 0
		for at < len(*all) && (*all)[at].of != x {
			at++
		}
		if at == len(*all) {
			*all = append(*all, dosed{of: x, mass: m})
			continue
		}
		keep(&(*all)[at].mass, m, 1)
	}
}

// additives are the substances whose dose the data hold.
var additives = sync.OnceValue(func() []*chemicals.Substance {
	var out []*chemicals.Substance
	for _, x := range chemicals.Library().All() {
		if _, held := chemicals.Base().Row(datum.Of("storage.dose", x.Slug)); held {
			out = append(out, x)
		}
	}
	return out
})
