package gas

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// many is the number of batches that stand in a place until it is picked up, 1 where it is
// none of waste. Where nobody states it of a container of waste, it is not known; a pressure
// that none of it may reach is told of one batch, since more of them bring no less.
func (r *reader) many(p *route.Place) working.Num {
	switch {
	case p.Batches > 0:
		return working.Given("N", "1", float64(p.Batches), p.At+".batches")
	case r.c.Route.TakesWaste(p):
		return working.Absent("N", "1", working.Lacks(working.NotGiven, "places."+p.Key+".batches"))
	}
	return working.Exact("N", "1", 1, "no container of waste")
}

// pressing is that number as a pressure takes it.
func (r *reader) pressing(p *route.Place) working.Num {
	n := r.many(p)
	if n.Unknown() && !(p.Rating.Set && p.Relief.Set) {
		return working.Exact("N", "1", 1, "one batch: how many nobody states")
	}
	return n
}

// notWithin in d says not within ten years.
const notWithin = 3650

// waits is the gas that what one batch brings to a place can still give, mol.
type waits struct {
	place *route.Place
	waste bool
	gas   working.Num // all of it
	burns working.Num // what of it can burn; none where nothing does
	ages  bool        // flakes that stand in it are counted
}

// still reports what each place can still give at its worst, of waste that of all batches by
// the time it is picked up, and what that is in a cabinet or fridge that changes no air:
//
//	gas.to_come       = N n Vm                      [L: 1, mol, L/mol]
//	gas.cabinet_share = N n_b Vm/(1000 y V)         [1: 1, mol, L/mol, 1, m3]
//	gas.cabinet_time  = 1000 y V/(Vm N F)           [d: 1, m3, L/mol, 1, mol/d]
//
// n_b is what of it can burn, y a quarter of the lower flammable limit, F the largest flow of
// any vessel, as if what came to the waste had not begun to react, from each batch at once,
// if so much is left in it.
func (r *reader) still(courses []course.Course) {
	for i := range r.waiting {
		x := &r.waiting[i]
		N, n, at := r.many(x.place), x.gas.As("n"), figure.At(x.place.Key)
		if N.Unknown() { // whatever one batch gives
			n = working.Absent("n", "mol", n.Missing()...)
		}
		all, says := r.w.Line("n_N", "mol", "N*n", N.V*n.V, N, n), "gas.to_come"
		if x.waste {
			says = "gas.to_come_of_all"
		}
		holds := phrase.Of(says)
		if x.ages {
			holds = holds.And(phrase.Of("gas.and_flakes"))
		}
		r.put("gas.to_come", at, "", figure.Case{}, r.litres(all), holds)
		V := r.c.CabinetVolume("V")
		if x.burns.None() || r.c.NoCabinet() {
			continue
		}
		share, most := r.inCabinet(x, N, V)
		r.put("gas.cabinet_share", at, "", figure.Case{}, share, phrase.Of("gas.cabinet"))
		if share.Unknown() && r.c.Site != nil { // of no site nobody asks what a cabinet of it takes
			worst, _ := r.inCabinet(x, N, r.c.AtWorst(V, "cabinet.least"))
			r.out[len(r.out)-1].Worst = r.w.Keep(worst)
		}
		if x.waste {
			r.put("gas.cabinet_time", at, "", figure.Case{}, r.gathers(most, N, courses), phrase.Of("gas.cabinet_soon"))
		}
	}
}

// inCabinet is what can burn of the gas of a place over the amount in mol that is a quarter of
// the lower flammable limit in the cabinet, and that amount. Nothing is none of any cabinet.
func (r *reader) inCabinet(x *waits, N, V working.Num) (share, most working.Num) {
	n, y, vm := x.burns.As("n"), process.Flammable(r.c.Store, r.w).As("y"), r.vm.As("Vm")
	most = r.w.Line("n_q", "mol", "y*V*1000/Vm", y.V*V.V*1000/vm.V, y, V, vm)
	if n.V == 0 {
		return r.w.Model("x", "1", "nothing in it gives gas that burns", 0, n), most
	}
	return r.w.Line("x", "1", "N*n/n_q", N.V*n.V/most.V, N, n, most), most
}

// takes notes what can still give gas in a place, of one batch.
func (r *reader) takes(p *route.Place, all []potential, unfollowed []working.Missing) {
	ages := r.ages(p.Key)
	if all == nil && unfollowed == nil && ages.None() {
		return
	}
	x := waits{place: p, waste: p.Batches > 0 || r.c.Route.TakesWaste(p)}
	for i := range all {
		n := r.w.Sum("n", "mol", all[i].gas...)
		x.gas = more(x.gas, n)
		if all[i].burns {
			x.burns = more(x.burns, n)
		}
	}
	if unfollowed != nil {
		x.gas = working.Absent("n", "mol", unfollowed...)
		x.burns = x.gas
	}
	if !ages.None() {
		x.gas, x.burns, x.ages = r.with(x.gas, ages), r.with(x.burns, ages), true
	}
	r.waiting = append(r.waiting, x)
}

// ages is the gas that flakes can give which stand in a place at the end, mol; none where there
// are none.
func (r *reader) ages(key string) working.Num {
	for i := range r.k.Ends {
		if s := &r.k.Ends[i]; s.Place == key {
			return process.Ages(r.c.Store, r.w, r.k, s)
		}
	}
	return working.Num{}
}

// with is an amount and another beside it, mol.
func (r *reader) with(n, other working.Num) working.Num {
	if n.None() {
		return other
	}
	a, b := n.As("a"), other.As("b")
	return r.w.Line("n", "mol", "a+b", a.V+b.V, a, b)
}

// more is the greater of two amounts, what is not known before any number.
func more(a, b working.Num) working.Num {
	if a.None() || b.Unknown() || !a.Unknown() && b.V > a.V {
		return b
	}
	return a
}

// gathers is the time in d until that much has come, if so much is left in it.
func (r *reader) gathers(most, N working.Num, courses []course.Course) working.Num {
	f := r.fastest(courses).As("F_n")
	return r.w.Line("t", "d", "min(n_q/(N*F_n)/86400,t_n)", min(most.V/(N.V*f.V)/86400, notWithin), most, N, f,
		working.Exact("t_n", "d", notWithin, "ten years"))
}

// fastest is the largest flow of hydrogen of any vessel, mol/s; not known where no powder
// was followed.
func (r *reader) fastest(courses []course.Course) working.Num {
	runs := worstRuns(courses)
	if len(runs) == 0 {
		return working.Absent("F_n", "mol/s", working.Lacks("flow_of_waste", ""))
	}
	most := working.Num{}
	for i := range runs {
		x := &runs[i]
		if x.Missing != nil {
			return working.Absent("F_n", "mol/s", x.Missing...)
		}
		if most.None() || x.Vessel.Gas.Value > most.V || math.IsNaN(x.Vessel.Gas.Value) {
			most = r.w.Model("F_n", "mol/s", x.Balance(), x.Vessel.Gas.Value, x.Inputs...)
		}
	}
	return most
}
