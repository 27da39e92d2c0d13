package process

import (
	"etchbound/chemicals"
	"etchbound/chemicals/working"
)

// Acids is what of a liquor can leave it as a vapour, as it was charged: what a
// reaction took is not credited.
type Acids struct {
	HF, HCl, Water working.Num // mol
	Salt           working.Num // mol of fluoride salt that can take up strong acid
	Fluoride       working.Num // mol of fluorine in all of it
	Ammonium       working.Num // mol
	Ammonia        working.Num // mol of it that base has set free; none where acid is left that takes base first
	Acids          int         // kinds of volatile acid
	Bifluoride     working.Num // mol of a salt that is half an acid; not there where it has no symbol
	Salted         bool        // there is such a salt
	Fluorine       bool        // there is any fluoride
	Chloride       bool        // there is hydrochloric acid
	Ammoniac       bool        // there is ammonium or ammonia
	Other          string      // something whose part in it is not known
	Neutral        bool        // base has taken all the acid
	Unsure         bool        // nobody knows whether it has
}

// AcidsIn adds up the liquid of a place.
func AcidsIn(w *working.Sheet, s *State) Acids {
	var l Acids
	var hf, hcl, water, salt, half, fluorine, ammonium []working.Num
	left := 0.0
	for i := range s.Liquid {
		q := &s.Liquid[i]
		for j := range q.Entries {
			e := &q.Entries[j]
			n := PartOf(w, q, e.N)
			left += e.Base * n.V
			if e.Sub == nil {
				continue
			}
			if e.Sub.NotHeld {
				fluorine, hcl, ammonium = mayHold(n, e, fluorine, hcl, ammonium)
				l.Other = e.Sub.Name
				continue
			}
			if f := times(w, n, e.Sub, "F"); !f.None() {
				fluorine = append(fluorine, f)
			}
			if e.Sub.Ammonium > 0 {
				ammonium = append(ammonium, n)
			}
			switch {
			case e.Sub.Solution == "hf":
				hf = append(hf, n)
			case e.Sub.Solution == "hcl":
				hcl = append(hcl, n)
			case e.Sub.Solution == "water":
				water = append(water, n)
			case e.Sub.Liquor == "salt":
				salt = append(salt, n)
				l.Salted = true
			case e.Sub.Liquor == "half_acid":
				half = append(half, n)
			default:
				l.Other = e.Sub.Name
			}
		}
	}
	l.HF, l.HCl = w.Sum("n_HF", "mol", hf...), w.Sum("n_HCl", "mol", hcl...)
	l.Water, l.Salt = w.Sum("n_w", "mol", water...), w.Sum("n_s", "mol", salt...)
	l.Fluoride, l.Ammonium = w.Sum("n_F", "mol", fluorine...), w.Sum("n_N", "mol", ammonium...)
	l.Fluorine, l.Chloride, l.Ammoniac = fluorine != nil, hcl != nil, ammonium != nil
	if half != nil {
		l.Bifluoride = w.Sum("n_b", "mol", half...)
	}
	for _, x := range [][]working.Num{hf, hcl} {
		if len(x) > 0 {
			l.Acids++
		}
	}
	l.Neutral, l.Unsure = left <= 0, left != left
	l.Ammonia = l.freed(w, left)
	return l
}

// freed is the ammonia that base has set free of ammonium, mol: all of it where base has taken
// all there is to take or nobody knows; else as far as the acid left is less than the ammonium,
// which gives up its proton last.
func (l *Acids) freed(w *working.Sheet, left float64) working.Num {
	switch {
	case !l.Ammoniac:
		return working.Num{}
	case l.Neutral, l.Unsure:
		return l.Ammonium
	case l.Ammonium.V-left <= rounding*l.Ammonium.V:
		return working.Num{}
	}
	n, a := l.Ammonium.As("n_N"), w.Model("n_a", "mol", "acid left, ammonium among it", left, l.Ammonium)
	return w.Line("n_N", "mol", "n_N-n_a", n.V-left, n, a)
}

// mayHold adds what a substance that is not held can bring of fluoride, chloride
// and ammonium: nobody knows how much.
func mayHold(n working.Num, e *Entry, fluorine, hcl, ammonium []working.Num) (f, c, a []working.Num) {
	none := working.Absent(n.Symbol, "mol", e.Sub.Lacks())
	f, c, a = fluorine, hcl, ammonium
	if e.Sub.May("F") {
		f = append(f, none)
	}
	if e.Sub.May("Cl") {
		c = append(c, none)
	}
	if e.Sub.May("N") {
		a = append(a, none)
	}
	return f, c, a
}

// times is the amount of an element that n mol of a substance bring; nothing
// where it holds none.
func times(w *working.Sheet, n working.Num, sub *chemicals.Substance, element string) working.Num {
	at, ok := chemicals.ElementIndex(element)
	if !ok || sub.Formula.Of[at] == 0 {
		return working.Num{}
	}
	if sub.Formula.Of[at] == 1 {
		return n
	}
	x, m := working.Exact("x", "mol/mol", sub.Formula.Of[at], element+" per formula unit of "+sub.Name), n.As("n")
	return w.Line("n_"+element, "mol", "x*n", x.V*m.V, x, m)
}
