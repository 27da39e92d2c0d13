package course

import (
	"sync"

	"etchbound/hazards/vessel"
)

// Known are runs by their plans, so that no plan is run twice: most cases with one
// datum moved, and most routes with one thing done wrong, have a vessel that goes as it
// went before. A run depends on its plan alone. It is safe for use by several
// goroutines; nil remembers nothing.
type Known struct {
	mu   sync.Mutex
	of   map[mark][]*vessel.Run
	last []mark // of all that are remembered, the oldest first
}

// mark is what most plans that differ differ in.
type mark struct {
	law                               vessel.Law
	start, rate, amount, heat, gas, c float64
	boils, tolerance, coolant, ua     float64
	pieces                            int
}

func markOf(p *vessel.Plan) mark {
	out := mark{law: p.Law, start: p.Start, rate: p.Slow.Rate, amount: p.Slow.Amount, heat: p.Slow.Heat, gas: p.Slow.Gas,
		c: p.Liquor.Capacity, boils: p.Liquor.Boils, tolerance: p.Tolerance, pieces: len(p.Pieces)}
	if n := len(p.Pieces); n > 0 {
		out.coolant, out.ua = p.Pieces[n-1].Coolant, p.Pieces[n-1].UA
	}
	return out
}

// mostKnown is how many runs are remembered: those of the newest plans.
const mostKnown = 96

// Know remembers the runs of some courses.
func Know(courses []Course) *Known {
	out := &Known{of: map[mark][]*vessel.Run{}}
	for i := range courses {
		for j := range courses[i].Runs {
			if x := &courses[i].Runs[j]; x.Missing == nil {
				out.keep(&x.Vessel)
			}
		}
	}
	return out
}

// Run is the run of a plan.
func (k *Known) Run(p vessel.Plan) (vessel.Run, error) {
	if k == nil {
		return vessel.Simulate(p)
	}
	if r := k.find(&p); r != nil {
		return *r, nil
	}
	r, err := vessel.Simulate(p)
	if err == nil {
		k.keep(&r)
	}
	return r, err
}

func (k *Known) find(p *vessel.Plan) *vessel.Run {
	k.mu.Lock()
	defer k.mu.Unlock()
	for _, r := range k.of[markOf(p)] {
		if r.Plan.Same(p) {
			return r
		}
	}
	return nil
}

// keep remembers a run, and forgets the oldest where there are many.
func (k *Known) keep(r *vessel.Run) {
	m := markOf(&r.Plan)
	if m != m { // what is not a number is like nothing
		return
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if len(k.last) == mostKnown {
		old := k.of[k.last[0]]
		if len(old) == 1 {
			delete(k.of, k.last[0])
		} else {
			k.of[k.last[0]] = old[1:]
		}
		k.last = append(k.last[:0], k.last[1:]...)
	}
	k.of[m], k.last = append(k.of[m], r), append(k.last, m)
}
