package process

import (
	"etchbound/chemicals"
	"etchbound/chemicals/working"
)

// Moles is how much of an element a place holds, mol, as the account counts it: what is
// not known is not in it.
func (s *State) Moles(symbol string) float64 {
	i, held := chemicals.ElementIndex(symbol)
	if !held {
		return 0
	}
	c := contents(s)
	return c[i]
}

// TakenUp is the fluorine on the solids of a place, mol: what nobody has measured how much
// it is, and what counts as dissolved while they lie in the etch liquor.
func TakenUp(w *working.Sheet, s *State) []working.Num {
	i, _ := chemicals.ElementIndex("F")
	var out []working.Num
	for j := range s.Solids {
		if x := s.Solids[j].Of[i]; x != 0 {
			n, y := s.Solids[j].N.As("n"), working.Exact("y", "mol/mol", x, "fluorine taken up per formula unit")
			out = append(out, w.Line("n_F", "mol", "n*y", n.V*y.V, n, y))
		}
	}
	return out
}
