package classifying

import "slices"

// Together is what two classified mixtures that stand in one container after each other have
// between them: of each family the severest class, and all that is not held.
func (c Classified) Together(o Classified) Classified {
	out := Classified{NotHeld: slices.Clone(c.NotHeld)}
	for _, name := range o.NotHeld {
		if !slices.Contains(out.NotHeld, name) {
			out.NotHeld = append(out.NotHeld, name)
		}
	}
	for _, family := range held().families {
		var worst *Found
		for _, all := range [...][]Found{c.Classes, o.Classes} {
			for i := range all {
				if f := &all[i]; f.Class.Family == family && (worst == nil || f.Class.Rank < worst.Class.Rank) {
					worst = f
				}
			}
		}
		if worst != nil {
			out.Classes = append(out.Classes, *worst)
		}
	}
	return out.implied()
}
