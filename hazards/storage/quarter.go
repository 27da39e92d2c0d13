package storage

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/process"
)

// shut is how many ways of the gas are told of a fridge or cabinet: none where the site says
// that product stands in none.
func (r *reader) shut() int {
	if r.c.NoCabinet() {
		return 0
	}
	return outer
}

// quarter is the time in d until what burns of the gas of a stage, all of it let out, is at
// a quarter of the lower flammable limit in a fridge or cabinet that changes no air. Methane
// counts as hydrogen, whose limit is the lower.
func (r *reader) quarter(s *stage, way int) working.Num {
	V := r.c.CabinetVolume("V")
	n, left := s.gas.hydrogen[way].As("n_1"), s.gas.residual.As("n_r")
	if way > 0 {
		c, h := s.gas.carbon.As("n_C"), n.As("n_H2")
		n = r.w.Line("n_1", "mol", "n_H2+n_C", h.V+c.V, h, c)
	}
	y, vm := process.Flammable(r.c.Store, r.w).As("y"), process.MolarVolume(r.c.Store, r.w).As("Vm")
	most := r.w.Line("n_q", "mol", "y*V*1000/Vm", y.V*V.V*1000/vm.V, y, V, vm)
	k, g := s.faster, r.c.Store.Num("storage.gas_share").As("f_g")
	return r.w.Model("t", "d", "time until the gas, of first order, is this much",
		until(k.V, g.V, n.V, left.V, most.V), k, g, n, left, most)
}
