package process

import (
	"etchbound/chemicals/working"
)

// CarriesFlakes reports whether a place holds liquid with product in it, or may: one
// that was parted from product without a word on which of the two carries it.
func (s *State) CarriesFlakes() bool {
	return len(s.Liquid) > 0 && (s.MayCarry > 0 || len(pick(s.Solids, Product)) > 0)
}

// MayHold is the product that a place holds, or all that its liquid may carry where nobody
// says which of two parted streams carries it; may tells that it is the latter.
func (k *Walk) MayHold(s *State) (made []Solid, may bool) {
	for _, i := range pick(s.Solids, Product) {
		made = append(made, s.Solids[i])
	}
	if len(made) > 0 || s.MayCarry == 0 {
		return made, false
	}
	for i := range k.Steps {
		d := &k.Steps[i]
		if d.Number != s.MayCarry {
			continue
		}
		for _, x := range [...]*State{&d.After, d.Filled, &d.Before} {
			if x == nil {
				continue
			}
			for _, j := range pick(x.Solids, Product) {
				made = append(made, x.Solids[j])
			}
			if made == nil && x.MayCarry > 0 && x.MayCarry < s.MayCarry {
				made, _ = k.MayHold(x)
			}
			if made != nil {
				return made, true
			}
		}
	}
	return nil, false
}

// Doubted is what has to be known to say whether solid of a place has reacted, and so
// whether there is product in it; nothing where that is known.
func (s *State) Doubted() working.Missing {
	if m := doubted(s); !m.IsZero() ||
		len(pick(s.Solids, Unetched))+len(pick(s.Solids, Residual))+len(pick(s.Solids, Based)) == 0 {
		return m
	}
	for i := range s.Solids {
		if x := &s.Solids[i]; x.Kind != Product && x.mayBeMade() && len(x.N.Missing()) > 0 {
			return x.N.Missing()[0]
		}
	}
	for i := range s.Liquid {
		if s.Liquid[i].Unfollowed {
			return working.Lacks("metal_not_followed", "")
		}
	}
	return working.Missing{}
}

// Left is the hydrogen, mol, that powder which the etch left can still give in a
// place: a term for each such solid and each etch.
func Left(w *working.Sheet, k *Walk, s *State) []working.Num {
	var out []working.Num
	for i := range s.Solids {
		x := &s.Solids[i]
		if x.Kind != Residual && x.Kind != Based {
			continue
		}
		if x.N.Unknown() {
			return append(out, x.N.As("n_H2"))
		}
		for j := range k.Etches {
			e := &k.Etches[j]
			if e.N.None() || e.Product.Hydrogen.None() {
				continue
			}
			n, h := x.N.As("n"), e.Product.Hydrogen.As("h")
			out = append(out, w.Line("n_H2", "mol", "n*h", n.V*h.V, n, h))
		}
	}
	return out
}
