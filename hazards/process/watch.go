package process

import (
	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// watch looks at a place after a step for what no figure shows: more in it than
// it holds, what its liquor does to what it is made of, and what is put by of which nobody
// says whether it is product.
func (k *walker) watch(p *State, s *route.Step) {
	at := k.c.Route.Place(p.Place)
	if at == nil {
		return
	}
	q := k.merged(p)
	if more := k.often[p.Place]; more != nil {
		k.fullest(at.Key, working.Absent("V", "mL", more...), solidVolume(k.c, k.w, &k.out, p), s.Number)
	}
	k.filled(at, p, q.Volume, s)
	k.touches(p, q, s)
	k.thrown(p, q, s)
	if s.Verb().Does != route.Stores || len(p.Liquid) == 0 {
		return
	}
	if len(pick(p.Solids, Product)) == 0 && p.MayCarry > 0 {
		k.fact("stored_unsaid", s.Number, phrase.Of("fact.stored_unsaid", phrase.Step(s.Number), at.Key, p.MayCarry))
	}
}

// thrown says that a step throws up drops of a liquor that eats or poisons: of acid, of
// fluoride or of a base of ammonium that carries carbon.
func (k *walker) thrown(p *State, q *Pool, s *route.Step) {
	b := look(q)
	if p.Place == s.In && p.wet() && k.c.Route.Throws(s) && (b.acid || b.fluoride || b.stranger != nil ||
		has(q, func(x *chemicals.Substance) bool { return x.Kind == "base" && x.Count("C") > 0 })) {
		k.fact("drops_thrown", s.Number, phrase.Of("fact.drops_thrown", phrase.Step(s.Number)))
	}
}

// filled keeps the most that a place holds, and says where it is more than there is
// room for.
func (k *walker) filled(at *route.Place, p *State, volume working.Num, s *route.Step) {
	solid := solidVolume(k.c, k.w, &k.out, p)
	k.fullest(at.Key, volume, solid, s.Number)
	if !at.Capacity.Set {
		return
	}
	full := volume.V
	if !solid.Unknown() { // liquid alone can be more than there is room for
		full += solid.V
	}
	k.overfull(at, full, s)
}

func (k *walker) fullest(place string, volume, solid working.Num, step int) {
	if volume.None() || volume.V == 0 {
		return
	}
	for i := range k.out.Fullest {
		x := &k.out.Fullest[i]
		if x.Place != place {
			continue
		}
		if volume.Unknown() || !x.Volume.Unknown() && !(volume.V+solid.V <= x.Volume.V+x.Solid.V) {
			x.Step, x.Volume, x.Solid = step, volume, solid
		}
		return
	}
	k.out.Fullest = append(k.out.Fullest, Fullest{place, step, volume, solid})
}

// overfull says where volume mL is more than a place holds.
func (k *walker) overfull(at *route.Place, volume float64, s *route.Step) {
	if holds := at.Capacity.In("mL") * float64(max(at.Count, 1)); volume > holds*(1+1e-9) {
		k.fact("overfull", s.Number, phrase.Of("fact.overfull", phrase.Step(s.Number), volume, at.Key, holds))
	}
}
