package air

import (
	"math"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/flammable"
	"etchbound/chemicals/solution"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
)

// organic is a liquid that can burn and its share of the mol in a liquor; not a number
// where nobody knows all of the liquor.
type organic struct {
	sub   *chemicals.Substance
	share float64
}

// organics are the liquids that can burn in a liquor of a step.
func (r *reader) organics(s *process.State, step int) []organic {
	total, of := 0.0, map[*chemicals.Substance]float64{}
	var order []*chemicals.Substance
	for i := range s.Liquid {
		q := &s.Liquid[i]
		for j := range q.Entries {
			e := &q.Entries[j]
			if e.Sub == nil || e.N.V < 0 {
				continue
			}
			n := e.N.V * q.Kept()
			total += n
			if _, there := of[e.Sub]; !there && flammable.Can(e.Sub) {
				order = append(order, e.Sub)
			}
			of[e.Sub] += n
		}
	}
	var out []organic
	for _, sub := range order {
		if of[sub] != 0 {
			out = append(out, organic{sub, of[sub] / total})
		}
	}
	for _, sub := range r.mayHold(s, step) {
		if _, there := of[sub]; !there {
			out = append(out, organic{sub, math.NaN()})
		}
	}
	return out
}

// bounded is the share of the pressure of a pure liquid that one gives over a liquor at most.
func (o *organic) bounded() working.Num {
	x := o.share
	if x != x { // of a liquor that nobody knows all of it
		x = 1
	}
	return working.Exact("x", "1", x, "its share of the mol in the liquor").Worse(working.Bound)
}

// pure is the vapour pressure of a liquid that can burn, kPa.
func (r *reader) pure(sub *chemicals.Substance, l *flammable.Liquid, t working.Num) working.Num {
	if t.Unknown() {
		return working.Absent("p", "kPa", t.Missing()...)
	}
	return r.w.Table("p", "kPa", "vapour pressure of "+sub.Name, l.Pressure(t.V), t)
}

// solvents are the vapours of the liquids that can burn over a liquor of a step, at a
// temperature in degC: a bound, as the share of the flammable limit is.
//
//	p = min(1, 20 x) p_0(t)      [kPa: 1, kPa]
func (r *reader) solvents(s *process.State, step int, t working.Num) []vapour {
	all := r.organics(s, step)
	if all == nil {
		return nil
	}
	var out []vapour
	terms := []working.Num{r.w.Model("p_w", "kPa", "saturation pressure of water", solution.Saturation(t.V+kelvin), t)}
	for i := range all {
		o := &all[i]
		v := vapour{agent: lightOf(o.sub), holds: "air.over_organic",
			pressure: working.Absent("p", "kPa", working.Lacks("flammable", o.sub.Name))}
		if l := flammable.Of(o.sub); l != nil {
			x, p := o.bounded(), r.pure(o.sub, l, t).As("p_0")
			v.pressure = r.w.Line("p", "kPa", "min(1,20*x)*p_0", min(1, strongInWater*x.V)*p.V, x, p)
		}
		if v.formula == "" { // nothing says how heavy it is
			r.breathe(step, o.sub)
			continue
		}
		if _, there := r.masses[v.formula]; !there {
			r.masses[v.formula] = o.sub.Formula.MolarMass(r.c.Store, r.w)
		}
		terms, out = append(terms, v.pressure), append(out, v)
	}
	sum := r.w.Sum("p_t", "kPa", terms...)
	for i := range out {
		out[i].total = sum
	}
	return out
}

// breathe reports once of a step that what people breathe of a substance is not known.
func (r *reader) breathe(step int, sub *chemicals.Substance) {
	in := vapourIn{step, sub.Slug}
	if _, there := r.breathed[in]; there {
		return
	}
	if !slices.Contains(r.light, sub) {
		r.light = append(r.light, sub)
	}
	r.breathed[in] = working.Absent("C", "ppm", working.Lacks("flammable", sub.Name))
	r.put("air.breathing_zone", figure.Step(step), sub.Slug, figure.Case{}, r.breathed[in], phrase.Of("air.burns_unknown"))
}

// lightOf is the vapour of a liquid that can burn.
func lightOf(sub *chemicals.Substance) agent {
	return agent{slug: sub.Slug, formula: sub.Formula.Text, moves: "air.diffusivity.organic", burns: sub}
}

// solventsOf are the liquids that can burn of the steps, each once.
func (r *reader) solventsOf() []agent {
	var out []agent
	for _, a := range r.formed {
		if a.burns != nil && !slices.ContainsFunc(out, func(x agent) bool { return x.slug == a.slug }) {
			out = append(out, a)
		}
	}
	return out
}

// lightIn reports how near the vapour of what runs out comes to its lower flammable limit
// once it is mixed with the air of the room; over the pool it is as over the liquor.
//
//	air.room_flammable = C/1e4/LFL     [1: ppm, vol%]
func (r *reader) lightIn(x *spilt, place figure.Place, c working.Num, cond phrase.Phrase) {
	low := working.Absent("LFL", "vol%", working.Lacks("flammable", x.burns.Name))
	if l := flammable.Of(x.burns); l != nil {
		low = working.Exact("LFL", "vol%", l.Lower, l.Source).Worse(working.Estimated)
	}
	c = c.As("C")
	r.put("air.room_flammable", place, x.slug, figure.Case{}, r.w.Line("s", "1", "C/1e4/LFL", c.V/1e4/low.V, c, low),
		phrase.Of("air.lights_in_room", cond))
}
