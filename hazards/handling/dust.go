package handling

import (
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// dust tells of powder that goes in dry, and of what lies there dried.
func (r *reader) dust(d *process.Done, s *route.Step) {
	at := figure.Step(d.Number)
	switch {
	case s.Verb().Does == route.Dries:
		m := r.solids(r.carried(&d.After), process.Product, process.Unetched, process.Residual, process.Based)
		if m.V == 0 {
			return
		}
		heat := r.burns(r.ofFlakes("burn.flakes", "q"), m)
		r.dry(at, m, heat, phrase.Of("handling.dried"))
		r.put("dust.floats", at, "", r.floats(), phrase.Of("handling.floats"))
	case s.Verb().Tag == "sinter" || s.Verb().Tag == "mill" || s.Verb().Tag == "sieve": // told with all that is there
	case r.k.Powder != nil && bringsPowder(s):
		m := r.k.Powder.Mass.As("m")
		heat := r.burns(r.num(datum.Of("burn.powder", r.k.Layered.Formula.Text), "q"), m)
		r.dry(at, m, heat, phrase.Of("handling.powder"))
	}
}

func bringsPowder(s *route.Step) bool {
	for i := range s.What {
		if s.What[i].Precursor {
			return true
		}
	}
	return false
}

func (r *reader) dry(at figure.Place, m, heat working.Num, says phrase.Phrase) {
	r.put("dust.mass", at, "", m, says)
	r.put("dust.heat", at, "", heat, says)
	mec := r.num("dust.explosible", "c")
	r.put("dust.explosible_air", at, "", r.w.Line("V", "L", "m/c*1000", m.V/mec.V*1000, m.As("m"), mec),
		phrase.Of("handling.cloud"))
}

func (r *reader) burns(q, m working.Num) working.Num {
	m = m.As("m")
	return r.w.Line("Q", "kJ", "m*q", m.V*q.V, m, q)
}

// floats is the dust that fills the air of the room to its limit, mg.
func (r *reader) floats() working.Num {
	if r.c.Site == nil {
		return working.Absent("m", "mg", working.Lacks("site_room_volume", ""))
	}
	limit := r.num(r.limitOf(), "c")
	v := r.c.Given("V", "m3", r.c.Site.RoomVolume)
	if v.Unknown() {
		v = working.Absent("V", "m3", working.Lacks("site_room_volume", ""))
	}
	return r.w.Line("m", "mg", "c*V", limit.V*v.V, limit, v)
}

// limitOf is the datum of the dust of the oxide that the flakes become, by their first
// metal.
func (r *reader) limitOf() datum.ID {
	if r.k.Layered == nil || len(r.k.Layered.M) == 0 {
		return datum.Of("dust.limit", "")
	}
	return datum.Of("dust.limit", r.k.Layered.M[0].Symbol)
}

// oven is how far a step that dries stays below where flakes take fire in air.
func (r *reader) oven(d *process.Done, s *route.Step) {
	if s.Verb().Does != route.Dries || !s.Temperature.Set {
		return
	}
	if r.flakes(r.carried(&d.After)).V == 0 {
		doubt := d.After.Doubted()
		if doubt.IsZero() {
			return
		}
		r.put("dry.margin", figure.Step(d.Number), "", working.Absent("y", "K", doubt), phrase.Of("handling.oven"))
		return
	}
	onset, T := r.ofFlakes("dry.onset", "T_o"), r.c.Given("T", "degC", s.Temperature)
	r.put("dry.margin", figure.Step(d.Number), "", r.w.Line("y", "K", "T_o-T", onset.V-T.V, onset, T),
		phrase.Of("handling.oven"))
}
