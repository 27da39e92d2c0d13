package waste

import (
	"math"

	"etchbound/chemicals"
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
		a := r.acids(l)
		acid := a.base.V > 1e-9*size(&l.Pool) || a.base.Unknown()
		if l.Step > 0 {
			r.step(l, a, acid)
		}
		switch sub := stranger(l); {
		case acid:
			all = append(all, a)
		case sub != nil: // it may have brought acid
			all = append(all, lost([]working.Missing{sub.Lacks()}))
		}
	}
	r.spill(&k)
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

// stranger is what is written to treat a liquor and not held in the data; nil where there is
// nothing of it.
func stranger(l *process.Liquor) *chemicals.Substance {
	for i := range l.Doses {
		if s := l.Doses[i].Sub; s != nil && s.NotHeld {
			return s
		}
	}
	return nil
}

// step reports what a step that neutralises needs. The solid that was washed still
// counts all of what came from nobody knows how many cycles, so the sum over the
// route is whole; what is in this liquor nobody knows.
func (r *reader) step(l *process.Liquor, a acids, acid bool) {
	g, place := written(l), figure.Step(l.Step)
	r.complexed(place, a)
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
	held      working.Num // fluoride that cold base leaves in its complex; not there where it has no symbol
	aluminium working.Num
	ammonium  working.Num
	water     working.Num // g
	mass      working.Num // g
	unknown   bool        // metal may be dissolved in it that is not followed
	first     bool        // water of the step that is there first is in water and mass
	later     bool        // water of the step comes too late to be in them
}

func (r *reader) acids(l *process.Liquor) acids {
	w, q := r.w, &l.Pool
	a := acids{later: l.Later, held: l.Held,
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
	a.base = r.borate(q, a.base)
	n := process.Total(w, q, "n_w", func(e *process.Entry) float64 {
		if e.Sub != nil && e.Sub.Solution == "water" {
			return 1
		}
		return 0
	}).As("n")
	M := process.MolarMass(r.c.Store, w, "H2O")
	a.water = w.Line("m_w", "g", "n*M", n.V*M.V, n, M)
	if x := l.First.As("n"); !l.First.None() && x.V != 0 {
		more := w.Line("m_f", "g", "n*M", x.V*M.V, x, M)
		a.water, a.mass, a.first = w.Sum("m_w", "g", a.water, more), w.Sum("m", "g", a.mass, more), true
	}
	return a
}

// borate adds to the base of a liquor what turns its boric acid into borate, of which
// the share depends on how alkaline it is made.
func (r *reader) borate(q *process.Pool, base working.Num) working.Num {
	n := process.Element(r.w, q, "B").As("n_B")
	if n.V == 0 {
		return base
	}
	x, b := r.c.Store.Num("neutralise.borate").As("x"), base.As("B")
	return r.w.Line("B", "mol", "B+x*n_B", b.V+x.V*n.V, b, x, n)
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
	var unknown, first, later bool
	for i := range all {
		unknown, first, later = unknown || all[i].unknown, first || all[i].first, later || all[i].later
	}
	var held working.Num
	var terms []working.Num
	for i := range all {
		if !all[i].held.None() {
			terms = append(terms, all[i].held)
		}
	}
	if terms != nil {
		held = r.w.Sum("n_c", "mol", terms...)
	}
	return acids{
		unknown: unknown, first: first, later: later, held: held,
		base:      add("B", "mol", func(a *acids) working.Num { return a.base }),
		fluorine:  add("n_F", "mol", func(a *acids) working.Num { return a.fluorine }),
		aluminium: add("n_Al", "mol", func(a *acids) working.Num { return a.aluminium }),
		ammonium:  add("n_N", "mol", func(a *acids) working.Num { return a.ammonium }),
		water:     add("m_w", "g", func(a *acids) working.Num { return a.water }),
		mass:      add("m", "g", func(a *acids) working.Num { return a.mass }),
	}
}

// complexed reports the fluoride that cold base leaves dissolved, whatever the pH.
func (r *reader) complexed(place figure.Place, a acids) {
	if a.held.None() {
		return
	}
	n, M := a.held.As("n"), process.MolarMass(r.c.Store, r.w, "F").As("M")
	r.put("neutralise.held_fluoride", place, "", r.w.Line("m", "g as F", "n*M", n.V*M.V, n, M).Worse(working.Bound),
		phrase.Of("neutralise.cold_base"))
}

// common reports what does not depend on the agent.
func (r *reader) common(place figure.Place, a acids) {
	r.complexed(place, a)
	if a.ammonium.V > 0 || a.ammonium.Unknown() {
		n := a.ammonium.As("n")
		v := r.w.Line("V", "L", "n*Vm", n.V*r.vm.V, n, r.vm)
		if a.base.Unknown() { // nobody knows whether it is acid enough to be limed
			v = working.Absent("V", "L", a.base.Missing()...)
		}
		r.put("neutralise.ammonia", place, "", v.Worse(working.Bound), phrase.Of("neutralise.all_ammonia"))
	}
}
