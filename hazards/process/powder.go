package process

import (
	"fmt"

	"etchbound/chemicals"
	"etchbound/chemicals/etching"
	"etchbound/chemicals/working"
	"etchbound/hazards/phrase"
)

// weigh works out what the powder is made of, before any step. Stated
// impurities take their share of the powder's mass. Unstated ones are put on
// top of it.
func (k *walker) weigh() error {
	pr := k.c.Route.Precursor
	if pr == nil {
		return nil
	}
	l, err := etching.Split(k.st, k.w, pr.Phase, pr.Layers)
	if err != nil {
		return fmt.Errorf("precursor: %w", err)
	}
	k.out.Layered = &l
	m := k.c.Given("m", "g", pr.Mass)
	pow := &Powder{Mass: m}
	rest := working.Exact("rest", "1", 1, "the whole powder")
	for i := range pr.Impurities {
		im := &pr.Impurities[i]
		w := k.c.Given("w", "1", im.Share)
		g := k.w.Line("m", "g", "m*w", m.V*w.V, m, w)
		pow.Impurities = append(pow.Impurities, k.foreign(im.Formula, g, false))
		r := rest
		rest = k.w.Line("rest", "1", "rest-w", r.V-w.V, r, w)
	}
	share, k0 := rest.As("w"), 1.0
	if pr.Purity.Set {
		p := k.c.Given("p", "1", pr.Purity)
		pow.Remainder = k.w.Line("r", "1", "rest-p", rest.V-p.V, rest, p)
		share = p.As("w")
		k0 = pow.Remainder.V
	}
	M := l.MolarMass.As("M")
	pow.N = k.w.Line("n", "mol", "m*w/M", m.V*share.V/M.V, m, share, M)
	k.out.Powder = pow
	k.unstated(pow, pr.Stated, pr.Purity.Set, k0)
	k.factsOfPowder(&l)
	return nil
}

// unstated adds the impurity nobody spoke of: by default nothing, at worst 5
// wt% of free metal on top; where a purity leaves more than that unexplained,
// at worst all that it leaves.
func (k *walker) unstated(pow *Powder, stated, pure bool, remainder float64) {
	u := k.st.Num("impurity.unstated").As("u")
	scale := 1.0
	if pure {
		top := 0.05
		if row, ok := k.st.Row("impurity.unstated"); ok && row.High > 0 {
			top = row.High
		}
		scale = remainder / top
		if !stated {
			scale = max(scale, 1)
		}
	}
	if (stated && !pure) || (pure && stated && remainder <= 1e-9) {
		return
	}
	m, s := pow.Mass.As("m"), working.Exact("s", "1", scale, "unexplained share of the powder over the default")
	g := k.w.Line("m_unstated", "g", "m*u*s", m.V*u.V*s.V, m, u, s)
	al, err := chemicals.ParseFormula("Al")
	if err != nil || !k.asAluminium() {
		if g.V == 0 {
			return
		}
		g = working.Absent("m_unstated", "g", working.Lacks("unstated_impurity", ""))
	}
	pow.Impurities = append(pow.Impurities, k.foreign(al, g, true))
}

// asAluminium reports whether an unstated impurity of this powder may be
// counted as free aluminium.
func (k *walker) asAluminium() bool {
	for _, a := range k.out.Layered.A {
		switch a.Symbol {
		case "Al", "Ga", "In", "Si", "Ge", "Sn":
			return true
		}
	}
	return false
}

func (k *walker) foreign(f chemicals.Formula, g working.Num, unstated bool) Foreign {
	M, m := f.MolarMass(k.st, k.w).As("M"), g.As("m")
	return Foreign{Formula: f, Mass: g, Unstated: unstated, N: k.w.Line("n", "mol", "m/M", m.V/M.V, m, M)}
}

// powder puts the whole powder into a place.
func (k *walker) powder(p *State) {
	pow, l := k.out.Powder, k.out.Layered
	k.charged = true
	add := func(name, formula string, kind SolidKind, of *chemicals.Composition, n, m, c working.Num, unstated bool) {
		p.Solids = append(p.Solids, Solid{Name: name, Kind: kind, Of: of, N: n, Mass: m, HeatCapacity: c, Formula: formula,
			Unstated: unstated})
		k.account(of, n.V)
	}
	text := l.Formula.Text
	add(text, text, Unetched, &k.c.Route.Precursor.Phase.Of, pow.N, pow.Mass, k.solidHeat(&l.Formula, pow.N), false)
	for i := range pow.Impurities {
		im := &pow.Impurities[i]
		none := working.Exact("C", "J/K", 0, "heat capacity of impurities is left out")
		of := &im.Formula.Of
		if im.Unstated && im.N.Unknown() {
			of = new(chemicals.Composition) // nobody knows what it is: it cannot enter the account
		}
		add(im.Formula.Text, im.Formula.Text, Impurity, of, im.N, im.Mass, none, im.Unstated)
	}
}

func (k *walker) factsOfPowder(l *etching.Layered) {
	pr := k.c.Route.Precursor
	if l.Hydride != "" {
		k.fact("hydride", 0, phrase.Of("fact.hydride", l.A[0].Symbol, l.Formula.Text, l.Hydride, l.Hydride))
	}
	for i := range pr.Impurities {
		f := pr.Impurities[i].Formula
		for _, el := range f.Order {
			if h := etching.Hydride(el); h != "" {
				k.fact("hydride_impurity", 0, phrase.Of("fact.hydride_impurity", f.Text, h))
			}
			if etching.Toxic(el) {
				k.fact("toxic_metal", 0, phrase.Of("fact.toxic_metal", f.Text, el))
			}
		}
	}
	for _, el := range l.Toxic {
		k.fact("toxic_metal", 0, phrase.Of("fact.toxic_metal_leaves_the", el))
	}
	if found, expected := l.Unexpected(); found != "" {
		k.fact("formula", 0, phrase.Of("fact.formula", l.Formula.Text, found, expected))
	}
	if l.Unlisted != "" && l.Hydride == "" {
		k.fact("unlisted", 0, phrase.Of("fact.unlisted", l.Formula.Text, l.Unlisted))
	}
	if l.Slab {
		k.fact("slab", 0, phrase.Of("fact.slab", l.Formula.Text))
	}
}
