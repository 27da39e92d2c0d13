package levers

import (
	"fmt"
	"slices"
	"strconv"

	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// over is a longer time for what goes in, or one for powder of which none is stated.
func (b *bench) over(r *row) {
	for i := range b.route.Steps {
		switch s := &b.route.Steps[i]; {
		case s.Over.Set && !s.Over.HasRange():
			b.upTo(r, s.Over, "min", stepPath(s, "over"), stepName(s))
		case !s.Over.Set && fills(s) && brings(s):
			var levels []level
			for _, v := range r.values {
				levels = append(levels, level{change(r, stepPath(s, "over"), inUnit(v, "min"), stepName(s), "")})
			}
			b.add(r, levels...)
		}
	}
}

// portions are more and smaller ones.
func (b *bench) portions(r *row) {
	for i := range b.route.Steps {
		s := &b.route.Steps[i]
		var levels []level
		for _, k := range r.values {
			if s.Portions > 1 {
				levels = append(levels, level{change(r, stepPath(s, "portions"), text(k*float64(s.Portions)), stepName(s),
					strconv.Itoa(s.Portions))})
			}
		}
		b.add(r, levels...)
	}
}

// vent is a wider bore where one is stated, and one where the etch has none.
func (b *bench) vent(r *row) {
	for i := range b.route.Places {
		p := &b.route.Places[i]
		path := "places." + p.Key + ".vent"
		switch {
		case p.VentBore.Set && !p.VentBore.HasRange():
			b.upTo(r, p.VentBore, "mm", path, p.Key)
		case !p.VentBore.Set && b.etches(p) && p.Closure != route.Open && !p.Rating.Set:
			var levels []level
			for _, v := range r.values {
				levels = append(levels, level{change(r, path, text(v)+" mm", p.Key, "")})
			}
			b.add(r, levels...)
		}
	}
}

// etches reports whether the powder meets the liquor in a place.
func (b *bench) etches(p *route.Place) bool {
	s := b.etch()
	return s != nil && s.Works() == p.Key
}

// closure is a way out for gas. That of the etch comes first: what is shut shows nothing of
// what would be breathed if it failed, so that nothing else would have it opened.
func (b *bench) closure(r *row) {
	for i := range b.route.Places {
		p := &b.route.Places[i]
		if p.Closure != route.Closed || p.Rating.Set {
			continue
		}
		was := ""
		if p.ClosureStated {
			was = "closed"
		}
		c := change(r, "places."+p.Key+".closure", "vented", p.Key, was)
		if r.first && b.etches(p) {
			c.Says = phrase.Of("lever.opened", p.Key, "vented")
		}
		b.add(r, level{c})
		if r.first && b.etches(p) {
			b.out[len(b.out)-1].first = figure.At(p.Key)
		}
	}
}

// capacity is a larger container. One that is rated is another with a rating of its own, which
// nobody may write for a person.
func (b *bench) capacity(r *row) {
	for i := range b.route.Places {
		if p := &b.route.Places[i]; p.Capacity.Set && !p.Capacity.HasRange() && !p.Rating.Set {
			b.times(r, p.Capacity, "places."+p.Key+".capacity", p.Key)
		}
	}
}

// hottest is the temperature in degC that a bath of water is not brought to.
const hottest = 90

// inWater reports whether all that is done in a place can be done in a bath of water.
func (b *bench) inWater(p *route.Place) bool {
	return !slices.ContainsFunc(b.route.Steps, func(s route.Step) bool {
		return s.Works() == p.Key && s.Temperature.Set && s.Temperature.In("degC") > hottest
	})
}

// coolant is a colder one in the place of the etch, or one where there is none. Water is
// not colder than 5 degC; below that stands ice. What is made hot stands in no water.
func (b *bench) coolant(r *row) {
	s := b.etch()
	if s == nil || b.route.Place(s.Works()) == nil {
		return
	}
	p := b.route.Place(s.Works())
	if !b.inWater(p) {
		return
	}
	path := "places." + p.Key + ".cooling"
	var levels []level
	for _, v := range r.values {
		switch k := p.Cooling; {
		case k == nil || k.Kind == "none":
			to := fmt.Sprintf("{kind: water_bath, temperature: %s degC}", text(v))
			if v == 0 {
				to = "{kind: ice_bath, temperature: 0 degC}"
			}
			levels = append(levels, level{change(r, path, to, p.Key, "")})
		case k.Kind == "ice_bath" || !k.Temperature.Set || v >= k.Temperature.In("degC")-1e-9 || k.Temperature.HasRange():
		case v == 0 && k.Kind == "water_bath":
			levels = append(levels, level{change(r, path+".kind", "ice_bath", p.Key, "water_bath"),
				change(r, path+".temperature", "0 degC", p.Key, k.Temperature.Text)})
		case v > 0:
			levels = append(levels, level{change(r, path+".temperature", text(v)+" degC", p.Key, k.Temperature.Text)})
		}
	}
	b.add(r, levels...)
}

// ice is more of it.
func (b *bench) ice(r *row) {
	for i := range b.route.Places {
		if p := &b.route.Places[i]; p.Cooling != nil && p.Cooling.Ice.Set && !p.Cooling.Ice.HasRange() {
			b.times(r, p.Cooling.Ice, "places."+p.Key+".cooling.ice", p.Key)
		}
	}
}

// set is a lower temperature while the powder goes in, not below that of the coolant.
func (b *bench) set(r *row) {
	s := b.etch()
	if s == nil || !s.Temperature.Set || s.Temperature.HasRange() {
		return
	}
	b.below(r, s.Temperature, b.coldest(s), stepPath(s, "temperature"), stepName(s))
}

// keepAt is a lower temperature of a hold above that of the room. A bath is brought to it.
func (b *bench) keepAt(r *row) {
	for i := range b.route.Steps {
		if s := &b.route.Steps[i]; s.Verb().Held && s.Temperature.Set && !s.Temperature.HasRange() {
			b.below(r, s.Temperature, 0, stepPath(s, "temperature"), stepName(s))
		}
	}
}

// coldest is that of the coolant of the place of a step, degC.
func (b *bench) coldest(s *route.Step) float64 {
	if p := b.route.Place(s.Works()); p != nil && p.Cooling != nil && p.Cooling.Temperature.Set {
		return p.Cooling.Temperature.In("degC")
	}
	return 0
}
