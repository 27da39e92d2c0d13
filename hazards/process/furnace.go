package process

import (
	"etchbound/chemicals/evolving"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// The steps that make the powder before any acid is there.
const (
	sinters = "sinter"
	mills   = "mill"
	sieves  = "sieve"
)

// furnace says of a step that makes powder what stops it. What powders sinter to stays where
// it is, element for element: the powder of the route is what it states.
func (k *walker) furnace(s *route.Step) {
	tag := s.Verb().Tag
	if tag != sinters && tag != mills && tag != sieves {
		return
	}
	if tag != sieves && !evolving.IdleHot(s.Gas) {
		k.fact("powder_in_air", s.Number, phrase.Of("fact.powder_in_air", phrase.Step(s.Number)))
	}
	at := k.c.Route.Place(s.In)
	switch {
	case tag == sinters && at != nil && at.Closure == route.Closed:
		k.fact("sintered_shut", s.Number, phrase.Of("fact.sintered_shut", phrase.Step(s.Number), s.In))
	case tag == mills:
		k.fact("jar_opened", s.Number, phrase.Of("fact.jar_opened", phrase.Step(s.Number), s.In))
	case tag == sieves:
		k.fact("sieved", s.Number, phrase.Of("fact.sieved", phrase.Step(s.Number)))
	}
}
