package aqueous

import (
	"slices"
	"sync/atomic"
)

// work is one solution being looked for.
type work struct {
	m *Model
	*cast
	total   []float64 // mol of each master, dissolved or not
	water   float64   // mol of water, bound or not
	fixed   bool      // 1 kg of water is there, whatever else happens
	holds   []hold
	lists   []float64 // room for what holds are made of
	active  []int     // holds that are on
	space   float64
	x       []float64 // ln a of masters
	lnI     float64   // of the ionic strength, mol/kg
	lnWater float64   // of the activity of water
	lnKg    float64   // of the kg of water
	ln      []float64 // of molalities
	mol     []float64 // of species, and of the gas of a rigid space behind them
	gasZ    float64   // ln of fugacity coefficient times compressibility
	found
	*desk
	steps int
}

// found is what the last evaluation left that an answer is told with.
type found struct {
	charges, sum float64 // sum m z^2, sum m
	drawn        float64 // mol of water in species, per kg
	tauWater     float64 // mol of water that is not in what is held
}

// desk is the room that a search writes in. It goes back when the search is over, so that
// the next one finds it and nothing is made anew.
type desk struct {
	frame
	newton
	start
}

// sit takes a desk; the function it returns leaves it.
func (w *work) sit() (leave func()) {
	w.desk = w.m.desks.Get().(*desk)
	return func() {
		w.m.desks.Put(w.desk)
		w.desk = nil
	}
}

const perKg = 55.506 // mol of water in 1 kg, as the source of the constants takes it

// newWork makes room for the masters that have something in them.
func (m *Model) newWork(total []float64, water float64, some uint32) *work {
	w := &work{m: m, water: water, cast: m.cast(some)}
	n, nc := len(w.spec)+1, len(w.comp)
	room := make([]float64, 2*(n+nc))
	w.ln, w.mol, w.x, w.total = room[:n], room[n:2*n], room[2*n:2*n+nc], room[2*n+nc:]
	for k, j := range w.comp {
		w.total[k] = total[j]
	}
	return w
}

// cast is who there can be where there is something of some masters. It does not change.
type cast struct {
	some   uint32
	comp   []int     // masters present, H+ first
	spec   []int     // rows of species present, masters first and in the order of comp
	ions   []ion     // of these
	counts []float64 // of masters in these, master by master
}

// casts are the last that were asked for, each in the place that its masters give it: what
// is treated or rinsed is asked for over and over with the same ones.
type casts [16]atomic.Pointer[cast]

func (m *Model) cast(some uint32) *cast {
	at := &m.casts[some*2654435761>>28]
	if c := at.Load(); c != nil && c.some == some {
		return c
	}
	c := &cast{some: some, spec: make([]int, 0, len(m.species)), ions: make([]ion, 0, len(m.species))}
	for j := range m.known.masters {
		if some>>j&1 == 1 {
			c.comp = append(c.comp, j)
		}
	}
	for _, i := range m.species {
		if m.known.rows[i].present&^some == 0 {
			c.spec, c.ions = append(c.spec, i), append(c.ions, m.ions[i])
		}
	}
	c.counts = make([]float64, len(c.comp)*len(c.spec))
	for i, r := range c.spec {
		for j, k := range c.comp {
			c.counts[j*len(c.spec)+i] = m.known.rows[r].of[k]
		}
	}
	at.Store(c)
	return c
}

// order sorts species by amount, largest first.
func (w *work) order() []int {
	out := w.sorted[:0]
	for i := range w.spec {
		out = append(out, i)
	}
	w.sorted = out
	slices.SortFunc(out, func(a, b int) int {
		switch {
		case w.ln[a] > w.ln[b]:
			return -1
		case w.ln[a] < w.ln[b]:
			return 1
		}
		return a - b
	})
	return out
}
