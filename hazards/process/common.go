package process

import (
	"maps"
	"slices"
	"sync"

	"etchbound/chemicals"
)

// Common is what some routes begin with: their first steps, and all that is no step, are the
// same. A walk of one of them, with data that have the same values there, goes on from where
// an earlier one stood before the first step that differs. It is safe for use by several
// goroutines.
type Common struct {
	steps int
	mu    sync.Mutex
	stood []stood
}

// stood is a walk as it stood, and what it had read.
type stood struct {
	k     *walker
	reads *chemicals.Reads
}

// Until is for routes whose first steps, so many of them, are the same.
func Until(steps int) *Common { return &Common{steps: steps} }

// From are the same meetings, of a route with such a beginning.
func (m Meetings) From(c *Common) Meetings {
	m.common = c
	return m
}

// begun is a walk that has the beginning behind it, nil where none with these data is kept. What
// the beginning reads counts as read.
func (c *Common) begun(st *chemicals.Store) *walker {
	c.mu.Lock()
	defer c.mu.Unlock()
	for i := range c.stood {
		if x := &c.stood[i]; x.reads.Same(st) {
			st.Note(x.reads)
			return x.k.copy()
		}
	}
	return nil
}

// kept is how many walks are kept as they stood: the first, which move one datum each.
const kept = 64

// keep keeps a walk as it stands, unless nobody notes what it reads, or it depends on steps to come.
func (c *Common) keep(k *walker) {
	reads := k.st.Noted()
	if reads == nil || k.ahead {
		return
	}
	now := k.copy()
	c.mu.Lock()
	defer c.mu.Unlock()
	if len(c.stood) < kept {
		c.stood = append(c.stood, stood{now, reads})
	}
}

// copy is a walk that goes on for itself: neither changes what the other has.
func (k *walker) copy() *walker {
	c := *k
	c.places = make(map[string]*State, len(k.places))
	for key, p := range k.places {
		s := p.copy()
		for i := range s.Liquid {
			s.Liquid[i].More = slices.Clip(s.Liquid[i].More)
		}
		c.places[key] = &s
	}
	c.touched, c.passing = slices.Clone(k.touched), slices.Clone(k.passing)
	c.told, c.aged, c.strange = maps.Clone(k.told), maps.Clone(k.aged), maps.Clone(k.strange)
	c.often = maps.Clone(k.often)
	for place, m := range c.often {
		c.often[place] = slices.Clip(m)
	}
	c.unclosed, c.decanted = slices.Clip(k.unclosed), slices.Clip(k.decanted)
	out := &c.out
	out.Steps, out.Etches = slices.Clip(out.Steps), slices.Clone(out.Etches)
	out.Releases, out.Evolved = slices.Clip(out.Releases), slices.Clip(out.Evolved)
	out.Washes, out.Treated = slices.Clip(out.Washes), slices.Clip(out.Treated)
	out.Warnings, out.Open = slices.Clip(out.Warnings), slices.Clip(out.Open)
	out.Facts, out.Fullest = slices.Clone(out.Facts), slices.Clone(out.Fullest)
	return &c
}
