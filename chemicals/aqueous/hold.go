package aqueous

import "math"

// hold is matter that comes and goes at a fixed activity: a solid, a gas, what keeps
// a pH. Its amount is what the balances leave for it.
type hold struct {
	name       string
	row        int       // of the constants; -1 for what keeps a pH
	act        []float64 // on masters present: the sum of these times ln a ...
	actWater   float64   // ... and this times ln a of water ...
	ln         float64   // ... is this
	brings     []float64 // masters in one mol of it
	bringWater float64
	start      float64 // mol there before
	free       bool    // it may go below nothing: air without end, a reagent
	on         bool
	moved      float64 // mol gained; below 0 it dissolved
}

// solid is a hold made of a row of the constants, whose own activity is ln a.
func (w *work) solid(name string, row int, lnActivity, start float64) hold {
	e := &w.m.known.rows[row]
	h := hold{name: name, row: row, act: w.present(e.of), actWater: e.water, start: start,
		bringWater: e.water, ln: lnActivity - w.m.ln[row]}
	h.brings = h.act
	return h
}

// present picks the masters that are there. Its room is made for all solids at once.
func (w *work) present(of []float64) []float64 {
	nc := len(w.comp)
	if len(w.lists) < nc {
		w.lists = make([]float64, nc*(2+cap(w.holds)))
	}
	out := w.lists[:nc:nc]
	w.lists = w.lists[nc:]
	for n, j := range w.comp {
		out[n] = of[j]
	}
	return out
}

// over is ln of ion product over constant: above 0 the hold would form.
func (w *work) over(h *hold) float64 {
	sum := h.actWater*w.lnWater - h.ln
	for j, n := range h.act {
		if n != 0 {
			sum += n * w.x[j]
		}
	}
	return sum
}

// size is how many masters a hold takes, so that one that takes many is no more
// pressing than one that takes few.
func (h *hold) size() float64 {
	sum := 0.0
	for _, n := range h.act {
		sum += math.Abs(n)
	}
	return math.Max(1, sum)
}
