package process

import "math"

// Wet reports whether there is any liquid in a pool, or may be.
func (q *Pool) Wet() bool {
	if q.Volume.V != 0 { // unknown is not none
		return true
	}
	for i := range q.Entries {
		switch s := q.Entries[i].Sub; {
		case s == nil:
		case s.NotHeld, s.Solution == "water" && !(math.Abs(q.Entries[i].N.V) <= 0):
			return true
		}
	}
	return false
}

// wetted keeps solids that lie dry from going into solution, and lets those that lay
// dry go into the liquid that has come to them.
func (k *walker) wetted(q *Pool, mix *Mixing) {
	if !q.Wet() {
		for _, salt := range mix.Salts {
			for i := range q.Entries {
				if q.Entries[i].Sub == salt.Sub {
					q.Entries[i].Dry = true
				}
			}
		}
		mix.Salts = nil
		return
	}
	for i := range q.Entries {
		e := &q.Entries[i]
		if !e.Dry {
			continue
		}
		e.Dry = false
		at := -1
		for j := range mix.Salts {
			if mix.Salts[j].Sub == e.Sub { // more of the same comes with the liquid
				at = j
			}
		}
		all := Entry{Name: e.Name, Sub: e.Sub, N: PartOf(k.w, q, e.N), Acid: e.Acid}
		if mix.Fed = true; at < 0 {
			mix.Salts = append(mix.Salts, all)
			continue
		}
		mix.Salts[at] = all
	}
}
