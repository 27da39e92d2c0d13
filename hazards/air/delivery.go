package air

import (
	"maps"
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/flammable"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/phrase"
	"etchbound/hazards/spread"
	"etchbound/schemas/quantity"
)

// bottle is a volatile acid or ammonia as it is bought.
type bottle struct {
	sub            *chemicals.Substance
	strength       quantity.Value
	volume, mass   quantity.Value
	whole, charged bool // all of the stock counts as one bottle; it is what the route takes
	unlisted       bool // no stock as strong as what the route takes is stated
}

// delivery reports the bottle of each vapour that would be worst to drop on its
// way, in the room and in the yard: of the stock of the site and of what the
// route takes, whichever gives off more. What the route takes is less than the
// bottle it comes in, so where no stock is stated the bottle is unknown.
func (r *reader) delivery() {
	broken := map[string][]breaks{}
	for _, b := range r.bottles() {
		for _, x := range r.dropped(&b) {
			broken[x.slug] = append(broken[x.slug], breaks{x, b.told()})
		}
	}
	for _, a := range slices.Concat(agents[:], r.solventsOf()) {
		if all := broken[a.slug]; len(all) > 0 {
			all = lasting(all)
			x := &all[0]
			r.pool(&x.spilt, figure.Delivery, phrase.Of("air.breaks_on_floor", x.told))
			if a.burns == nil { // of solvents no level is held that is told of the yard
				r.yard(all)
			}
		}
	}
	r.burnsUnknown(figure.Delivery)
}

// breaks is a bottle that breaks, and which it is.
type breaks struct {
	spilt
	told phrase.Phrase
}

// lasting puts the bottle that gives off most first, and keeps of the rest those that
// hold more than it: the mean over a long time can be worse of these.
func lasting(all []breaks) []breaks {
	first := 0
	for i := range all {
		if all[i].worse(&all[first].spilt) {
			first = i
		}
	}
	out := []breaks{all[first]}
	for i := range all {
		if i != first && all[i].holds.V > all[first].holds.V {
			out = append(out, all[i])
		}
	}
	return out
}

// told says which bottle it is.
func (b *bottle) told() phrase.Phrase {
	switch {
	case b.unlisted:
		return phrase.Of("air.bottle_unlisted", b.sub.Name)
	case b.charged:
		return phrase.Of("air.bottle_charged", b.sub.Name)
	case b.whole:
		return phrase.Of("air.bottle_of_stock", b.sub.Name)
	}
	return phrase.Of("air.bottle_largest", b.sub.Name)
}

// bottles are what the route takes, and the stock of the same substances.
func (r *reader) bottles() []bottle {
	var out []bottle
	if s := r.c.Site; s != nil {
		for i := range s.Stock {
			x := &s.Stock[i]
			if !r.c.Route.Takes(x.Substance) {
				continue
			}
			b := bottle{sub: x.Substance, strength: x.Strength, volume: x.Volume, mass: x.Mass, whole: !x.Bottle.Set}
			if x.Bottle.Set {
				b.volume, b.mass = x.Bottle, quantity.Value{}
			}
			out = append(out, b)
		}
	}
	for i := range r.c.Route.Steps {
		for j := range r.c.Route.Steps[i].What {
			if m := &r.c.Route.Steps[i].What[j]; m.Substance != nil &&
				(m.Substance.NotHeld || (m.Strength.Set || flammable.Can(m.Substance)) && (m.Volume.Set || m.Mass.Set)) {
				b := bottle{sub: m.Substance, strength: m.Strength, volume: m.Volume, mass: m.Mass, charged: true}
				b.unlisted = !slices.ContainsFunc(out, func(x bottle) bool {
					return !x.charged && x.sub.Same(b.sub) && asStrong(&x, &b)
				})
				out = append(out, b)
			}
		}
	}
	return out
}

// asStrong reports whether what is in a bottle is as strong as what is in
// another. Both are taken as written and by our own densities, so that no draw
// and no end of a range turns it.
func asStrong(b, than *bottle) bool {
	return fraction(b) >= fraction(than)*(1-sameStrength)
}

// sameStrength is how far two ways of writing one strength may part.
const sameStrength = 1e-6

func fraction(b *bottle) float64 {
	litre := working.Exact("V", "mL", 1000, "any amount")
	return solution.Charged(chemicals.Base(), nil, b.sub, b.strength, litre, working.Num{}).Fraction.V
}

// dropped is a bottle at the temperature of the room, by what it gives off; none
// of the vapours where nothing of them is in it, and any that may be in a substance
// that is not held.
func (r *reader) dropped(b *bottle) []spilt {
	if b.sub.NotHeld {
		return r.mayGive(b.sub)
	}
	st, t := r.c.Store, r.c.Store.Num("room.temperature").As("T")
	i := slices.IndexFunc(agents[:], func(a agent) bool { return a.solution == b.sub.Solution })
	if i < 0 && flammable.Can(b.sub) && b.sub.Formula.Text != "" {
		return r.pureDropped(b, t)
	}
	if i < 0 {
		return nil
	}
	a := agents[i]
	c := r.bought(b)
	var p working.Num
	if !a.acid {
		p = solution.Ammonia(st, r.w, r.molal(c.Solute, c.Water), t)
	} else {
		p = solution.Vapour(st, r.w, b.sub.Solution, c.Fraction, t)
	}
	return []spilt{b.breaks(c, vapour{agent: a, pressure: p}, t)}
}

// bought is what is in a bottle.
func (r *reader) bought(b *bottle) solution.Charge {
	var v, m working.Num
	if b.volume.Set {
		v = r.c.Given("V", "mL", b.volume)
	} else {
		m = r.c.Given("m", "g", b.mass)
	}
	return solution.Charged(r.c.Store, r.w, b.sub, r.c.Ranged(b.strength), v, m)
}

// breaks is a bottle that breaks, of which nobody knows the size where no stock is stated.
func (b *bottle) breaks(c solution.Charge, v vapour, t working.Num) spilt {
	volume, holds := c.Volume, c.Solute
	if b.unlisted {
		lacks := working.Lacks("site_stock", b.sub.Name)
		volume, holds = working.Absent("V", "mL", lacks), working.Absent("N", "mol", lacks)
	}
	return spilt{vapour: v, volume: volume, holds: holds, celsius: t}
}

// pureDropped is a bottle of a liquid that can burn.
func (r *reader) pureDropped(b *bottle, t working.Num) []spilt {
	v := vapour{agent: lightOf(b.sub), pressure: working.Absent("p", "kPa", working.Lacks("flammable", b.sub.Name))}
	if l := flammable.Of(b.sub); l != nil {
		v.pressure = r.pure(b.sub, l, t)
	}
	return []spilt{b.breaks(r.bought(b), v, t)}
}

// mayGive are the vapours that a substance which is not held can give off.
func (r *reader) mayGive(s *chemicals.Substance) []spilt {
	var out []spilt
	t := r.c.Store.Num("room.temperature").As("T")
	for _, a := range agents {
		if s.May(a.element) {
			p, v := working.Absent("p", "kPa", s.Lacks()), working.Absent("V", "mL", s.Lacks())
			out = append(out, spilt{vapour: vapour{agent: a, pressure: p, total: p}, volume: v,
				holds: working.Absent("N", "mol", s.Lacks()), celsius: t})
		}
	}
	if flammable.Can(s) && s.Formula.Text != "" {
		p := working.Absent("p", "kPa", s.Lacks())
		out = append(out, spilt{vapour: vapour{agent: lightOf(s), pressure: p, total: p},
			volume: working.Absent("V", "mL", s.Lacks()), holds: working.Absent("N", "mol", s.Lacks()), celsius: t})
	}
	return out
}

// The spreads of a plume over open country in a stable night at a distance x in m, by
// the interpolation formulas of the textbook that package spread names.
const spreadAcross, spreadUp = "0.04*x/sqrt(1+0.0001*x)", "0.016*x/(1+0.0003*x)"

// plume is the concentration at the ground under the middle of a plume, ppm, a bound, of
// n mol/s that leave at a height in m:
//
//	C = 1e6 n Vm/(pi u sy sz) exp(-H^2/(2 sz^2))
func (r *reader) plume(n, height working.Num) working.Num {
	nearest, u, g, h := r.c.Store.Num("air.fence").As("x_f"), r.c.Store.Num("air.yard_wind").As("u"), n.As("n"),
		height.As("H")
	x := r.w.Model("x", "m", "distance at which the plume is strongest at the ground",
		spread.Sky{Stable: true}.Worst(h.V, nearest.V), nearest, h)
	sy := r.w.Line("s_y", "m", spreadAcross, 0.04*x.V/math.Sqrt(1+0.0001*x.V), x)
	sz := r.w.Line("s_z", "m", spreadUp, 0.016*x.V/(1+0.0003*x.V), x)
	return r.w.Line("C", "ppm", "1e6*n*Vm/1000/(3.141592653589793*u*s_y*s_z)*exp(-H*H/(2*s_z*s_z))",
		1e6*g.V*r.vm.V/1000/(pi*u.V*sy.V*sz.V)*math.Exp(-h.V*h.V/(2*sz.V*sz.V)), g, r.vm, u, sy, sz, h).
		Worse(working.Bound)
}

// yard is a bottle that breaks out of doors: what it gives off before it is empty, and
// on average over each time that an emergency level is told for.
func (r *reader) yard(all []breaks) {
	st := r.c.Store
	means := map[float64]mostOf{}
	for i := range all {
		x := &all[i]
		v, h := x.volume.As("V"), st.Num("spill.depth").As("h")
		area := r.w.Line("A", "m2", "V/1e6/(h/1000)", v.V/1e6/(h.V/1000), v, h)
		none := working.Exact("L", "m", 0, "a pool on the ground")
		n := r.evaporates(&x.vapour, surface{area, none}, st.Num("air.yard_wind"), x.celsius)
		c := r.plume(n, working.Exact("H", "m", 0, "from the ground"))
		if i == 0 {
			r.put("air.plume", figure.Yard, x.slug, figure.Case{}, c,
				phrase.Of("air.at_the_ground", phrase.Of("air.breaks_out_of_doors", x.told)))
		}
		for _, window := range limit.AEGLTimes(x.slug, 2) {
			m := r.mean(c, n, x.holds, window)
			if w, there := means[window]; !there || !w.ppm.Unknown() && (m.Unknown() || m.V > w.ppm.V) {
				means[window] = mostOf{m, x.told}
			}
		}
	}
	for _, window := range slices.Sorted(maps.Keys(means)) {
		r.put("air.plume", figure.Yard, all[0].slug, figure.Over(window), means[window].ppm,
			phrase.Of("air.at_the_ground_on_average", phrase.Of("air.breaks_out_of_doors", means[window].told)))
	}
}

// mostOf is the greatest of some, and of which bottle it is.
type mostOf struct {
	ppm  working.Num
	told phrase.Phrase
}

// mean is the mean of a concentration over a time in min: what stands at c for as long
// as n mol/s come, of which there are no more than the bottle holds.
//
//	C_t = C min(1, N/(n t))
func (r *reader) mean(c, n, holds working.Num, window float64) working.Num {
	t, all := working.Exact("t_w", "min", window, "time the emergency level is told for"), holds.As("N")
	c, n = c.As("C"), n.As("n")
	return r.w.Line("C_t", "ppm", "C*min(1,N/max(60*t_w*n,1e-30))", c.V*min(1, all.V/max(60*t.V*n.V, 1e-30)),
		c, all, t, n)
}

// stack is the vapour of the step that gives off most, as the hood lets it out.
func (r *reader) stack() {
	height := working.Exact("H", "m", 0, "no stack is stated: as if it left at the ground")
	if s := r.c.Site; s != nil && s.Hood != nil && s.Hood.Stack.Set {
		h, w := r.c.Given("h", "m", s.Hood.Stack), r.c.Store.Num("air.wake").As("f_w")
		height = r.w.Line("H", "m", "h*f_w", h.V*w.V, h, w)
	}
	for _, a := range agents {
		var most working.Num
		for i := range r.c.Route.Steps {
			v, emits := r.emitted[vapourIn{r.c.Route.Steps[i].Number, a.slug}]
			if !emits {
				continue
			}
			if most.None() || v.Unknown() || !most.Unknown() && v.V > most.V {
				most = v
			}
		}
		if most.None() {
			continue
		}
		m, M := most.As("m"), r.molar(a.formula).As("M")
		c := r.plume(r.w.Line("n", "mol/s", "m/60000/M", m.V/60000/M.V, m, M), height)
		r.put("air.plume", figure.Stack, a.slug, figure.Case{}, c,
			phrase.Of("air.at_the_ground", phrase.Of("air.worst_step")))
	}
}
