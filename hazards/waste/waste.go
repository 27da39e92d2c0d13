package waste

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// Read gives the neutralising figures of a walk: at the place waste for all
// acid liquors of the route together with each of the usual agents, and at a step
// that neutralises with what it writes.
func Read(c route.Case, w *working.Sheet, k process.Walk, _ []vessel.Run, _ []course.Course) []figure.Figure {
	r := reader{out: make([]figure.Figure, 0, usualFigures), c: c, w: w, vm: process.MolarVolume(c.Store, w)}
	var all []acids
	for i := range k.Treated {
		l := &k.Treated[i]
		a := r.acids(&l.Pool)
		acid := a.base.V > 1e-9*size(&l.Pool) || a.base.Unknown()
		if l.Step > 0 {
			r.step(l, a, acid)
		}
		if acid {
			all = append(all, a)
		}
	}
	if len(all) == 0 {
		return r.out
	}
	total := r.sum(all)
	if k.Open != nil {
		total = lost(k.Open)
	}
	of := offered()
	for i := range of {
		r.agent(figure.Waste, total, &of[i])
	}
	r.common(figure.Waste, total)
	return r.out
}

// step reports what a step that neutralises needs. The solid that was washed still
// counts all of what came from nobody knows how many cycles, so the sum over the
// route is whole; what is in this liquor nobody knows.
func (r *reader) step(l *process.Liquor, a acids, acid bool) {
	g, place := written(l), figure.Step(l.Step)
	switch {
	case len(l.Pool.More) > 0:
		r.agent(place, lost(l.Pool.More), &g)
	case acid:
		r.agent(place, a, &g)
	default:
		r.spent(place, &g)
	}
}

// usualFigures is room for those of a usual route.
const usualFigures = 28

type reader struct {
	c   route.Case
	w   *working.Sheet
	vm  working.Num
	out []figure.Figure
}

func (r *reader) put(quantity string, place figure.Place, agent string, v working.Num, conditions phrase.Phrase) {
	r.out = append(r.out, figure.Figure{ID: figure.ID{Quantity: quantity, Place: place, Agent: agent},
		Value: r.w.Keep(v), Conditions: conditions})
}

// acids is what a liquor holds that base is needed for, in mol, with its
// water and mass in g.
type acids struct {
	base      working.Num // base that takes every acid and metal: F + Cl + 2 SO4 - alkali
	fluorine  working.Num
	aluminium working.Num
	ammonium  working.Num
	water     working.Num // g
	mass      working.Num // g
	unknown   bool        // metal may be dissolved in it that is not followed
}

func (r *reader) acids(q *process.Pool) acids {
	w := r.w
	a := acids{
		base:      process.Total(w, q, "B", func(e *process.Entry) float64 { return e.Base }),
		fluorine:  process.Element(w, q, "F"),
		aluminium: process.Element(w, q, "Al"),
		ammonium: process.Total(w, q, "n_N", func(e *process.Entry) float64 {
			if e.Sub == nil {
				return 0
			}
			return e.Sub.Ammonium
		}),
		mass: process.PartOf(w, q, q.Mass), unknown: q.Unfollowed,
	}
	n := process.Total(w, q, "n_w", func(e *process.Entry) float64 {
		if e.Sub != nil && e.Sub.Solution == "water" {
			return 1
		}
		return 0
	}).As("n")
	M := process.MolarMass(r.c.Store, w, "H2O")
	a.water = w.Line("m_w", "g", "n*M", n.V*M.V, n, M)
	return a
}

// lost is a liquor of which nobody can say what it holds.
func lost(missing []working.Missing) acids {
	n := func(symbol, unit string) working.Num { return working.Absent(symbol, unit, missing...) }
	return acids{base: n("B", "mol"), fluorine: n("n_F", "mol"), aluminium: n("n_Al", "mol"), ammonium: n("n_N", "mol"),
		water: n("m_w", "g"), mass: n("m", "g")}
}

// size is all acid and base that went into a pool, mol: what is left of it by
// rounding is no acid.
func size(q *process.Pool) float64 {
	v := 0.0
	for i := range q.Entries {
		if e := &q.Entries[i]; e.Base != 0 {
			v += math.Abs(e.Base * e.N.V)
		}
	}
	if !q.Whole {
		v *= q.Share.V
	}
	return v
}

func (r *reader) sum(all []acids) acids {
	if len(all) == 1 {
		return all[0]
	}
	add := func(symbol, unit string, get func(*acids) working.Num) working.Num {
		terms := make([]working.Num, len(all))
		for i := range all {
			terms[i] = get(&all[i])
		}
		return r.w.Sum(symbol, unit, terms...)
	}
	unknown := false
	for i := range all {
		unknown = unknown || all[i].unknown
	}
	return acids{
		unknown:   unknown,
		base:      add("B", "mol", func(a *acids) working.Num { return a.base }),
		fluorine:  add("n_F", "mol", func(a *acids) working.Num { return a.fluorine }),
		aluminium: add("n_Al", "mol", func(a *acids) working.Num { return a.aluminium }),
		ammonium:  add("n_N", "mol", func(a *acids) working.Num { return a.ammonium }),
		water:     add("m_w", "g", func(a *acids) working.Num { return a.water }),
		mass:      add("m", "g", func(a *acids) working.Num { return a.mass }),
	}
}

// common reports what does not depend on the agent.
func (r *reader) common(place figure.Place, a acids) {
	if a.ammonium.V > 0 || a.ammonium.Unknown() {
		n := a.ammonium.As("n")
		v := r.w.Line("V", "L", "n*Vm", n.V*r.vm.V, n, r.vm)
		if a.base.Unknown() { // nobody knows whether it is acid enough to be limed
			v = working.Absent("V", "L", a.base.Missing()...)
		}
		r.put("neutralise.ammonia", place, "", v.Worse(working.Bound), phrase.Of("neutralise.all_ammonia"))
	}
}
