package process

import (
	"fmt"
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/evolving"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// melts reports whether a step melts what lies dry in its place: by its verb, or since it
// makes salt with powder in it as hot as boiling water, and no liquid is there. Mixed
// chlorides melt from about there on; what a dry salt does below is not modelled either.
func (k *walker) melts(p *State, s *route.Step) bool {
	switch s.Verb().Does {
	case route.Melts:
		return true
	case route.Fills, route.Shuts, route.Stores:
		return s.Boils() && len(pick(p.Solids, Unetched)) > 0 && k.merged(p).salted()
	}
	return false
}

// fumes notes dry fluoride that a step makes as hot as boiling water, powder beside it or
// not: moist air makes hydrofluoric acid of it (2 NaF + H2O -> Na2O + 2 HF, pyrohydrolysis).
// It stays so until a liquid comes to it.
func (k *walker) fumes(p *State, s *route.Step) {
	if p.wet() {
		p.Fumes = false
		return
	}
	switch does := s.Verb().Does; {
	case does == route.Melts, s.Boils() && (does == route.Fills || does == route.Shuts || does == route.Stores):
		if slices.ContainsFunc(p.Liquid, func(q Pool) bool { return q.salted() && look(&q).fluoride }) {
			p.Fumes = true
			k.fact("hf_formed", s.Number, phrase.Of("fact.hf_formed_hot", phrase.Step(s.Number)))
			k.moistened(p, s)
		}
	}
}

// moistened notes the hydrogen fluoride that hot fluoride gives off in air, or in a gas of
// which nobody says that it is dry and inert; how much is not known.
func (k *walker) moistened(p *State, s *route.Step) {
	hf, held := chemicals.Library().Find("hf")
	if !held || evolving.IdleHot(s.Gas) {
		return
	}
	k.fact("toxic_gas", s.Number, phrase.Of("fact.hf_gas_hot", phrase.Step(s.Number)))
	k.gives(&tells{p: p, s: s}, evolving.Gas{Sub: hf, Said: "toxic_gas"},
		working.Absent("n", "mol", working.Lacks("fluoride_in_air", "").In(s.Number)))
}

// wet reports whether there is a liquid in a place.
func (s *State) wet() bool {
	return slices.ContainsFunc(s.Liquid, func(q Pool) bool { return q.Wet() })
}

// Powdery reports whether something that was put in lies in a place dry and cold: no liquid,
// and nothing of it hot enough for the moisture of the air to make acid of fluoride.
func (s *State) Powdery() bool {
	return !s.wet() && !s.Fumes && !s.Dried() && slices.ContainsFunc(s.Liquid, func(q Pool) bool { return q.salted() })
}

// salted reports whether there is something in a pool, and no liquid.
func (q *Pool) salted() bool {
	return !q.Wet() && slices.ContainsFunc(q.Entries, func(e Entry) bool { return e.Sub != nil })
}

// melt etches the layered phase with a dry divalent metal chloride:
//
//	phase + (e+2)/2 MCl2 -> product with 2 Cl + A Cl(e) gas + (e+2)/2 M
//
// e being the electrons of the A layer. Anything else that is melted with the
// powder is not modelled.
func (k *walker) melt(p *State, s *route.Step) {
	at := pick(p.Solids, Unetched)
	if len(at) == 0 {
		return
	}
	if at := k.c.Route.Place(p.Place); s.Verb().Does == route.Shuts || at != nil && at.Closure == route.Closed {
		k.fact("melt_shut", s.Number, phrase.Of("fact.melt_shut", phrase.Step(s.Number)))
	}
	q := k.merged(p)
	salt := k.meltSalt(q)
	l := k.out.Layered
	e := Etch{Step: s.Number, Place: p.Place, Family: Molten, Powder: k.out.Powder.Mass, N: p.Solids[at[0]].N}
	e.Heat = working.Absent("Q", "kJ", working.Lacks("melt_heat", "").In(s.Number))
	e.Hydrogen = working.Exact("n_H2", "mol", 0, "a dry melt gives no hydrogen; wet salt gives hydrogen chloride")
	if salt == nil || l.Unlisted != "" || l.Slab {
		e.Hydrogen = working.Absent("n_H2", "mol", working.Lacks("melt_gas", "").In(s.Number))
		q.doubt()
		k.unresolve(p, at[0], working.Lacks("gas_of_melt_left", "").In(s.Number))
		p.Solids[at[0]].Lacks = working.Lacks("gas_of_melt_left", "").In(s.Number) // metal that acid takes, or none
		k.fact("melt", s.Number, phrase.Of("fact.melt", phrase.Step(s.Number)))
		k.out.Etches = append(k.out.Etches, e)
		p.Etches = append(p.Etches, len(k.out.Etches)-1)
		return
	}
	k.meltEtch(p, q, at[0], salt, &e)
	k.out.Etches = append(k.out.Etches, e)
	p.Etches = append(p.Etches, len(k.out.Etches)-1)
}

// meltSalt returns the divalent chloride of the pool that gives up its metal.
func (k *walker) meltSalt(q *Pool) *chemicals.Substance {
	for i := range q.Entries {
		if s := q.Entries[i].Sub; s != nil && s.MetalElectrons == 2 && s.Formula.Count("Cl") == 2 {
			return s
		}
	}
	return nil
}

func (k *walker) meltEtch(p *State, q *Pool, at int, salt *chemicals.Substance, e *Etch) {
	l, metal := k.out.Layered, salt.Metal
	n, z := e.N.As("n"), l.Electrons.As("e")
	m := k.w.Line("n_metal", "mol", "n*(e+2)/2", n.V*(z.V+2)/2, n, z)
	have := value(q, func(x *Entry) float64 {
		if x.Sub == salt {
			return 1
		}
		return 0
	})
	if have < m.V {
		k.warn(phrase.Of("warn.step_melts_mol_of", e.Step, have, salt.Name, m.V))
	}
	k.take(q, metal+" reduced", atoms(metal, 1), m, 0, 0)
	k.heatOfMelt(p, e, salt)
	two := working.Exact("x", "mol/mol", 2, "chlorine taken up per formula unit")
	k.take(q, "chlorine taken up", atoms("Cl", 1), k.w.Line("n_Cl", "mol", "n*x", n.V*2, n, two), 0, 0)
	k.offGas(q, e, n, z)
	of := l.MX()
	if i, ok := chemicals.ElementIndex("Cl"); ok {
		of[i] += 2
	}
	was := p.Solids[at]
	p.Solids[at] = Solid{Name: "nanosheets of " + was.Name, Kind: Product, Of: &of, N: e.N, Mass: was.Mass,
		HeatCapacity: was.HeatCapacity}
	none := working.Exact("C", "J/K", 0, "left out")
	p.Solids = append(p.Solids, Solid{Name: metal + " metal", Kind: Metal, Of: atoms(metal, 1), N: m, HeatCapacity: none,
		Formula: metal})
	k.fact("melt_gas", e.Step, phrase.Of("fact.melt_gas", phrase.Step(e.Step)))
}

// offGas sends the A layer off as its chlorides, electron for electron.
func (k *walker) offGas(q *Pool, e *Etch, n, z working.Num) {
	for _, a := range k.out.Layered.A {
		x := working.Exact("x", "mol/mol", a.Count, a.Symbol+" per formula unit")
		gas := k.w.Line("n_"+a.Symbol+"Cl", "mol", "n*x", n.V*x.V, n, x)
		ea := k.st.Num(datum.Of("electrons", a.Symbol))
		of := atoms("Cl", ea.V)
		if i, ok := chemicals.ElementIndex(a.Symbol); ok {
			of[i] = 1
		}
		k.out.Releases = append(k.out.Releases, Release{e.Step, e.Place, fmt.Sprintf("%sCl%g", a.Symbol, ea.V), "etch", gas})
		k.toGas(of, gas.V)
		y := ea.As("y")
		k.take(q, "chlorine driven off", atoms("Cl", 1), k.w.Line("n_Cl", "mol", "n*x*y", n.V*x.V*y.V, n, x, y), 0, 0)
	}
}

// heatOfMelt is the heat of a melt, by stand-ins, with the foreign metals of the powder. They
// count as free: what holds them together is not credited.
func (k *walker) heatOfMelt(p *State, e *Etch, salt *chemicals.Substance) {
	heat, standIns := k.out.Layered.HeatOfMelt(k.st, k.w, salt.Formula.Text)
	terms := []working.Num{}
	add := func(n, q working.Num) {
		n, q = n.As("n"), q.As("q")
		terms = append(terms, k.w.Line("Q", "kJ", "n*q", n.V*q.V, n, q))
	}
	add(e.N, heat)
	for _, i := range pick(p.Solids, Impurity) {
		if x := p.Solids[i]; !k.inert(x.Formula) {
			add(x.N, k.foreignInMelt(x.Formula, salt))
		}
	}
	total := k.w.Sum("Q", "kJ", terms...)
	if total.Unknown() {
		return
	}
	e.Heat, e.StandIns = total.Worse(working.Estimated), standIns
	if standIns {
		k.warn(phrase.Of("warn.heat_of_melt", e.Step, k.out.Layered.Formula.Text))
	}
}

// foreignInMelt is what a mol of an impurity releases where a melted chloride takes it, kJ/mol.
func (k *walker) foreignInMelt(formula string, salt *chemicals.Substance) working.Num {
	f, err := chemicals.ParseFormula(formula)
	unknown := working.Absent("q", "kJ/mol", working.Lacks("melt_heat", ""))
	if err != nil {
		return unknown
	}
	s, terms := k.st.Num(datum.Of("enthalpy", salt.Formula.Text+"(s)")).As("H_S"), []working.Num{}
	for _, el := range f.Order {
		q, z := k.st.Num(datum.Of("leaving_heat.melt", el)), k.st.Num(datum.Of("electrons", el))
		if q.Unknown() {
			q = k.st.Num(datum.Of("surface_heat.melt", el))
			z = working.Exact("z", "mol/mol", 2, "electrons to a chloride of two")
		}
		q, z = q.As("q_A"), z.As("z")
		x := working.Exact("x", "1", f.Count(el), el+" per formula unit")
		terms = append(terms, k.w.Line("q", "kJ/mol", "max(x*(q_A+z/2*H_S),0)", max(x.V*(q.V+z.V/2*s.V), 0), x, q, z, s))
	}
	q := k.w.Sum("q", "kJ/mol", terms...)
	if q.Unknown() {
		return unknown
	}
	return q
}
