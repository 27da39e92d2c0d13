package aqueous

import (
	"errors"
	"math"
	"slices"
)

// frame writes the species with the most abundant ones that suffice, after what is held
// at a fixed activity has been taken out. Each equation then is a balance that one large
// amount rules, and its logarithm is almost straight.
type frame struct {
	base     []int // species the others are written with
	side     side  // activities
	rows     *side // balances: the same, unless a reagent keeps the pH
	own      side
	constant []float64 // ln of a species where all of base are 1
	ofWater  []float64 // its power of the activity of water
	draws    []float64 // water that a mol of it takes out of the balance of water
	tau      []float64 // what each balance adds up to, mol
	shares   []float64 // mol of each hold by the totals alone
	sorted   []uint64  // species by amount
}

// side is one way of writing: for each species its counts of base, and of holds.
type side struct {
	held, n int
	v       []float64 // column by column: species, then what else was carried along
	length  int
	pivot   []int     // the column of each hold, then of each of base
	weight  []float64 // of each column when one is chosen
	base    []int     // species that became the coordinates
	some    []int32   // what of a column is not 0, while it is taken
	lists             // of base in each species
	toSide  []int32   // of each of these: twice the base, and 1 more where it counts less than nothing
	size    []float64 // of each of these, above 0
}

// errSame is two holds that fix the same thing.
var errSame = errors.New("two of what is held fix the same activity")

// write eliminates: holds first, then species in the order of their amounts.
func (s *side) write(w *work, order []uint64, extra []float64, holds func(*hold) []float64) ([]int, error) {
	nc, ns := len(w.comp), len(w.spec)
	s.held, s.n, s.length = len(w.active), nc-len(w.active), len(w.active)+ns+1
	s.v = grow(s.v, nc*s.length)
	for j := range w.comp {
		col := s.v[j*s.length : (j+1)*s.length]
		for k, a := range w.active {
			col[k] = holds(&w.holds[a])[j]
		}
		copy(col[s.held:], w.counts[j*ns:(j+1)*ns])
		col[s.held+ns] = extra[j]
	}
	s.neutral(w)
	s.pivot = s.pivot[:0]
	var used uint32
	// The amount of a hold is told best by the scarcest of what it is made of.
	s.weight = grow(s.weight, nc)
	s.weight[0] = 1e-30 // the balance of H+ holds too many others to tell an amount
	for j := 1; j < nc; j++ {
		s.weight[j] = 1 / math.Max(math.Abs(extra[j]), 1e-25)
	}
	for k := range w.active {
		if !s.take(k, &used) {
			return nil, errSame
		}
	}
	for j := range s.weight {
		s.weight[j] = 1
	}
	base := s.base[:0]
	for _, key := range order {
		if len(base) == s.n {
			break
		}
		i := int(key & speciesBits)
		if s.take(s.held+i, &used) {
			base = append(base, i)
		}
	}
	s.base = base
	s.gather(ns)
	return base, nil
}

// neutral puts charges in the place of H+: everything that comes together is neutral, so
// their balance adds up to nothing exactly, where that of H+ would be a small difference of
// large amounts.
func (s *side) neutral(w *work) {
	for k := range w.active {
		for j, c := range w.comp[1:] {
			s.v[k] += w.m.known.rows[c].charge * s.v[(j+1)*s.length+k]
		}
	}
	copy(s.v[s.held:], w.charge)
	s.v[s.length-1] = 0
}

// take makes a row the unit of a column that is still free.
func (s *side) take(row int, used *uint32) bool {
	nc := len(s.v) / s.length
	best, at := 0.0, -1
	for j := range nc {
		a := math.Abs(s.v[j*s.length+row])
		if *used>>j&1 == 0 && a > 1e-9 && a*s.weight[j] > best {
			best, at = a*s.weight[j], j
		}
	}
	if at < 0 {
		return false
	}
	*used |= 1 << at
	s.pivot = append(s.pivot, at)
	p := s.v[at*s.length : (at+1)*s.length]
	some := scaled(p, 1/p[row], s.some[:0])
	s.some = some
	for j := range nc {
		if j == at {
			continue
		}
		col := s.v[j*s.length : (j+1)*s.length]
		if f := col[row]; f != 0 {
			for _, at := range some {
				i := int(at)
				if col[i] -= f * p[i]; math.Abs(col[i]) < 1e-12 && i < s.length-1 {
					col[i] = 0
				}
			}
		}
	}
	return true
}

// gather lists for each species what of base it counts.
func (s *side) gather(ns int) {
	if cap(s.at) <= ns {
		s.at = make([]int32, ns+1)
	}
	s.at = s.at[:ns+1]
	clear(s.at)
	many := 0
	for b := range s.n {
		for i, v := range s.row(s.held+b, ns) {
			if v != 0 {
				s.at[i]++
				many++
			}
		}
	}
	s.which, s.count = slices.Grow(s.which[:0], many)[:many], slices.Grow(s.count[:0], many)[:many]
	s.toSide, s.size = slices.Grow(s.toSide[:0], many)[:many], slices.Grow(s.size[:0], many)[:many]
	sum := int32(0)
	for i, n := range s.at {
		s.at[i], sum = sum, sum+n
	}
	for b := range s.n {
		for i, v := range s.row(s.held+b, ns) {
			if v != 0 {
				at := s.at[i]
				s.which[at], s.count[at], s.size[at] = int32(b), v, math.Abs(v)
				s.toSide[at] = int32(2*b) + int32(math.Float64bits(v)>>63)
				s.at[i]++
			}
		}
	}
	copy(s.at[1:], s.at[:ns])
	s.at[0] = 0
}

// row is how much of a coordinate (hold, then base) each species counts.
func (s *side) row(coordinate, ns int) []float64 {
	from := s.pivot[coordinate]*s.length + s.held
	return s.v[from : from+ns]
}

// of is how much of a coordinate (hold, then base) species i counts.
func (s *side) of(coordinate, i int) float64 {
	return s.v[s.pivot[coordinate]*s.length+s.held+i]
}

func grow(v []float64, n int) []float64 {
	if cap(v) < n {
		return make([]float64, n)
	}
	return v[:n]
}

// loose are the masters and the water that are in solution, or in what forms there: what
// is in solids that stay is left out, since it would drown what they dissolve into.
func (w *work) loose() (total []float64, water float64) {
	total, water = slices.Clone(w.total), w.water
	for k := range w.holds {
		if h := &w.holds[k]; !h.on && h.start > 0 {
			for j, n := range h.brings {
				total[j] += h.start * n
			}
			water += h.start * h.bringWater
		}
	}
	return total, water
}

// refer writes everything anew, after ln of the species.
func (w *work) refer() error {
	order := w.order()
	ns := len(w.spec)
	total, water := w.loose()
	base, err := w.side.write(w, order, total, func(h *hold) []float64 { return h.act })
	if err != nil {
		return err
	}
	w.base, w.rows = base, &w.side
	for _, k := range w.active {
		if w.holds[k].row < 0 {
			w.rows = &w.own
			if _, err := w.own.write(w, order, total, func(h *hold) []float64 { return h.brings }); err != nil {
				return err
			}
		}
	}
	room := grow(w.constant, 3*(ns+1)+len(w.comp))
	w.constant, w.ofWater, w.draws = room[:ns+1], room[ns+1:2*(ns+1)], room[2*(ns+1):3*(ns+1)]
	last := w.rows.held + ns
	w.tauWater, w.shares, w.tau = water, w.shares[:0], w.tau[:0]
	for k, a := range w.active {
		share := w.rows.v[w.rows.pivot[k]*w.rows.length+last]
		w.shares = append(w.shares, share)
		w.tauWater -= share * w.holds[a].bringWater
	}
	for b := range w.rows.n {
		w.tau = append(w.tau, w.rows.v[w.rows.pivot[w.rows.held+b]*w.rows.length+last])
	}
	for i, r := range w.spec {
		e := &w.m.known.rows[r]
		w.constant[i], w.ofWater[i], w.draws[i] = w.m.ln[r], e.water, e.water
		for k, a := range w.active {
			h := &w.holds[a]
			f := w.side.of(k, i)
			w.constant[i] += f * h.ln
			w.ofWater[i] -= f * h.actWater
			w.draws[i] -= w.rows.of(k, i) * h.bringWater
		}
	}
	return nil
}

// best reports whether the others could not be written with more abundant species.
func (w *work) best() bool {
	s := &w.side
	for i := range w.spec {
		for at := s.at[i]; at < s.at[i+1]; at++ {
			if w.ln[i] > w.ln[w.base[s.which[at]]]+margin {
				return false
			}
		}
	}
	return true
}

// margin is how much more abundant, in ln, a species has to be to take the place of another:
// ln of finest over 2.2e-16, what a number keeps of itself. A balance written by a species so
// much scarcer than another in it is a difference of amounts that are so much larger, and ends
// as near as finest asks; with a scarcer one it would not. Anything less costs a new writing
// for nothing: drawn mixtures take as many steps with 0.1 as with 10.
const margin = 6.1

// unfold gives ln a of the masters of ln a of base.
func (w *work) unfold() {
	for j := range w.comp { // masters stand first among the species
		x := 0.0
		for k, a := range w.active {
			h := &w.holds[a]
			x += w.side.of(k, j) * (h.ln - h.actWater*w.lnWater)
		}
		for at := w.side.at[j]; at < w.side.at[j+1]; at++ {
			x += w.side.count[at] * w.u[w.side.which[at]]
		}
		w.x[j] = x
	}
}

// amounts gives the mol of each hold that is on.
func (w *work) amounts() {
	for k, a := range w.active {
		n := w.shares[k]
		for i := range w.spec {
			n -= w.mol[i] * w.rows.of(k, i)
		}
		if w.space > 0 {
			n -= w.mol[len(w.spec)] * w.rows.of(k, w.carbonAt())
		}
		w.holds[a].moved = n
	}
}
