package course

import (
	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/process"
)

// Onto is liquor that is poured on to powder, or metal that a wash takes up. What reacts follows the liquor and
// not the powder: with the first share of it all the powder can react, in as much
// liquor as is there by then.
type Onto struct {
	Share    working.Num // of what is poured, with which all the powder can react
	There    working.Num // J/K that lies there before, low end
	Capacity working.Num // J/K of what is there once that share is in
	Feeding  working.Num // s in which that share goes in
	Offered  working.Num // mol of acid or base that the liquor brings, before any of it is taken or parted off
}

// onto says so of a stage; nil where the powder comes with or after the liquor, and
// where how it reacts is not followed, so that heat and gas are unknown.
//
//	share    = (need - there)/(offered - there) of what the way of etching takes, the
//	           greatest, at most 1
//	capacity = C0 + share (C1 - C0)
func (f *finder) onto(s *Stage) *Onto {
	before := &s.Done.Before
	takes := taken(f.k, s)
	if takes == nil || !powder(before) {
		return nil
	}
	o := &Onto{There: lying(f.w, before)}
	need := f.needed(s)
	for _, per := range takes {
		offered := f.charged(s.Done.Contents(), per)
		if o.Offered.None() {
			o.Offered = offered
		}
		x := f.first(need, f.charged(before, per), offered)
		if y := o.Share.As("s"); !o.Share.None() {
			x = f.w.Line("s", "1", "max(s,x)", max(y.V, x.V), y, x.As("x"))
		}
		o.Share = x
	}
	c0, c1, x, t := o.There.As("C_0"), s.Filled.As("C_1"), o.Share.As("s"), s.GoesIn.As("t_p")
	o.Capacity = f.w.Line("C", "J/K", "C_0+s*(C_1-C_0)", c0.V+x.V*(c1.V-c0.V), c0, x, c1)
	o.Feeding = f.w.Line("t", "s", "s*t_p", x.V*t.V, x, t)
	return o
}

// taken is what of a liquor the etches that begin in a stage take, mol per mol of an
// entry; nil where one of them is not followed.
func taken(k *process.Walk, s *Stage) []func(*process.Entry) float64 {
	fluorine, _ := chemicals.ElementIndex("F")
	acid := func(e *process.Entry) float64 { return max(e.Acid, 0) }
	base := func(e *process.Entry) float64 { return max(-e.Acid, 0) }
	fluoride := func(e *process.Entry) float64 { return e.Count(fluorine) }
	switch k.Etches[s.Etches[0]].Family {
	case process.FluorideAcid:
		return []func(*process.Entry) float64{acid, fluoride}
	case process.HotAcid, process.AcidWash:
		return []func(*process.Entry) float64{acid}
	case process.FluorideSalt:
		return []func(*process.Entry) float64{fluoride}
	case process.Alkaline:
		return []func(*process.Entry) float64{base}
	}
	return nil
}

// first is the share of what is poured with which there is as much of something
// as is needed; the least that counts where it is there already.
func (f *finder) first(need, there, offered working.Num) working.Num {
	if there.V == offered.V {
		return working.Exact("s", "1", firstDrops, "what is poured brings none of it: the first drops count")
	}
	n, x0, x := need.As("n"), there.As("X_0"), offered.As("X")
	return f.w.Line("s", "1", "max(0.0001,min(1,(n-X_0)/(X-X_0)))",
		max(firstDrops, min(1, (n.V-x0.V)/(x.V-x0.V))), n, x0, x)
}

// charged is what went into the liquor of a place of something, mol: what reacted
// there counts as if it had not.
func (f *finder) charged(s *process.State, per func(*process.Entry) float64) working.Num {
	var terms []working.Num
	for i := range s.Liquid {
		terms = append(terms, process.Total(f.w, &s.Liquid[i], "X", func(e *process.Entry) float64 {
			if e.Sub == nil {
				return 0
			}
			return per(e)
		}))
	}
	if more := s.Unsaid(); more != nil {
		return working.Absent("X", "mol", more...)
	}
	return f.w.Sum("X", "mol", terms...)
}

// Reacts is the time, s, within which what begins to react in a stage goes in, if
// it reacts as it does: the addition, or the first share of it.
func (s *Stage) Reacts() working.Num {
	if s.Onto != nil {
		return s.Onto.Feeding
	}
	return s.GoesIn
}

// needed is what all the powder of a stage takes of acid, base or fluoride, mol: of
// base one for each atom that is left (as Al(OH)4-), else
//
//	sum of n (electrons + F + Cl) of the phase and of 2 n_H2 of what else dissolves
func (f *finder) needed(s *Stage) working.Num {
	var terms []working.Num
	for _, i := range s.Etches {
		e := &f.k.Etches[i]
		if !e.N.None() {
			terms = append(terms, takes(f.w, f.k, e))
		}
		terms = append(terms, dissolving(f.w, e)...)
	}
	return f.w.Sum("n", "mol", terms...)
}

// dissolving is what else dissolves beside the phase takes, mol: two for each hydrogen.
func dissolving(w *working.Sheet, e *process.Etch) []working.Num {
	var terms []working.Num
	for j := range e.Dissolved {
		if h := e.Dissolved[j].Hydrogen.As("n_H2"); !h.None() {
			terms = append(terms, w.Line("n", "mol", "2*n_H2", 2*h.V, h))
		}
	}
	return terms
}

// takes is what the layered phase of an etch takes, mol.
func takes(w *working.Sheet, k *process.Walk, e *process.Etch) working.Num {
	m, z := e.N.As("m"), k.Layered.Electrons.As("e")
	if e.Family == process.Alkaline {
		atoms := 0.0
		for _, a := range k.Layered.A {
			atoms += a.Count
		}
		z = working.Exact("e", "mol/mol", atoms, "one base for each atom that leaves")
	}
	x, d := e.Product.Fluorine, e.Product.Chlorine
	if x.None() || d.None() {
		return w.Line("n", "mol", "m*e", m.V*z.V, m, z)
	}
	x, d = x.As("f"), d.As("d")
	return w.Line("n", "mol", "m*(e+f+d)", m.V*(z.V+x.V+d.V), m, z, x, d)
}

// Needed is the acid that a complete etch of the layered phase takes, or where none is left
// the metals that dissolve, and what is offered, in mol; not known for a way of etching that
// is not followed.
func Needed(w *working.Sheet, k *process.Walk, s *Stage) (need, offered working.Num) {
	missing := working.Lacks("acid_taken", "")
	var terms []working.Num
	phase := false
	for _, i := range s.Etches {
		e := &k.Etches[i]
		if phase = phase || !e.N.None(); e.N.None() {
			terms = append(terms, dissolving(w, e)...)
			continue
		}
		if e.Product.Fluorine.None() || e.Product.Chlorine.None() {
			terms = append(terms, working.Absent("n", "mol", missing))
			continue
		}
		terms = append(terms, takes(w, k, e))
	}
	offered = k.Etches[s.Etches[0]].AcidBefore
	if !phase && s.Onto != nil {
		offered = s.Onto.Offered // a wash has parted most of it off
	}
	if offered.None() {
		return w.Sum("n", "mol", terms...), working.Absent("A", "mol", missing)
	}
	return w.Sum("n", "mol", terms...), offered.As("A")
}

// powder reports whether a place holds what an etchant would take up.
func powder(s *process.State) bool {
	for i := range s.Solids {
		if k := s.Solids[i].Kind; k == process.Unetched || k == process.Impurity || k == process.Metal {
			return true
		}
	}
	return false
}

// lying is the heat capacity of what lies in a place, J/K, low end: of the powder
// alone where no liquor is there.
func lying(w *working.Sheet, s *process.State) working.Num {
	if len(s.Liquid) == 0 {
		return s.SolidCapacity(w)
	}
	return capacity(w, s)
}
