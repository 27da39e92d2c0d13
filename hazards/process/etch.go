package process

import (
	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/etching"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// etch turns the layered phase into product, as far as the route's conversion
// goes. The hydrogen reported is that of the whole powder, by whatever time;
// the account holds only what the conversion has given.
//
//	phase + (f + d + electrons) acid + (o + oh) water
//	    -> product with o O, f F, oh OH, d Cl + dissolved A + h H2
func (k *walker) etch(p *State, q *Pool, e *Etch, b etching.Bath) bool {
	at := pick(p.Solids, Unetched)
	if len(at) == 0 {
		return false
	}
	solid := p.Solids[at[0]]
	l := k.out.Layered
	e.N = solid.N
	e.Product = l.Etched(k.st, k.w, b)
	k.heat(e)
	if l.Unlisted != "" || l.Slab {
		k.unmodelled(p, at[0], e)
		q.doubt()
		return true
	}
	n, h := solid.N.As("n"), e.Product.Hydrogen.As("h")
	e.Hydrogen = k.w.Line("n_H2", "mol", "n*h", n.V*h.V, n, h)
	r := k.left(l.Formula.Text)
	done := k.w.Line("n_etched", "mol", "n*(1-r)", n.V*(1-r.V), n, r)
	rest := k.w.Line("n_left", "mol", "n*r", n.V*r.V, n, r)
	k.exchange(q, e, b, done)
	x := done.As("n")
	gas := k.w.Line("n_H2", "mol", "n*h", x.V*h.V, x, h)
	k.release(q, e.Step, p.Place, "H2", "etch", hydrogenGas, gas)
	k.replace(p, at[0], e, done, rest)
	k.acidShort(e)
	return true
}

// byCurrent counts the hydrogen that the current makes where that is more than
// the electrons of the powder: the rest comes from the electrolyte.
func (k *walker) byCurrent(p *State, q *Pool, s *route.Step, e *Etch, b bath) {
	n, charge := e.Hydrogen.As("n"), k.charge(s)
	e.Hydrogen = k.w.Line("n_H2", "mol", "max(n,m)", max(n.V, charge.V), n, charge)
	m := e.Hydrogen.As("m")
	if extra := k.w.Line("n_H2", "mol", "m-n", m.V-n.V, m, n); extra.V > 0 {
		k.parted(p, q, s, extra)
	}
	k.anode(s, b)
}

// electrolyte counts what a current makes where no powder is left that it etches, or none is
// there: all of its charge parts water.
func (k *walker) electrolyte(p *State, s *route.Step) {
	if s.Verb().Does != route.Conducts {
		return
	}
	for i := range k.out.Etches {
		if e := &k.out.Etches[i]; e.Step == s.Number && e.Family == Current {
			return
		}
	}
	q := k.merged(p)
	e := Etch{Step: s.Number, Place: p.Place, Family: Current, Hydrogen: k.charge(s).As("n_H2"),
		Heat: k.heats(s.Number)}
	k.parted(p, q, s, e.Hydrogen)
	p.Etches = append(p.Etches, len(k.out.Etches))
	k.out.Etches = append(k.out.Etches, e)
	k.anode(s, look(q))
}

// heats is the heat of the current of a step, kJ: all that goes in at the highest voltage, and
// nothing of it kept by what it makes.
func (k *walker) heats(step int) working.Num {
	s := &k.c.Route.Steps[step-1]
	if !s.Voltage.Set {
		return working.Absent("Q", "kJ", working.Lacks("cell_voltage", "").In(step))
	}
	u, i, t := k.c.Given("U", "V", s.Voltage), k.c.Given("I", "A", s.Current), k.c.Given("t", "s", s.Time)
	return k.w.Line("Q_U", "kJ", "U*I*t/1000", u.V*i.V*t.V/1000, u, i, t)
}

// charge is the hydrogen that all the charge of a step can make, mol.
func (k *walker) charge(s *route.Step) working.Num {
	i, t, f := k.c.Given("I", "A", s.Current), k.c.Given("t", "s", s.Time), k.st.Num("constant.faraday").As("F")
	return k.w.Line("m", "mol", "I*t/(2*F)", i.V*t.V/(2*f.V), i, t, f)
}

// parted releases n mol of hydrogen and half as much oxygen: counted as water taken apart,
// so that the account closes.
func (k *walker) parted(p *State, q *Pool, s *route.Step, n working.Num) {
	k.release(q, s.Number, p.Place, "H2", "current", hydrogenGas, n)
	x := n.As("n")
	k.release(q, s.Number, p.Place, "O2", "current", atoms("O", 2), k.w.Line("n_O2", "mol", "n/2", x.V/2, x))
}

func (k *walker) anode(s *route.Step, b bath) {
	k.fact("anode", s.Number, phrase.Of("fact.anode", phrase.Step(s.Number)))
	if b.chloride && b.ammonium {
		k.fact("nitrogen_trichloride", s.Number, phrase.Of("fact.nitrogen_trichloride", phrase.Step(s.Number)))
	}
}

// heat is that of the whole powder, counted from dissolved HF, from base or from acid. Of an etch
// by current none is held: where the route states it the current comes on top.
func (k *walker) heat(e *Etch) {
	l := k.out.Layered
	in, ok := map[Family]etching.Medium{FluorideAcid: etching.Fluoride, Alkaline: etching.Base,
		HotAcid: etching.Acid}[e.Family]
	if !ok && !l.Measured(k.st) {
		e.Heat = working.Absent("Q", "kJ", working.Lacks("family_heat", l.Formula.Text+" ("+string(e.Family)+")"))
		return
	}
	heat, standIns := l.Heat(k.st, k.w, in)
	n, q := e.N.As("n"), heat.As("q")
	e.Heat, e.StandIns = k.w.Line("Q", "kJ", "n*q", n.V*q.V, n, q), standIns
	if e.Family == Current {
		e.Heat = k.w.Sum("Q", "kJ", e.Heat, k.heats(e.Step))
	}
	if standIns {
		k.warn(phrase.Of("warn.heat_by_stand_ins", e.Step, l.Formula.Text))
	}
}

// left is the share of the powder the etch leaves: what the route states, or
// by default nothing with 5 % at worst.
func (k *walker) left(phase string) working.Num {
	if c := k.st.Num(datum.Of("etch_conversion", phase)).As("c"); !c.Unknown() {
		return k.w.Line("r", "1", "1-c", 1-c.V, c)
	}
	return k.st.Num("conversion.residual").As("r")
}

// exchange writes what the liquor gives to the product and takes from the A
// layer. A bath without fluoride or chloride gives none, not even nothing of it.
func (k *walker) exchange(q *Pool, e *Etch, b etching.Bath, done working.Num) {
	n := done.As("n")
	give := func(name, element string, x working.Num, acid float64) {
		y := x.As("x")
		m := k.w.Line("n_taken", "mol", "-n*x", -n.V*y.V, n, y)
		q.Entries = append(q.Entries, Entry{Name: name, Of: atoms(element, 1), N: m, Acid: acid, Base: acid})
	}
	pr := &e.Product
	if b.Fluoride {
		give("fluorine taken up", "F", pr.Fluorine, 1)
	}
	if b.Chloride {
		give("chlorine taken up", "Cl", pr.Chlorine, 1)
	}
	give("oxygen taken up", "O", pr.Oxygen, 0)
	give("hydroxyl taken up (O)", "O", pr.Hydroxyl, 0)
	give("hydroxyl taken up (H)", "H", pr.Hydroxyl, 0)
	for _, a := range k.out.Layered.A {
		z := -k.st.Num(datum.Of("electrons", a.Symbol)).V
		if e.Family == Alkaline {
			z = 1 // Al(OH)4-: one base each
		}
		x := working.Exact("x", "mol/mol", a.Count, a.Symbol+" per formula unit")
		m := k.w.Line("n_"+a.Symbol, "mol", "n*x", n.V*x.V, n, x)
		q.Entries = append(q.Entries, Entry{Name: a.Symbol + " dissolved", Of: atoms(a.Symbol, 1), N: m, Acid: z})
	}
}

// replace puts product and what is left where the powder was.
func (k *walker) replace(p *State, at int, e *Etch, done, rest working.Num) {
	was := p.Solids[at]
	of := k.out.Layered.MX()
	add := func(element string, x working.Num) {
		if i, ok := chemicals.ElementIndex(element); ok {
			of[i] += x.V
		}
	}
	add("O", e.Product.Oxygen)
	add("O", e.Product.Hydroxyl)
	add("H", e.Product.Hydroxyl)
	add("F", e.Product.Fluorine)
	add("Cl", e.Product.Chlorine)
	p.Solids[at] = Solid{Name: "nanosheets of " + was.Name, Kind: Product, Of: &of, N: done, Mass: was.Mass,
		HeatCapacity: was.HeatCapacity}
	none := working.Exact("C", "J/K", 0, "counted with the product")
	p.Solids = append(p.Solids, Solid{Name: was.Name + " left unetched", Kind: Residual, Of: was.Of, N: rest,
		HeatCapacity: none, Formula: was.Formula})
}

// unmodelled moves a phase whose gas is not known to the unresolved.
func (k *walker) unmodelled(p *State, at int, e *Etch) {
	l := k.out.Layered
	solid := p.Solids[at]
	if l.Slab {
		h, n := l.Dissolved(k.st, k.w).As("h"), solid.N.As("n")
		e.Product.Hydrogen = h
		e.Hydrogen = k.w.Line("n_H2", "mol", "n*h", n.V*h.V, n, h)
	} else {
		e.Hydrogen = working.Absent("n_H2", "mol", working.LacksDatum(datum.Of("electrons", l.Unlisted)))
	}
	k.unresolve(p, at, working.Lacks("gas_of_left", l.Formula.Text))
}

// doubt makes every amount of a pool a bound: what a reaction that is not
// followed took of it is not credited.
func (q *Pool) doubt() {
	q.Unfollowed = true
	for i := range q.Entries {
		q.Entries[i].N = q.Entries[i].N.Worse(working.Bound)
	}
}

// unresolve moves a solid to the unresolved and leaves in its place one that
// can still give an unknown amount of gas, so that a container it goes to is
// judged.
func (k *walker) unresolve(p *State, at int, missing working.Missing) {
	was := p.Solids[at]
	k.toUnresolved(was.Of, was.N.V)
	name := was.Name
	if was.Kind != Residual || !was.N.Unknown() { // else it says so already
		name += ", not followed"
	}
	p.Solids[at] = Solid{Name: name, Kind: Residual, Of: new(chemicals.Composition),
		N:    working.Absent("n", "mol", missing),
		Mass: was.Mass, HeatCapacity: was.HeatCapacity, Formula: was.Formula}
}

// acidShort says where the acid offered is less than a complete etch takes.
func (k *walker) acidShort(e *Etch) {
	if e.Family != FluorideAcid {
		return
	}
	pr := &e.Product
	need := e.N.V * (k.out.Layered.Electrons.V + pr.Fluorine.V + pr.Chlorine.V)
	if need > e.AcidBefore.V && !e.Ammonium {
		k.warn(phrase.Of("warn.step_offers_mol_of", e.Step, e.AcidBefore.V, need))
	}
}
