package process

import (
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/etching"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// inert reports whether an impurity is held as one that gives no gas.
func (k *walker) inert(formula string) bool {
	return k.st.Num(datum.Of("hydrogen.impurity", formula)).V == 0 &&
		k.st.Num(datum.Of("methane.impurity", formula)).Unknown()
}

// impurities lets the foreign solids react: metals dissolve first and fast.
func (k *walker) impurities(p *State, q *Pool, e *Etch, b bath) bool {
	did := false
	kept := make([]Solid, 0, len(p.Solids))
	for _, x := range p.Solids {
		if x.Kind != Impurity || k.inert(x.Formula) {
			kept = append(kept, x)
			continue
		}
		d := k.impurity(x, e, b)
		e.Dissolved = append(e.Dissolved, d)
		did = true
		if d.Hydrogen.Unknown() {
			k.toUnresolved(x.Of, x.N.V)
			q.doubt()
			continue
		}
		k.dissolveMetal(q, e, x, d)
	}
	p.Solids = kept
	return did
}

func (k *walker) impurity(x Solid, e *Etch, b bath) Dissolved {
	f, err := chemicals.ParseFormula(x.Formula)
	if err != nil {
		f.Text = x.Formula
	}
	d := Dissolved{Formula: f, N: x.N, Unstated: x.Unstated}
	h := k.st.Num(datum.Of("hydrogen.impurity", x.Formula)).As("h")
	kind := "heat.impurity.acid"
	switch {
	case b.base:
		kind = "heat.impurity.base"
	case b.fluoride:
		kind = "heat.impurity.hf"
	}
	heat := k.st.Num(datum.Of(kind, x.Formula))
	switch {
	case b.base:
		if h = k.inBase(x.Formula); h.Unknown() {
			heat = working.Absent("q", "kJ/mol", working.Lacks("heat_in_base", x.Formula))
		}
	case h.Unknown():
		h, heat = k.otherImpurity(f, h, heat, e, b)
	}
	n, dh := x.N.As("n"), heat.As("q")
	d.Heat = k.w.Line("Q", "kJ", "n*q", n.V*dh.V, n, dh)
	d.Hydrogen = k.w.Line("n_H2", "mol", "n*h", n.V*h.V, n, h)
	return d
}

// inBase is the hydrogen of a metal in base, mol/mol.
func (k *walker) inBase(formula string) working.Num {
	h := k.st.Num(datum.Of("hydrogen.impurity.base", formula)).As("h")
	if h.Unknown() {
		return working.Absent("h", "mol/mol", working.Lacks("hydrogen_in_base", formula))
	}
	return h
}

// otherImpurity covers foreign layered phases, by the same electron count, and
// leaves the rest unknown.
func (k *walker) otherImpurity(f chemicals.Formula, h, heat working.Num, e *Etch, b bath) (working.Num, working.Num) {
	if !k.st.Num(datum.Of("methane.impurity", f.Text)).Unknown() {
		return working.Exact("h", "mol/mol", 0, f.Text+" gives methane"), heat
	}
	l, err := etching.Split(k.st, k.w, f, nil)
	if err != nil || l.Unlisted != "" || l.Slab || b.base {
		return h, heat
	}
	q, _ := l.Heat(k.st, k.w, etching.Fluoride)
	return l.Etched(k.st, k.w, etching.Bath{Fluoride: b.fluoride, Chloride: b.chloride}).Hydrogen, q
}

// dissolveMetal moves an impurity into the liquor and its hydrogen out of it.
// Two acid equivalents, or in base the water, give one hydrogen.
func (k *walker) dissolveMetal(q *Pool, e *Etch, x Solid, d Dissolved) {
	perMol := 2 * k.st.Num(datum.Of("hydrogen.impurity", x.Formula)).V
	if perMol != perMol {
		perMol = 0 // a layered impurity or a carbide: its acid is left uncounted, so more base is asked for
	}
	acid := -perMol
	if e.Family == Alkaline {
		acid = 1
	}
	q.Entries = append(q.Entries, Entry{Name: x.Formula + " dissolved", Of: x.Of, N: x.N, Acid: acid})
	k.release(q, e.Step, e.Place, "H2", "impurity", hydrogenGas, d.Hydrogen)
	if m := k.st.Num(datum.Of("methane.impurity", x.Formula)).As("h"); !m.Unknown() {
		n := x.N.As("n")
		ch4 := k.w.Line("n_CH4", "mol", "n*h", n.V*m.V, n, m)
		of := *atoms("C", 1)
		i, _ := chemicals.ElementIndex("H")
		of[i] = 4
		k.release(q, e.Step, e.Place, "CH4", "carbide", &of, ch4)
		k.sayMethane(x.Formula, e.Step)
	}
}

// metals lets acid take the metal a melt left. Base takes zinc and tin too, how
// fast and how far is not followed. It reports whether any was taken.
func (k *walker) metals(p *State, q *Pool, e *Etch, b bath) bool {
	kept := make([]Solid, 0, len(p.Solids))
	for _, x := range p.Solids {
		if x.Kind != Metal {
			kept = append(kept, x)
			continue
		}
		h := k.st.Num(datum.Of("hydrogen.impurity", x.Formula))
		if b.base {
			h = k.inBase(x.Formula)
		}
		if h.V == 0 {
			kept = append(kept, x)
			continue
		}
		d := k.impurity(x, e, b)
		d.Metal = true
		gas := d.Hydrogen
		if len(q.More) > 0 { // it may be washed again, nobody knows how often
			d.Hydrogen, d.Heat = working.Absent("n_H2", "mol", q.More...), working.Absent("Q", "kJ", q.More...)
		}
		e.Dissolved = append(e.Dissolved, d)
		if gas.Unknown() {
			q.doubt()
			k.toUnresolved(x.Of, x.N.V)
			continue
		}
		q.Entries = append(q.Entries, Entry{Name: x.Formula + " dissolved", Of: x.Of, N: x.N, Acid: -2 * h.V})
		k.release(q, e.Step, p.Place, "H2", "metal", hydrogenGas, gas)
		k.fact("second_gas", e.Step, phrase.Of("fact.second_gas", phrase.Step(e.Step), x.Formula))
	}
	did := len(kept) < len(p.Solids)
	p.Solids = kept
	return did
}

// residual counts the hydrogen that base can still take off unetched powder.
func (k *walker) residual(p *State, s *route.Step) {
	for _, i := range pick(p.Solids, Residual) {
		x := p.Solids[i]
		h := k.out.Layered.Etched(k.st, k.w, etching.Bath{}).Hydrogen.As("h")
		n := x.N.As("n")
		gas := k.w.Line("n_H2", "mol", "n*h", n.V*h.V, n, h)
		// The powder stays in the account as powder: how much of it base takes is not known.
		k.out.Releases = append(k.out.Releases, Release{s.Number, p.Place, "H2", "residual", gas})
		p.Solids[i].Kind = Based
		k.fact("second_gas", s.Number, phrase.Of("fact.second_gas_step_brings", phrase.Step(s.Number)))
	}
}

// mayTake notes once in a place that what is not held may be base, or stands in base, and takes
// hydrogen off powder that an earlier step left: how much, nobody knows.
func (k *walker) mayTake(p *State, s *route.Step, b *bath) {
	told := slices.ContainsFunc(k.out.Releases, func(r Release) bool {
		return r.Place == p.Place && r.Cause == "residual"
	})
	if told || len(pick(p.Solids, Residual)) == 0 || !b.base && b.stranger.Acid >= 0 {
		return
	}
	k.out.Releases = append(k.out.Releases, Release{s.Number, p.Place, "H2", "residual",
		working.Absent("n_H2", "mol", b.stranger.Lacks())})
}
