package aqueous

import (
	"math"
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
	least float64 // share of a balance that counts in slopes
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
	w := &work{m: m, water: water, cast: m.cast(some), least: negligible}
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
	kinds  []ion     // of these, one of each
	kind   []int32   // of each of them
	counts []float64 // of masters in these, master by master
	charge []float64 // of each
	made   lists     // masters that are in each, as they stand in comp
}

// lists hold for each of a row of things what it counts, but what it counts nothing of.
type lists struct {
	at    []int32 // where that of each begins, and at the end where the last ends
	which []int32
	count []float64
}

// casts are the last that were asked for, each in the place that its masters give it: what
// is treated or rinsed is asked for over and over with the same ones.
type casts [16]atomic.Pointer[cast]

func (m *Model) cast(some uint32) *cast {
	at := &m.casts[some*2654435761>>28]
	if c := at.Load(); c != nil && c.some == some {
		return c
	}
	c := &cast{some: some, spec: make([]int, 0, len(m.species))}
	for j := range m.known.masters {
		if some>>j&1 == 1 {
			c.comp = append(c.comp, j)
		}
	}
	for _, i := range m.species {
		if m.known.rows[i].present&^some == 0 {
			kind := slices.Index(c.kinds, m.ions[i])
			if kind < 0 {
				kind, c.kinds = len(c.kinds), append(c.kinds, m.ions[i])
			}
			c.spec, c.kind = append(c.spec, i), append(c.kind, int32(kind))
		}
	}
	c.counts = make([]float64, len(c.comp)*len(c.spec))
	for i, r := range c.spec {
		e := &m.known.rows[r]
		c.made.at, c.charge = append(c.made.at, int32(len(c.made.which))), append(c.charge, e.charge)
		for j, k := range c.comp {
			if n := e.of[k]; n != 0 {
				c.counts[j*len(c.spec)+i] = n
				c.made.which, c.made.count = append(c.made.which, int32(j)), append(c.made.count, n)
			}
		}
	}
	c.made.at = append(c.made.at, int32(len(c.made.which)))
	at.Store(c)
	return c
}

// order sorts species by amount, largest first. What stands in the last digits of an amount
// is where the species stands: to sort numbers takes a third of what comparing them does.
func (w *work) order() []uint64 {
	out := w.sorted[:0]
	for i, ln := range w.ln[:len(w.spec)] {
		bits := math.Float64bits(ln)
		if bits>>63 == 0 { // above 0: the largest number has the least key
			bits = ^bits &^ (1 << 63)
		}
		out = append(out, bits&^speciesBits|uint64(i))
	}
	w.sorted = out
	slices.Sort(out)
	return out
}

// speciesBits are the digits that tell a species in what order gives.
const speciesBits = 1<<10 - 1
