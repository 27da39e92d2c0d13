package etching

import (
	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// Bath is what decides the surface of the product.
type Bath struct{ Fluoride, Chloride bool }

// Product is what one formula unit of the layered phase becomes: hydrogen per
// formula unit and the oxygen, fluorine, hydroxyl and chlorine it takes up, in
// mol per mol.
type Product struct {
	Hydrogen                             working.Num
	Oxygen, Fluorine, Hydroxyl, Chlorine working.Num
}

// Etched gives the product of a complete etch by electron count: two surface
// groups per formula unit whatever the thickness of the layer, and
//
//	hydrogen = electrons of A / 2 + (F + OH + Cl)/2 + O   [mol per mol]
//
// A measured hydrogen yield (data id etch_hydrogen.<phase>) replaces the
// termination rows and the oxygen follows from it. Hydrogen is unknown where an
// element of A has no electron count.
func (l *Layered) Etched(st *chemicals.Store, w *working.Sheet, b Bath) Product {
	e := l.Electrons.As("e")
	o := st.Num("termination.oxygen").As("o")
	measured := st.Num(datum.Of("etch_hydrogen", l.Formula.Text))
	if !measured.Unknown() {
		h := measured.As("h")
		o = w.Line("o", "mol/mol", "2*h-e-2", 2*h.V-e.V-2, h, e)
	}
	rest := w.Line("rest", "mol/mol", "2-o", 2-o.V, o)
	p := Product{Oxygen: o}
	p.Fluorine, p.Chlorine = shares(st, w, b, rest)
	f, cl := p.Fluorine.As("f"), p.Chlorine.As("cl")
	p.Hydroxyl = w.Line("oh", "mol/mol", "rest-f-cl", rest.V-f.V-cl.V, rest, f, cl)
	oh := p.Hydroxyl.As("oh")
	if !measured.Unknown() {
		p.Hydrogen = measured.As("h")
		return p
	}
	p.Hydrogen = w.Line("h", "mol/mol", "e/2+(f+oh+cl)/2+o",
		e.V/2+(f.V+oh.V+cl.V)/2+o.V, e, f, oh, cl, o)
	return p
}

func shares(st *chemicals.Store, w *working.Sheet, b Bath, rest working.Num) (f, cl working.Num) {
	none := working.Exact("none", "mol/mol", 0, "not in this bath")
	switch {
	case b.Fluoride && b.Chloride:
		sf, sc := st.Num("termination.chloride.fluorine_share").As("s"), st.Num("termination.chloride.chlorine_share").As("s")
		return w.Line("f", "mol/mol", "s*rest", sf.V*rest.V, sf, rest),
			w.Line("cl", "mol/mol", "s*rest", sc.V*rest.V, sc, rest)
	case b.Fluoride:
		sf := st.Num("termination.fluorine_share").As("s")
		return w.Line("f", "mol/mol", "s*rest", sf.V*rest.V, sf, rest), none
	}
	return none, none
}

// Dissolved is the hydrogen, in mol per mol, if every metal of the phase goes
// into solution at its highest fluoride-stable valence and carbon stays.
func (l *Layered) Dissolved(st *chemicals.Store, w *working.Sheet) working.Num {
	terms := []working.Num{l.Electrons}
	for _, m := range l.M {
		v := st.Num(datum.Of("valence", m.Symbol)).As("v")
		x := working.Exact("x", "mol/mol", m.Count, m.Symbol+" per formula unit")
		terms = append(terms, w.Line("v_"+m.Symbol, "mol/mol", "x*v", x.V*v.V, x, v))
	}
	all := w.Sum("v", "mol/mol", terms...)
	return w.Line("h_all", "mol/mol", "v/2", all.V/2, all).Worse(working.Bound)
}

// Dissolved is the hydrogen, in mol per mol, of a foreign metal or carbide of
// the powder if all of its metal goes into solution at its highest
// fluoride-stable valence and carbon stays. It is unknown for what holds an
// element without an entry, and zero for an oxide.
func Dissolved(st *chemicals.Store, w *working.Sheet, f chemicals.Formula) working.Num {
	var terms []working.Num
	for _, el := range f.Order {
		switch el {
		case "O":
			return working.Exact("h", "mol/mol", 0, f.Text+" is an oxide")
		case "C", "N", "B":
			continue
		}
		v := st.Num(datum.Of("valence", el)).As("v")
		if v.Unknown() {
			v = st.Num(datum.Of("electrons", el)).As("v")
		}
		i, _ := chemicals.ElementIndex(el)
		x := working.Exact("x", "mol/mol", f.Of[i], el+" per formula unit")
		terms = append(terms, w.Line("v_"+el, "mol/mol", "x*v", x.V*v.V, x, v))
	}
	all := w.Sum("v", "mol/mol", terms...)
	return w.Line("h", "mol/mol", "v/2", all.V/2, all).Worse(working.Bound)
}

// MX is the composition that stays in the layers.
func (l *Layered) MX() chemicals.Composition {
	var c chemicals.Composition
	for _, p := range append(append([]Part(nil), l.M...), l.X...) {
		if i, ok := chemicals.ElementIndex(p.Symbol); ok {
			c[i] += p.Count
		}
	}
	return c
}
