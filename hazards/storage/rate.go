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

const kelvin = 273.15

// stage is product in a place from when it came in to the end of one step of storing.
type stage struct {
	d           *process.Done
	shut        bool
	inert, air  bool // stated as such; neither: nobody says
	temperature working.Num
	water, air1 [modes]working.Num // rates, 1/d
	done        [modes]working.Num // k_w t, all stages
	aired       [modes]working.Num // k_o t, all stages
	fastest     working.Num        // the faster mode of each stage, all stages
	faster      working.Num        // rate of the faster mode, 1/d, the fastest stage
	lost        [modes]working.Num
	life        [modes]working.Num // to the loss that ends it, from the first stage
	elapsed     working.Num        // d up to its end
	acid        working.Num        // of what is stored, mol
	fluoride    working.Num        // in the liquid, mol
	wet         bool               // there is water in it
	solvent     bool               // and a solvent, which may keep it from freezing
	organic     bool               // an organic acid without pKa, whose pH is a bound
	weakly      []weakly           // what keeps protons by the pH
	brine       bool               // or salt near saturation, which does
	room        process.Room
	gas         content
	later       [ways]phrase.Phrase
	ph          working.Num
	days        working.Num
	form        string // as the step states it
	with        string // the additive that counts
	tooLittle   string // one that does not
	unsaid      bool   // nobody says whether its liquid carries the flakes: they count as all there
}

// says is what a stage stands for, where a sheet keeps the working.
func (r *reader) says(s *stage) phrase.Phrase {
	switch {
	case r.w == nil:
		return phrase.Phrase{}
	case s.days.Unknown() || s.temperature.Unknown():
		return phrase.Of("store.not_said")
	case s.with != "":
		return phrase.Of("store.with", s.plain(), s.with)
	case s.tooLittle != "":
		return phrase.Of("store.too_little", s.plain(), s.tooLittle)
	}
	return s.plain()
}

// plain is what is said of a stage without its additive.
func (s *stage) plain() phrase.Phrase {
	said := s.setting()
	switch key := forms[s.form]; {
	case s.wet && key.wet != "":
		said = phrase.Of(key.wet, said)
	case !s.wet:
		said = phrase.Of(key.says, said)
	}
	if s.unsaid {
		return phrase.Of("store.if_carries", s.d.After.MayCarry, said)
	}
	return said
}

// setting is how warm and how long, and at which pH.
func (s *stage) setting() phrase.Phrase {
	if s.ph.None() || s.ph.Unknown() {
		return phrase.Of("store.kept", s.d.Number, figure.Round(s.temperature.V, 3), figure.Round(s.days.V, 3))
	}
	said := phrase.Of("store.kept_at", s.d.Number, figure.Round(s.temperature.V, 3), figure.Round(s.days.V, 3),
		figure.Round(s.ph.V, 2))
	if s.organic {
		return phrase.Of("store.organic", said)
	}
	return said
}

// stage works out what has happened by the end of a step, with what was before it.
func (r *reader) stage(p *route.Place, d *process.Done, step *route.Step, past *stage) stage {
	d, unsaid := r.carried(d)
	s := stage{d: d, unsaid: unsaid, shut: p.Closure == route.Closed}
	s.form = step.Form
	s.inert, s.air = filled(step.Gas)
	s.temperature = r.c.Given("T", "degC", step.Temperature)
	s.days = r.c.Given("t", "d", step.Time)
	s.wet, s.solvent = liquidOf(&d.After)
	s.brine = r.briny(&d.After)
	add := r.additive(&s)
	common := r.common(&s)
	r.acidity(&s)
	for m := range modes {
		f := r.byPH(&s, m, add)
		s.water[m], s.air1[m] = r.rate("k_w", "storage.water", common, f), r.rate("k_o", "storage.oxygen", common, f)
		s.done[m] = r.plus(past.done[m], r.over(s.water[m], s.days))
		s.aired[m] = r.plus(past.aired[m], r.over(s.air1[m], s.days))
	}
	a, b := s.water[0].As("a"), s.water[1].As("b")
	s.faster = r.w.Line("k_w", "1/d", "max(a,b)", max(a.V, b.V), a, b)
	s.fastest = r.plus(past.fastest, r.over(s.faster, s.days))
	keep(&s.faster, past.faster, 1)
	if past.faster.None() {
		s.faster = r.w.Line("k_w", "1/d", "max(a,b)", max(a.V, b.V), a, b)
	}
	s.room = process.RoomIn(r.c, r.w, r.k, p, &d.After)
	s.gas = r.content(&s)
	for m := range modes {
		s.lost[m], s.life[m] = r.lost(&s, m), r.lives(past, &s, m)
	}
	s.elapsed = r.elapsed(past, &s)
	return s
}

// filled tells whether a gas that the route states is inert or air; neither is not said.
func filled(gas string) (inert, air bool) {
	if gas == "" {
		return false, false
	}
	sub, ok := chemicals.Library().Find(gas)
	return ok && sub.Oxidant == 0 && len(sub.Formula.Order) == 1, gas == "air"
}

// over is a rate for a time.
func (r *reader) over(k, t working.Num) working.Num {
	k, t = k.As("k"), t.As("t")
	return r.w.Line("K", "1", "k*t", k.V*t.V, k, t)
}

func (r *reader) plus(a, b working.Num) working.Num {
	if a.None() {
		return b
	}
	a, b = a.As("a"), b.As("b")
	return r.w.Line("K", "1", "a+b", a.V+b.V, a, b)
}

func (r *reader) rate(symbol string, id datum.ID, common, ph working.Num) working.Num {
	k, f, g := r.c.Store.Num(id).As("k"), common.As("f"), ph.As("f_pH")
	return r.w.Line(symbol, "1/d", "k*f*f_pH", k.V*f.V*g.V, k, f, g)
}

// common is what both rates and both modes have in common, apart from pH.
func (r *reader) common(s *stage) working.Num {
	if more := unsaid(s.d); more != nil {
		return working.Absent("f", "1", more...)
	}
	st := r.c.Store
	T, e, R := s.temperature, st.Num("storage.activation").As("E"), st.Num("constant.R").As("R")
	a := r.w.Line("a", "1", "exp(-E*1000/R*(1/(T+273.15)-1/298.15))",
		math.Exp(-e.V*1000/R.V*(1/(T.V+kelvin)-1/298.15)), e, R, T)
	x, q, m := r.family().As("f_x"), st.Num("storage.quality").As("f_q"), r.medium(s).As("f_m")
	f := r.w.Line("f", "1", "a*f_x*f_q*f_m", a.V*x.V*q.V*m.V, a, x, q, m)
	if !(T.V < 0) || !s.wet || s.solvent || s.brine {
		return f
	}
	ice := st.Num("storage.frozen").As("f_ice")
	return r.w.Line("f", "1", "f*f_ice", f.V*ice.V, f, ice)
}

// family is how fast flakes of this kind go: by their own row, else by how thick they
// are. A nitride without a row of its own is not known.
func (r *reader) family() working.Num {
	if r.k.Layered == nil {
		return working.Absent("f_x", "1", working.Lacks("storage_phase", ""))
	}
	return r.c.Store.Num(r.k.ByFamily(r.c.Store, "storage.family"))
}
