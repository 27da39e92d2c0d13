package draft

import "slices"

// Whereabouts is how much of an element a place holds after each step of the walk, mol.
type Whereabouts struct {
	Place string
	Moles []float64
}

// MolarFluorine is the mass of fluorine, g/mol.
const MolarFluorine = 18.998403163

// Where is where an element is after each step, by the places that ever hold any, in the
// order in which they come to.
func (b *Draft) Where(element string) []Whereabouts {
	var out []Whereabouts
	now := map[string]float64{}
	steps := b.Review.Walk.Steps
	for i := range steps {
		d := &steps[i]
		now[d.Place] = d.After.Moles(element)
		if d.Filled != nil {
			now[d.Filled.Place] = d.Filled.Moles(element)
		}
		keys := []string{d.Place}
		if d.Filled != nil {
			keys = append(keys, d.Filled.Place)
		}
		for _, key := range keys {
			if now[key] > leastHeld && !slices.ContainsFunc(out, func(h Whereabouts) bool { return h.Place == key }) {
				out = append(out, Whereabouts{key, make([]float64, len(steps))})
			}
		}
		for k := range out {
			out[k].Moles[i] = now[out[k].Place]
		}
	}
	return out
}

// leastHeld is the amount in mol below which a place counts as holding none.
const leastHeld = 1e-9
