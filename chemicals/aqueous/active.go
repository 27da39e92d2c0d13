package aqueous

import (
	"fmt"
	"math"
	"slices"
)

const (
	turns  = 80    // changes of what is there before the search is given up
	slack  = 1e-9  // ln of ion product over constant that counts as saturated
	nought = 1e-13 // share of what is there that counts as nothing
)

// run finds what settles and what dissolves: it solves with what is there, drops what
// would be less than nothing, adds what is most oversaturated, and begins again.
func (w *work) run() (err error) {
	defer w.sit()()
	for _, b := range beginnings {
		if err = w.attempt(b); err == nil {
			return nil
		}
		w.least = invisible
	}
	return err
}

// little is ln of ion product over constant up to which what settles leaves a solution much as
// it was: beyond it what is there at rest is a worse beginning than none.
const little = 3

// follow begins with a solution at rest that holds the same, from which solids settle, and
// reports whether that came to an end. It does not try where much would settle.
func (w *work) follow(r *work) bool {
	defer w.sit()()
	copy(w.x, r.x)
	copy(w.ln, r.ln)
	copy(w.mol, r.mol)
	w.lnI, w.lnWater, w.lnKg, w.found = r.lnI, r.lnWater, r.lnKg, r.found
	w.tauWater = w.water
	for k := range w.holds {
		if w.over(&w.holds[k]) > little {
			return false
		}
	}
	return w.finish() == nil
}

// attempt is run from one beginning.
func (w *work) attempt(from beginning) error {
	w.guess(from)
	if err := w.settle(true); err != nil {
		return err
	}
	return w.finish()
}

// finish changes what is there until nothing is wrong with it.
func (w *work) finish() error {
	for range turns {
		w.amounts()
		again, err := w.change()
		if err != nil || !again {
			return err
		}
		if err := w.settle(false); err != nil {
			return err
		}
	}
	return errStuck
}

// change puts right the worst of what is there and should not be, or of what is not
// there and should be.
func (w *work) change() (bool, error) {
	worst, at := -nought, -1
	for n, k := range w.active {
		h := &w.holds[k]
		if rel := (h.start + h.moved) / w.scale(h); !h.free && rel < worst {
			worst, at = rel, n
		}
	}
	if at >= 0 {
		w.holds[w.active[at]].on = false
		w.active = slices.Delete(w.active, at, at+1)
		return true, nil
	}
	worst, at = slack, -1
	for k := range w.holds {
		h := &w.holds[k]
		if over := w.over(h) / h.size(); !h.on && over > worst {
			worst, at = over, k
		}
	}
	if at < 0 {
		return false, nil
	}
	return true, w.put(at)
}

// scale is the amount of what a hold is made of, mol.
func (w *work) scale(h *hold) float64 {
	out := math.Max(1e-12, h.start)
	for j, n := range h.brings {
		if n != 0 && j > 0 {
			out = math.Max(out, math.Abs(w.total[j]/n))
		}
	}
	return out
}

// put adds a hold. Where those that are there fix it already, it takes the place of the
// one that is used up first when it forms at their cost.
func (w *work) put(k int) error {
	h := &w.holds[k]
	cost, same := w.cost(h)
	if same {
		first, at := math.Inf(1), -1
		for n, a := range w.active {
			o := &w.holds[a]
			if t := (o.start + o.moved) / cost[n]; !o.free && cost[n] > 1e-9 && t < first {
				first, at = math.Max(t, 0), n
			}
		}
		if at < 0 {
			return fmt.Errorf("%s would form without end out of what is kept at a fixed activity: leave one of them out",
				h.name)
		}
		w.holds[w.active[at]].on = false
		w.active = slices.Delete(w.active, at, at+1)
	}
	h.on = true
	w.active = append(w.active, k)
	return nil
}

// cost writes a hold as a sum of those that are on, and reports whether that is possible.
func (w *work) cost(h *hold) ([]float64, bool) {
	na, nc := len(w.active), len(w.comp)
	rest := slices.Clone(h.act)
	rows := make([][]float64, na) // each with what it is made of behind it
	for n, k := range w.active {
		rows[n] = append(slices.Clone(w.holds[k].act), make([]float64, na)...)
		rows[n][nc+n] = 1
	}
	rest = append(rest, make([]float64, na)...)
	for n, r := range rows {
		p := 0
		for j := range nc {
			if math.Abs(r[j]) > math.Abs(r[p]) {
				p = j
			}
		}
		if math.Abs(r[p]) < 1e-9 {
			continue
		}
		for _, o := range append(slices.Clone(rows[n+1:]), rest) {
			f := o[p] / r[p]
			for j := range o {
				o[j] -= f * r[j]
			}
		}
	}
	for _, v := range rest[:nc] {
		if math.Abs(v) > 1e-9 {
			return nil, false
		}
	}
	for n := range na {
		rest[nc+n] = -rest[nc+n]
	}
	return rest[nc:], true
}

// settle solves with what is there now. First says that only the order and the amounts
// of the first guess are known; otherwise the last solution is.
func (w *work) settle(first bool) error {
	for try := range tries {
		if err := w.refer(); err != nil {
			return err
		}
		w.enter(first && try == 0)
		near := converged
		if first && try == 0 {
			near = rough
		}
		done := w.search(near)
		if done && near == rough && w.best() {
			near, done = converged, w.onward(converged)
		}
		w.unfold()
		if done && near == converged {
			return nil
		}
	}
	return errStuck
}

// enter sets the unknowns: by the amounts of base that were guessed, or by the ions of
// the last solution.
func (w *work) enter(guessed bool) {
	lnI, lnWater, lnKg := w.lnI, w.lnWater, w.lnKg
	w.room(w.rows.n, len(w.kinds))
	for b, i := range w.base {
		r := w.spec[i]
		e := &w.m.known.rows[r]
		if guessed {
			w.u[b] = w.ln[i] - w.m.ln[r] - e.water*w.lnWater
			continue
		}
		w.u[b] = 0
		for j, c := range w.comp {
			if n := e.of[c]; n != 0 {
				w.u[b] += n * w.x[j]
			}
		}
	}
	w.u[w.count-3], w.u[w.count-2], w.u[w.count-1] = lnI, lnWater, lnKg
}

const (
	tries = 8
	rough = 0.2 // of ln of one side over the other: enough to know which species hold most
)
