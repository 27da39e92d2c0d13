package process

import (
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// watch looks at a place after a step for what no figure shows: more in it than
// it holds, what its liquor does to what it is made of, and wet product put by.
func (k *walker) watch(p *State, s *route.Step) {
	at := k.place(p.Place)
	if at == nil {
		return
	}
	q := k.merged(p)
	k.overfull(at, q.Volume.V, s)
	k.touches(p, q, s)
	if s.Verb().Does == route.Stores && len(p.Liquid) > 0 && at.Closure == route.Closed &&
		len(pick(p.Solids, Product)) > 0 {
		k.fact("stored", s.Number, phrase.Of("fact.stored", s.Number, at.Key))
	}
}

func (k *walker) place(key string) *route.Place {
	for i := range k.c.Route.Places {
		if p := &k.c.Route.Places[i]; p.Key == key {
			return p
		}
	}
	return nil
}

// overfull says where volume mL is more than a place holds.
func (k *walker) overfull(at *route.Place, volume float64, s *route.Step) {
	if !at.Capacity.Set {
		return
	}
	if holds := at.Capacity.In("mL") * float64(max(at.Count, 1)); volume > holds*(1+1e-9) {
		k.fact("overfull", s.Number, phrase.Of("fact.overfull", s.Number, volume, at.Key, holds))
	}
}
