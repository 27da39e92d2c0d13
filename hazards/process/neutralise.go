package process

import (
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/neutralising"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// neutralise records the liquor as it stands, with what acid and fluoride the
// step itself brings, then lets everything in: what base it brings goes into the
// account, and carbonate leaves as CO2 as far as there is acid for it.
func (k *walker) neutralise(p *State, s *route.Step) {
	q := k.merged(p)
	l := Liquor{Step: s.Number, Place: p.Place, Pool: *q}
	l.Pool.Entries = k.slurry(&l, q)
	before := *q
	before.Entries = slices.Clone(q.Entries)
	var d Done
	k.put(p, s, &d)
	q = k.merged(p)
	f, _ := chemicals.ElementIndex("F")
	var seen []*chemicals.Substance
	for i := range s.What {
		m := &s.What[i]
		if m.Precursor || slices.Contains(seen, m.Substance) {
			continue
		}
		seen = append(seen, m.Substance)
		n := k.came(&l.Pool, q, m.Substance)
		if m.Substance.Acid > 0 || m.Substance.Formula.Of[f] > 0 && !m.Substance.NotHeld {
			l.Pool.Entries = append(l.Pool.Entries, entryOf(m.Substance, n))
			continue
		}
		l.Doses = append(l.Doses, Dose{Sub: m.Substance, N: n, Mass: k.weighed(s, m.Substance, n)})
	}
	l.Added = k.base(&l)
	k.first(s, &l, &before, d.Mixed)
	k.held(&l)
	k.out.Treated = append(k.out.Treated, l)
	k.react(p, s, reaction{})
	p.Neutralised = true
}

// came is how much of a substance came to what was there, mol.
func (k *walker) came(before, after *Pool, sub *chemicals.Substance) working.Num {
	of := func(q *Pool) working.Num {
		for i := range q.Entries {
			if q.Entries[i].Sub == sub {
				return q.Entries[i].N
			}
		}
		return working.Num{}
	}
	a, b := of(after), of(before)
	if b.None() || a.None() {
		return a
	}
	x, y := a.As("x"), b.As("y")
	return k.w.Line("n", "mol", "x-y", x.V-y.V, x, y)
}

// weighed is the mass of a substance that a step writes, kg: as it is written, if
// it is, once.
func (k *walker) weighed(s *route.Step, sub *chemicals.Substance, n working.Num) working.Num {
	var only *route.Material
	for i := range s.What {
		if m := &s.What[i]; m.Substance == sub {
			if only != nil {
				only = nil
				break
			}
			only = m
		}
	}
	if only != nil && only.Mass.Set && !only.Strength.Set {
		return k.c.Given("m", "kg", only.Mass)
	}
	if n.None() {
		return working.Absent("m", "kg", working.Lacks(working.NotGiven, s.At+".what"))
	}
	x, M := n.As("n"), sub.Formula.MolarMass(k.st, k.w).As("M")
	return k.w.Line("m", "kg", "n*M/1000", x.V*M.V/1000, x, M)
}

// base is the mass of everything a step writes that brings base, kg.
func (k *walker) base(l *Liquor) working.Num {
	var all []working.Num
	for i := range l.Doses {
		if x := &l.Doses[i]; !(neutralising.Of(x.Sub).Base <= 0) {
			all = append(all, x.Mass)
		}
	}
	if len(all) == 1 {
		return all[0]
	}
	return k.w.Sum("m", "kg", all...)
}

// carbonate frees the carbon dioxide of whatever carbonate has met acid by now
// and has not been freed yet:
//
//	freed in all = carbon (1 - base left / base of the carbonate)
func (k *walker) carbonate(p *State, s *route.Step) {
	q := k.merged(p)
	k.mayGive(q, s, p.Place)
	of := func(e *Entry) bool { return e.Sub != nil && e.Sub.Carbonate() > 0 }
	carbon := Total(k.w, q, "n_C", func(e *Entry) float64 {
		if of(e) {
			return e.Sub.Carbonate()
		}
		return 0
	})
	if carbon.V == 0 {
		return
	}
	base := value(q, func(e *Entry) float64 {
		if of(e) {
			return -e.Acid
		}
		return 0
	})
	left := max(0, -value(q, func(e *Entry) float64 { return e.Base })) // dissolved metal takes base too
	x := working.Given("x", "1", max(0, 1-left/base), "share of the carbonate that has met acid")
	if u := q.Stranger(); u != nil && x.Unknown() { // it may be acid
		x = working.Absent("x", "1", u.Lacks())
	}
	gone := Total(k.w, q, "n_gone", func(e *Entry) float64 {
		if e.Name == freed {
			return -1
		}
		return 0
	})
	gas := k.w.Line("n_CO2", "mol", "n_C*x-n_gone", carbon.V*x.V-gone.V, carbon, x, gone)
	if gas.Unknown() {
		k.out.Releases = append(k.out.Releases, Release{s.Number, p.Place, "CO2", "carbonate", gas})
		k.fact("carbon_dioxide", s.Number, phrase.Of("fact.carbon_dioxide_unknown", phrase.Step(s.Number)))
		return
	}
	if gas.V <= 1e-12*carbon.V {
		return
	}
	co2 := *atoms("C", 1)
	o, _ := chemicals.ElementIndex("O")
	co2[o] = 2
	k.release(q, s.Number, p.Place, "CO2", "carbonate", &co2, gas)
	k.fact("carbon_dioxide", s.Number, phrase.Of("fact.carbon_dioxide", phrase.Step(s.Number)))
}

// freed is the name of the entry that takes carbon dioxide out of a pool.
const freed = "CO2 given off"
