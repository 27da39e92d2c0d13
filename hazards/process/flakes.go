package process

import (
	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// Ways is how many ways the carbon of flakes that degrade goes: it stays, leaves as methane,
// or as carbon dioxide, which nobody expects.
const Ways = 3

// Degraded is what a mol of flakes gives once all of it is oxide, mol/mol.
type Degraded struct {
	Carbon, Nitrogen  working.Num // methane or carbon dioxide, where it leaves; ammonia
	Fluorine, Halides working.Num // fluorine, and all halides
	Hydrogen          [Ways]working.Num
}

// DegradedOf is the balance of the elements of some flakes:
//
//	H2 = max((h + 2 w + y c - 3 n - d)/2, 0), w = max(sum of z m/2 - o, 0)
//
// with y 0, -4 and 4 by the way the carbon goes (package storage).
func DegradedOf(st *chemicals.Store, sheet *working.Sheet, k *Walk, x *Solid) Degraded {
	of := func(symbols ...string) working.Num {
		v := 0.0
		for _, el := range symbols {
			if i, ok := chemicals.ElementIndex(el); ok {
				v += x.Of[i]
			}
		}
		return working.Exact("x", "mol/mol", v, "of the flakes")
	}
	var oxide []working.Num
	for _, m := range k.Layered.M {
		z, y := st.Num(datum.Of("storage.valence", m.Symbol)).As("z"), of(m.Symbol).As("m")
		oxide = append(oxide, sheet.Line("o", "mol/mol", "z*m/2", z.V*y.V/2, z, y))
	}
	for _, el := range k.Layered.X {
		if el.Symbol != "C" && el.Symbol != "N" {
			oxide = append(oxide, working.Absent("o", "mol/mol", working.LacksDatum(datum.Of("storage.valence", el.Symbol))))
		}
	}
	need, o := sheet.Sum("O", "mol/mol", oxide...), of("O").As("o")
	w := sheet.Line("w", "mol/mol", "max(O-o,0)", max(need.V-o.V, 0), need, o)
	h, c, n, d := of("H").As("h"), of("C").As("c"), of("N").As("n"), of("F", "Cl", "Br", "I").As("d")
	b := Degraded{Carbon: c, Nitrogen: n, Fluorine: of("F"), Halides: d}
	for i, from := range [Ways]float64{0, -4, 4} {
		y := working.Exact("y", "1", from, "hydrogen with each carbon")
		b.Hydrogen[i] = sheet.Line("H2", "mol/mol", "max((h+2*w+y*c-3*n-d)/2,0)",
			max((h.V+2*w.V+from*c.V-3*n.V-d.V)/2, 0), h, w, y, c, n, d)
	}
	return b
}

// Ages is the gas, mol, that flakes give which stand in a place with liquid, once all of them
// have degraded, their carbon kept or gone as methane, whichever is more, all of which burns;
// none where there are none. Of what nobody can tell it is not known.
func Ages(st *chemicals.Store, w *working.Sheet, k *Walk, s *State) working.Num {
	if len(s.Liquid) == 0 {
		return working.Num{}
	}
	if m := s.Doubted(); !m.IsZero() {
		return working.Absent("n_g", "mol", m)
	}
	made, _ := k.MayHold(s)
	var out []working.Num
	for i := range made {
		b, n := DegradedOf(st, w, k, &made[i]), made[i].N.As("n")
		h, m, c := b.Hydrogen[0].As("h"), b.Hydrogen[1].As("m"), b.Carbon.As("c")
		out = append(out, w.Line("n_g", "mol", "n*max(h,m+c)", n.V*max(h.V, m.V+c.V), n, h, m, c))
	}
	if out == nil {
		return working.Num{}
	}
	return w.Sum("n_g", "mol", out...)
}
