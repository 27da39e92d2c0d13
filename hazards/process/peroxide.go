package process

import "etchbound/chemicals/working"

// Oxygen is what the peroxides and peroxydisulfates of a place can give by themselves at the
// most, mol: half a mol of each.
func Oxygen(w *working.Sheet, s *State) working.Num {
	var terms []working.Num
	for i := range s.Liquid {
		q := &s.Liquid[i]
		for j := range q.Entries {
			e := &q.Entries[j]
			if e.Sub == nil || !e.Sub.Is("peroxide") && !e.Sub.Is("persulfate") {
				continue
			}
			n := PartOf(w, q, e.N).As("n")
			terms = append(terms, w.Line("n", "mol", "n/2", n.V/2, n))
		}
	}
	return w.Sum("n_O2", "mol", terms...)
}

// MostOxygen is that of the step at which a place holds most, and the place as it then is; nil
// where it never holds any.
func (k *Walk) MostOxygen(w *working.Sheet, key string) (most working.Num, at *State) {
	for i := range k.Steps {
		d := &k.Steps[i]
		for _, s := range [...]*State{&d.After, d.Filled} {
			if s == nil || s.Place != key {
				continue
			}
			if n := Oxygen(w, s); n.V != 0 && (at == nil || n.Unknown() || !most.Unknown() && n.V > most.V) {
				most, at = n, s
			}
		}
	}
	return most, at
}
