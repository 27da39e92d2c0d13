package thermal

import (
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// limits reports what the temperature of a step may come to: the technical
// limit, the class by the order of the temperatures, and the water that would
// bring the liquor down.
func (r *reader) limits(d *process.Done) {
	place := figure.Step(d.Number)
	limit := r.technical(d)
	mtsr := r.highest(place)
	r.class(d, mtsr, limit)
	r.quench(d, mtsr)
}

// technical is the technical limit of a step: the lower of boiling point and
// service temperature of the material [degC].
func (r *reader) technical(d *process.Done) working.Num {
	place := figure.Step(d.Number)
	boils := r.at(place).boils.As("T_b")
	service, words := r.service(d.Place)
	v := boils
	if !service.None() {
		v = r.w.Line("T_t", "degC", "min(T_b,T_s)", min(boils.V, service.V), boils, service)
	}
	r.put("heat.technical_limit", place, v, words)
	return v.As("T_t")
}

// service is the lower of what wall and lid of a place are used up to. A lid
// nobody stated counts as the weakest; only an open place has none.
func (r *reader) service(key string) (working.Num, phrase.Phrase) {
	p := r.c.Route.Place(key)
	if p == nil {
		p = &route.Place{}
	}
	wall, words := r.stands(wallKeys, p.Material)
	if p.LidMaterial == "" && p.Closure == route.Open {
		return wall, phrase.On(r.w, "thermal.limit", words)
	}
	lid, more := r.stands(lidKeys, p.LidMaterial)
	words = phrase.On(r.w, "thermal.limit_with_lid", words, more)
	switch {
	case wall.None():
		return lid, words
	case lid.None():
		return wall, words
	}
	a, b := wall.As("a"), lid.As("b")
	return r.w.Line("T_s", "degC", "min(a,b)", min(a.V, b.V), a, b), words
}

// part is a part of a vessel by the keys of what is said of its material.
type part struct{ is, unstated, unheld, unlimited string }

var (
	wallKeys = part{"thermal.wall", "thermal.wall_unstated", "thermal.wall_unheld", "thermal.wall_unlimited"}
	lidKeys  = part{"thermal.lid", "thermal.lid_unstated", "thermal.lid_unheld", "thermal.lid_unlimited"}
)

// stands is the temperature a material is used up to, the lower of lining and shell,
// with no symbol for what passes the boiling point of any liquor here, such as glass
// and steel. A material nobody stated or that no row is held of gets no credit: it
// counts as weaker than any that is held.
func (r *reader) stands(of part, text string) (working.Num, phrase.Phrase) {
	wall := r.c.Store.Materials().Read(text)
	if text == "" {
		return r.c.Store.Num("service.unknown").As("T_s"),
			phrase.Of(of.unstated)
	}
	least, known := working.Num{}, wall.Known() && !wall.Hidden
	for _, m := range wall.All() {
		if m.Unlimited || !known {
			continue
		}
		_, held := r.c.Store.Row(datum.Of("service", m.Slug))
		known = known && held
		if t := r.c.Store.Num(datum.Of("service", m.Slug)).As("T_s"); least.None() || !(t.V >= least.V) {
			least = t
		}
	}
	switch {
	case !known:
		return r.c.Store.Num("service.unknown").As("T_s"),
			phrase.On(r.w, of.unheld, text)
	case least.None():
		return least, phrase.On(r.w, of.unlimited, text)
	}
	return least, phrase.On(r.w, of.is, text)
}

// highest is the highest temperature of a step if cooling fails: by full
// accumulation, or by a law where that is higher.
func (r *reader) highest(place figure.Place) working.Num {
	at := r.at(place)
	top := at.all.As("MTSR")
	for _, x := range at.byLaw {
		a, b := top.As("a"), x.top.As("b")
		top = r.w.Line("MTSR", "degC", "max(a,b)", max(a.V, b.V), a, b)
	}
	return top
}
