package storage

import (
	"math"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// ages keeps what the flakes have given off by the end of a stage, and the ice of a frozen
// one.
func (r *reader) ages(all *kept, s *stage) {
	a, b, f, M := s.lost[0].As("a"), s.lost[1].As("b"), s.gas.fluorine.As("n"), r.molarMass("hydrofluoric acid")
	x := r.w.Line("X", "1", "max(a,b)", max(a.V, b.V), a, b)
	keep(&all.freed, r.w.Line("m", "g", "X*n*M", x.V*f.V*M.V, x, f, M), 1)
	if n := s.gas.nitrogen.As("n"); n.V != 0 {
		A := r.molarMass("ammonia")
		keep(&all.ammonia, r.w.Line("m", "g", "X*n*M", x.V*n.V*A.V, x, n, A), 1)
	}
	if s.wet && len(s.d.After.Unsaid()) == 0 {
		keep(&all.acid, r.acidBy(s, x), -1)
	}
	if s.wet && s.temperature.V < 0 {
		keep(&all.ice, r.ice(s), 1)
	}
}

func (r *reader) molarMass(name string) working.Num {
	x, ok := chemicals.Library().Find(name)
	if !ok {
		return working.Absent("M", "g/mol", working.LacksDatum(datum.ID(name)))
	}
	return x.Formula.MolarMass(r.c.Store, r.w).As("M")
}

// acidBy is the pH once a share of the flakes has given off its halides. Ammonia of a nitride,
// which takes acid, is not credited.
func (r *reader) acidBy(s *stage, x working.Num) working.Num {
	st := r.c.Store
	a, f, v, n, m := s.acid.As("a"), s.fluoride.As("f"), s.d.After.Volume(r.w).As("V"), s.gas.fluorine.As("n"),
		s.gas.halide.As("m")
	if s.ph.Unknown() {
		return s.ph
	}
	pk, pw := st.Num("pka.hf").As("pK_a"), st.Num("pkw").As("pK_w")
	ph := r.w.Model("pH", "1", "charge balance of strong acid, HF and water with what the flakes have given off",
		process.PH((a.V+x.V*(n.V+m.V))/v.V*1000, (f.V+x.V*n.V)/v.V*1000, pk.V, pw.V, s.keeping(v)...),
		append(s.kept(), a, f, v, x, n, m, pk, pw)...)
	if s.organic {
		return ph.Worse(working.Bound)
	}
	return ph
}

// ice is the room that what is stored takes once frozen, in % of what the place holds.
func (r *reader) ice(s *stage) working.Num {
	l, v, c, x := s.room.Liquid.As("V_l"), s.room.Solid.As("V_s"), s.room.Capacity.As("cap"),
		r.c.Store.Num("ice.expansion").As("x")
	if more := s.d.After.Unsaid(); more != nil {
		return working.Absent("y", "%", more...)
	}
	return r.w.Line("y", "%", "100*(V_l*x+V_s)/cap", 100*(l.V*x.V+v.V)/c.V, l, x, v, c)
}

// aged reports them.
func (r *reader) aged(p *route.Place, all *kept) {
	r.put("store.fluoride", p, figure.Case{}, all.freed, phrase.Of("store.freed"))
	if !all.ammonia.None() {
		r.put("store.ammonia", p, figure.Case{}, all.ammonia, phrase.Of("store.ammonia"))
	}
	if !all.acid.None() {
		r.put("store.ph", p, figure.Case{}, all.acid, phrase.Of("store.acid"))
	}
	if !all.ice.None() {
		r.put("store.ice", p, figure.Case{}, all.ice, phrase.Of("store.ice"))
	}
}

// standing is a container that is shut at the end of the route with product in it, and that no
// step stores, such as one of waste: how long and how warm it stands is not said, so that it comes
// to all the gas of all the flakes, at 25 degC. Of what nobody knows the flakes it is not known.
func (r *reader) standing(p *route.Place) {
	if p.Closure != route.Closed {
		return
	}
	for i := range r.k.Ends {
		x := &r.k.Ends[i]
		if x.Place != p.Key || !x.CarriesFlakes() && x.Doubted().IsZero() {
			continue
		}
		s := stage{}
		s.d, s.unsaid = r.carried(&process.Done{Number: len(r.k.Steps), Place: p.Key, After: *x})
		more := unsaid(s.d)
		if d := x.Doubted(); !d.IsZero() {
			more = append(more, d)
		}
		if more != nil {
			more = []working.Missing{working.Lacks("stands_shut", p.Key)}
		}
		K := r.c.Store.Num("gas.temperature").As("T")
		s.temperature = r.w.Line("T", "degC", "T-273.15", K.V-kelvin, K)
		s.brine, s.room, s.gas = r.briny(x), process.RoomIn(r.c, r.w, r.k, p, x), r.content(&s)
		for way, name := range wayNames {
			full, left := r.full(p, &s, way)
			f, l := full.As("p_1"), left.As("p_r")
			v := r.w.Line("p", "kPa gauge", "p_1+p_r", f.V+l.V, f, l).Worse(working.Bound)
			if more != nil {
				v = working.Absent("p", "kPa gauge", more...)
			}
			r.put("store.pressure", p, figure.By(name), v, phrase.On[any](r.w, "store.standing"))
		}
	}
}

// elapsed is the time in d up to the end of a stage.
func (r *reader) elapsed(past, s *stage) working.Num {
	if past.elapsed.None() {
		return s.days
	}
	a, b := past.elapsed.As("a"), s.days.As("b")
	return r.w.Line("t", "d", "a+b", a.V+b.V, a, b)
}

// lives is the time to the loss that ends it, counted from the first stage: what an earlier
// stage took is gone, and a loss that came in one stands.
func (r *reader) lives(past, s *stage, mode int) working.Num {
	if past.elapsed.None() {
		return r.life(s, mode, working.Num{}, working.Num{})
	}
	if past.life[mode].V <= past.elapsed.V {
		return past.life[mode]
	}
	t, a := past.elapsed.As("t_0"), r.life(s, mode, past.done[mode], past.aired[mode]).As("t")
	return r.w.Line("t", "d", "min(t_0+t,3650)", min(t.V+a.V, never), t, a)
}

// toLoss is the time in d to a loss at a rate, of what is left after what is gone.
func toLoss(k, gone, loss float64) float64 {
	switch {
	case k != k || gone != gone || loss != loss:
		return math.NaN()
	case gone >= -math.Log1p(-loss):
		return 0
	}
	return until(k, math.Exp(-gone), 1, 0, loss-(1-math.Exp(-gone)))
}
