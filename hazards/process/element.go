package process

import "etchbound/chemicals"

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
