package aqueous

import (
	"math"
	"slices"
)

// start is a first guess that needs no luck: where everything would go if each species
// had a fixed worth (its constant, at the concentration that the scarcest of what it is
// made of allows). That is a linear program; it begins with the bare ions, and each
// exchange of one species for another that is worth more is one step of the simplex.
// What it ends with are the solids to begin with and the species that hold most.
type start struct {
	t      []float64 // what each of those in use counts, column by column: all, then amounts
	length int
	worth  []float64 // as it counts now
	gain   []float64 // of coming into use
	full   []float64 // at the concentration that is allowed
	in     []int     // who is in use, by column
	some   []int32   // what of a column is not 0, while it is taken
	kept   []bool    // who stays in use
}

const (
	exchanges = 100
	scarce    = 1e-14 // mol: less is no amount to begin with
	ofAcid    = 1e-4  // mol/kg of H+ and OH- that their worth takes
)

// beginning is how often the program is solved, each time with worths at the amounts of
// the last, and the amount that a species in use without any is valued at, mol.
type beginning struct {
	rounds int
	trace  float64
}

// beginnings are taken in this order until one leads to an end.
var beginnings = [...]beginning{{4, 1e-5}, {1, 1}, {2, 1e-3}, {6, 1e-3}, {4, 1e-9}}

// guess sets ln of the species and what settles. Species that are not in use get no
// amount: their order is by worth.
func (w *work) guess(from beginning) {
	kg := math.Max(0.1, w.water/perKg)
	if w.fixed {
		kg = 1
	}
	w.lnKg, w.lnWater, w.gasZ = math.Log(kg), 0, 0
	total := w.likely()
	strength := 1e-7
	for j, i := range w.comp {
		z := w.m.known.rows[i].charge
		strength += 0.5 * z * z * math.Abs(total[j])
	}
	w.lnI = math.Log(math.Min(strength, 1))
	s := w.begin(total)
	for round := range from.rounds {
		s.weigh()
		n := 0
		for n < exchanges && s.exchange(len(w.spec)+len(w.holds)) {
			n++
		}
		w.revalue(s, from.trace, round > 0)
	}
	for i := range w.spec {
		w.ln[i] = -100 - s.worth[i]*1e-3
	}
	for k := range w.holds {
		w.holds[k].on = w.holds[k].free
	}
	for c, who := range s.in {
		if k := who - len(w.spec); k >= 0 {
			w.holds[k].on = true
		} else {
			w.ln[who] = math.Log(math.Max(s.t[(c+1)*s.length-1], 1e-8))
		}
	}
	w.active = w.active[:0]
	for k := range w.holds {
		if w.holds[k].on {
			w.active = append(w.active, k)
		}
	}
}

// begin has the bare ions in use, H+ or OH- by the sign of what they leave, and what is
// kept at a fixed activity, which is worth what it is worth.
func (w *work) begin(total []float64) *start {
	ns, nc, nh := len(w.spec), len(w.comp), len(w.holds)
	s := &w.start
	s.length = ns + nh + 1
	room := grow(s.worth[:0], 3*(ns+nh)+nc*s.length)
	s.worth, s.full, s.gain, s.t = room[:ns+nh], room[ns+nh:2*(ns+nh)], room[2*(ns+nh):3*(ns+nh)], room[3*(ns+nh):]
	s.in, s.kept = slices.Grow(s.in[:0], nc)[:nc], slices.Grow(s.kept[:0], ns+nh)[:ns+nh]
	clear(s.kept)
	for j := range w.comp {
		col := s.t[j*s.length : (j+1)*s.length]
		copy(col, w.counts[j*ns:(j+1)*ns])
		for k := range w.holds {
			col[ns+k] = w.holds[k].act[j]
		}
		s.in[j], col[s.length-1] = j, total[j]
	}
	for i, r := range w.spec {
		s.worth[i] = math.Log(w.allowed(i, total)) - w.m.ln[r]
	}
	for k := range w.holds {
		s.worth[ns+k] = w.holds[k].ln
	}
	copy(s.full, s.worth)
	for k := range w.holds {
		if h := &w.holds[k]; h.free {
			s.keep(ns+k, h)
		}
	}
	for c, who := range s.in {
		if who == 0 && s.t[(c+1)*s.length-1] < 0 {
			s.pivot(c, w.spot("OH-"))
		}
	}
	return s
}

// revalue sets the worth of the species in use by the amounts they have. Half way there after
// the first time: a whole way swings, H+ first as too much and then as too little.
func (w *work) revalue(s *start, trace float64, half bool) {
	for c, who := range s.in {
		if who < len(w.spec) {
			v := math.Log(math.Max(s.t[(c+1)*s.length-1], trace)) - w.m.ln[w.spec[who]]
			if half {
				v = 0.5 * (v + s.worth[who])
			}
			s.worth[who] = v
		}
	}
}

// allowed is the concentration at which a species is valued.
func (w *work) allowed(species int, total []float64) float64 {
	out := math.Inf(1)
	for at := w.made.at[species]; at < w.made.at[species+1]; at++ {
		if j, n := w.made.which[at], w.made.count[at]; j > 0 && n > 0 {
			out = math.Min(out, math.Max(total[j], scarce)/n)
		}
	}
	if math.IsInf(out, 1) {
		return ofAcid
	}
	return out
}

// spot is where a species stands.
func (w *work) spot(name string) int {
	row := w.m.known.byName[name]
	return slices.Index(w.spec, row)
}

// keep puts what is kept at a fixed activity in use for good: in place of the ion it is
// made of, of H+ only where it is nothing else.
func (s *start) keep(who int, h *hold) {
	at := -1
	for c, in := range s.in {
		if v := s.t[c*s.length+who]; v != 0 && in < len(h.act) && (at < 0 || s.in[at] == 0) {
			at = c
		}
	}
	if at >= 0 {
		s.kept[who] = true
		s.pivot(at, who)
	}
}

// weigh works out what each would gain, per mol, if it came into use.
func (s *start) weigh() {
	for i, v := range s.worth {
		s.gain[i] = -v
	}
	for c, in := range s.in {
		w := s.worth[in]
		for i, v := range s.t[c*s.length : c*s.length+len(s.worth)] {
			s.gain[i] += v * w
		}
	}
}

// exchange makes the step that gains most per mol; false where none gains.
func (s *start) exchange(all int) bool {
	best, who := 1e-9, -1
	for i, gain := range s.gain[:all] {
		if gain > best {
			best, who = gain, i
		}
	}
	if who < 0 {
		return false
	}
	least, at := math.Inf(1), -1
	for c, in := range s.in {
		v := s.t[c*s.length+who]
		if v > 1e-9 && !s.kept[in] {
			if t := math.Max(s.t[(c+1)*s.length-1], 0) / v; t < least {
				least, at = t, c
			}
		}
	}
	if at < 0 {
		return false
	}
	s.pivot(at, who)
	return true
}

// scaled multiplies a column and gives where it is not 0.
func scaled(p []float64, by float64, some []int32) []int32 {
	for i, v := range p {
		if v != 0 {
			p[i] = v * by
			some = append(some, int32(i))
		}
	}
	return some
}

// pivot takes one into use in place of another.
func (s *start) pivot(at, who int) {
	p := s.t[at*s.length : (at+1)*s.length]
	some := scaled(p, 1/p[who], s.some[:0])
	s.some = some
	for c := range s.in {
		if col := s.t[c*s.length : (c+1)*s.length][:len(p)]; c != at && col[who] != 0 {
			f := col[who]
			for _, i := range some {
				col[i] -= f * p[i]
			}
		}
	}
	g := s.gain[who]
	if some[len(some)-1] == int32(s.length-1) { // amounts gain nothing
		some = some[:len(some)-1]
	}
	for _, i := range some {
		s.gain[i] -= g * p[i]
	}
	out := s.in[at]
	s.gain[out] += s.worth[out] - s.full[out]
	s.worth[out] = s.full[out]
	s.in[at] = who
}

// likely are the totals with so much of a reagent as takes up the acid or the base there is.
func (w *work) likely() []float64 {
	out := slices.Clone(w.total)
	for k := range w.holds {
		h := &w.holds[k]
		for j, n := range h.brings {
			out[j] += h.start * n
		}
		if h.row >= 0 || h.brings[0] == 0 {
			continue
		}
		by := math.Max(-out[0]/h.brings[0], 1e-6)
		for j, n := range h.brings {
			if out[j] += by * n; j > 0 && n > 0 {
				out[j] = math.Max(out[j], 1e-9)
			}
		}
	}
	return out
}
