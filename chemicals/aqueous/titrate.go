package aqueous

import (
	"fmt"
	"math"
)

// largest amount of a reagent, mol/kg, that is tried.
const largest = 40

// titrate finds the amount of a reagent by trying amounts: at each, H+ comes or goes to
// keep the pH, and where none has to the amount is right. It needs no good beginning, and
// what it ends with is one.
func (m *Model) titrate(p *pot) (*work, error) {
	t := *p
	t.trial = true
	low, high, err := m.bracket(&t)
	if err != nil {
		return nil, err
	}
	for range 200 {
		if high.mol-low.mol <= 1e-12*math.Max(high.mol, -low.mol) || math.Abs(low.acid) < 1e-13 {
			break
		}
		mol := 0.5 * (low.mol + high.mol)
		if s := low.mol - low.acid*(high.mol-low.mol)/(high.acid-low.acid); low.weight < 3 && high.weight < 3 &&
			s > low.mol && s < high.mol {
			mol = s
		}
		at, err := m.trial(&t, mol)
		if err != nil {
			return nil, err
		}
		if (at.acid < 0) == (low.acid < 0) {
			at.weight, high.weight, low = 0, high.weight+1, at
		} else {
			at.weight, low.weight, high = 0, low.weight+1, at
		}
	}
	return m.polish(p, low)
}

// trial is an amount of the reagent with the H+ that had to come.
type trial struct {
	mol, acid float64
	weight    int // how often this end has stayed
	w         *work
}

func (m *Model) trial(p *pot, mol float64) (*trial, error) {
	w, err := m.vessel(p, mol)
	if err != nil {
		return nil, err
	}
	if err := w.run(); err != nil {
		return nil, err
	}
	for _, h := range w.holds {
		if h.row < 0 {
			return &trial{mol: mol, acid: -h.moved, w: w}, nil
		}
	}
	return nil, errStuck
}

// bracket finds an amount that is too little and one that is too much.
func (m *Model) bracket(p *pot) (low, high *trial, err error) {
	least := -math.Inf(1) // all of it that there is, taken out
	for j, n := range p.reagent.of {
		if j > 0 && n > 0 {
			least = math.Max(least, -p.total[j]/n)
		}
	}
	first, err := m.trial(p, 0)
	if err != nil {
		return nil, nil, err
	}
	// a base makes H+ come, an acid makes it go: who has too much of either needs more
	more := (first.acid < 0) == (p.reagent.of[0] < 0)
	at := first
	for step := 1e-9; ; step *= 8 {
		mol := step
		if !more {
			mol = math.Max(-step, least)
		}
		next, err := m.trial(p, mol)
		switch {
		case err != nil || step > largest:
			return nil, nil, m.no(p)
		case (next.acid < 0) != (first.acid < 0):
			if more {
				return at, next, nil
			}
			return next, at, nil
		case mol == least:
			return nil, nil, m.no(p)
		}
		at = next
	}
}

// no says that a reagent cannot do it.
func (m *Model) no(p *pot) error {
	return fmt.Errorf("no amount of %s up to %d mol/kg brings the pH to %g: name a stronger one, or one of the "+
		"other kind (acid for base)", p.mix.Reagent, largest, p.mix.FixedPH)
}

// polish solves for the amount itself, beginning where the trials ended.
func (m *Model) polish(p *pot, from *trial) (*work, error) {
	w, err := m.vessel(p, 0)
	if err != nil {
		return nil, err
	}
	w.x, w.ln, w.mol = from.w.x, from.w.ln, from.w.mol
	w.lnI, w.lnWater, w.lnKg, w.gasZ = from.w.lnI, from.w.lnWater, from.w.lnKg, from.w.gasZ
	w.active = w.active[:0]
	for k := range w.holds {
		if w.holds[k].on = from.w.holds[k].on; w.holds[k].on {
			w.active = append(w.active, k)
		}
	}
	defer w.sit()()
	if err := w.settle(false); err != nil {
		return nil, err
	}
	return w, w.finish()
}
