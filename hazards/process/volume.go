package process

import (
	"sync"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
)

// MolarVolume is that of an ideal gas at 25 degC and 101.325 kPa, in L/mol.
func MolarVolume(st *chemicals.Store, w *working.Sheet) working.Num {
	r, t, p := st.Num("constant.R").As("R"), st.Num("gas.temperature").As("T"), st.Num("gas.pressure").As("p")
	return w.Line("Vm", "L/mol", "R*T/p", r.V*t.V/p.V, r, t, p)
}

// Flammable is the share of hydrogen in air that may be reached, as a volume
// fraction: a share of its lower flammable limit.
func Flammable(st *chemicals.Store, w *working.Sheet) working.Num {
	l, f := st.Num("hydrogen.flammable").As("y_L"), st.Num("hydrogen.share").As("f_L")
	return w.Line("y", "1", "y_L/100*f_L", l.V/100*f.V, l, f)
}

// leftOut is the share of the mass of a liquid that may have no heat capacity
// before that of the whole is unknown: too low by as much, it is a bound.
const leftOut = 0.01

// HeatCapacity is that of everything in a place, in J/K, at the low end. It is
// unknown where a liquid without one is more than a trace, or where nothing that
// is there has one: nothing takes up no heat.
func (s *State) HeatCapacity(w *working.Sheet) working.Num {
	terms := make([]working.Num, 0, usualTerms)
	var left uncounted
	mass := 0.0
	for i := range s.Liquid {
		q := &s.Liquid[i]
		terms = append(terms, PartOf(w, q, q.HeatCapacity))
		left, mass = left.and(q.Uncounted.times(q.Kept())), mass+q.Mass.V*q.Kept()
	}
	if left.missing != nil && !(left.grams <= leftOut*mass) {
		return working.Absent("C", "J/K", left.missing...)
	}
	c := w.Sum("C", "J/K", append(terms, s.SolidCapacity(w))...)
	if c.V == 0 {
		return working.Absent("C", "J/K", working.Lacks("heat_capacity_in", s.Place))
	}
	return c
}

// SolidCapacity is the heat capacity of the solids of a place, in J/K.
func (s *State) SolidCapacity(w *working.Sheet) working.Num {
	terms := make([]working.Num, 0, usualTerms)
	for i := range s.Solids {
		terms = append(terms, s.Solids[i].HeatCapacity)
	}
	return w.Sum("C_s", "J/K", terms...)
}

// Contents is the place of a step with its liquor in it: after the step, or
// before it where the step takes the liquor away.
func (d *Done) Contents() *State {
	if d.First != nil && len(d.Etches) > 0 {
		return d.First
	}
	if len(d.After.Liquid) == 0 {
		return &d.Before
	}
	return &d.After
}

// Volume is that of the liquid of a place, in mL.
func (s *State) Volume(w *working.Sheet) working.Num {
	terms := make([]working.Num, 0, usualTerms)
	for i := range s.Liquid {
		terms = append(terms, PartOf(w, &s.Liquid[i], s.Liquid[i].Volume))
	}
	return w.Sum("V", "mL", terms...)
}

// Grains is what of a pool came as a solid, mL, as far as it is still there; none where
// nothing did.
func (q *Pool) Grains(w *working.Sheet) working.Num {
	if q.Salts.None() {
		return working.Num{}
	}
	return PartOf(w, q, q.Salts)
}

// plus is the sum of two volumes in mL, of which either may be none.
func plus(w *working.Sheet, a, b working.Num) working.Num {
	switch {
	case a.None():
		return b
	case b.None():
		return a
	}
	return w.Sum(a.Symbol, "mL", a, b)
}

// formulas are those whose molar mass the readers ask for.
var formulas = sync.OnceValue(func() map[string]chemicals.Formula {
	m := map[string]chemicals.Formula{}
	for _, text := range []string{"F", "HF", "HCl", "H2O", "CaF2", "MgF2", "Al(OH)3", "NH3"} {
		f, err := chemicals.ParseFormula(text)
		if err != nil {
			panic("process: " + err.Error())
		}
		m[text] = f
	}
	return m
})

// MolarMass is that of one of the formulas above, in g/mol; unknown for any
// other.
func MolarMass(st *chemicals.Store, w *working.Sheet, formula string) working.Num {
	f, ok := formulas()[formula]
	if !ok {
		return working.Absent("M", "g/mol", working.Lacks("formula", formula))
	}
	return f.MolarMass(st, w).As("M")
}
