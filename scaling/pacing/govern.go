package pacing

import (
	"math"

	"etchbound/hazards/vessel"
)

// governed is an addition of a course by a profile, by the worst of its laws and of one that
// reacts as it goes in. It goes in at the rate of the route, or of the shortest constant
// addition that stays below the limit where that is slower.
func (a *Addition) governed(all []data, of int, kind Kind) Way {
	g := governor{a: a, kind: kind, over: a.Over, stop: a.stops(kind)}
	for _, w := range a.Ways {
		if w.Kind == Constant && w.Stays.Below(a.Limit) {
			g.over = max(g.over, w.Takes)
		}
	}
	out := Way{Kind: kind, Of: g.stop - kelvin, In: 1}
	var stays, could []float64
	for i := range all {
		runs := all[i].courses[of].Runs
		s, c := math.Inf(-1), math.Inf(-1)
		plans := []vessel.Plan{atOnce(runs[0].Vessel.Plan)}
		for k := range runs {
			plans = append(plans, runs[k].Vessel.Plan)
		}
		for _, p := range plans {
			w := g.run(p, a.Step)
			s, c, out.In = math.Max(s, w.stays), math.Max(c, w.could), math.Min(out.In, w.in)
			if !(w.takes <= out.Takes) && !math.IsNaN(out.Takes) {
				out.Takes = w.takes
			}
		}
		stays, could = append(stays, s), append(could, c)
	}
	out.Stays, out.Could = hot(stays), hot(could)
	return out
}

// seen is what a run of a profile comes to: degC, s, and the share that is in.
type seen struct{ stays, could, takes, in float64 }

func nothing() seen { return seen{stays: math.Inf(-1), could: math.Inf(-1), in: 1} }

// quick is the rate with which what reacts as it goes in reacts, 1/s: it is gone in minutes.
const quick = 0.05

// atOnce is a plan that reacts as it goes in.
func atOnce(p vessel.Plan) vessel.Plan {
	p.Law = vessel.FirstOrder
	p.Slow.Kinetics = vessel.Kinetics{Rate: quick, Reference: kelvin + 25}
	p.Fast.Kinetics = p.Slow.Kinetics
	return p
}

// An addition is held to or stopped at a temperature that lies this share of the way from
// what the step is set to to the limit, and goes on below it: held by a band, stopped once it
// is back to a share of that way and what waits could bring it only so far to the limit.
const (
	partWay = 1.0 / 3
	band    = 0.5 // K
	back    = 0.25
	little  = 0.5
)

// stops is the temperature at which a profile stops the addition, K.
func (a *Addition) stops(kind Kind) float64 {
	if kind == Stepped {
		return math.Inf(1)
	}
	return a.Set + partWay*(a.Limit-a.Set) + kelvin
}

// governor adds by what it sees.
type governor struct {
	a    *Addition
	kind Kind
	over float64 // s that the whole would take without a stop
	stop float64 // K
}

// How long an addition may take, s, and how often it is stopped; it is followed in stretches.
const (
	most     = 2 * 86400.0
	switches = 200
	stretch  = 600.0
)

// run is the addition of a step of a plan by the profile.
func (g *governor) run(p vessel.Plan, step int) seen {
	v := cut(&p, step)
	w := nothing()
	r := runner{plan: p, seen: &w}
	if len(v.before) > 0 && !r.forth(v.before) {
		return unfinished(w, 0)
	}
	left, rate := v.amount, v.amount/g.over
	for i := 0; left > 1e-9*v.amount; i++ {
		if i == switches || !(w.takes < most) {
			return unfinished(w, 1-left/v.amount)
		}
		now, part := rate, left
		if g.kind == Stepped && left > v.amount*2/3*(1+1e-9) {
			now, part = rate/4, left-v.amount*2/3
		}
		took := r.until(v.doses(now), part/now, g.full)
		left, w.takes = left-now*took, w.takes+took
		if math.IsNaN(took) {
			return unfinished(w, 0)
		}
		if left > 1e-9*v.amount && g.kind != Stepped {
			w.takes += r.until(v.doses(0), most, g.may)
		}
	}
	r.forth(v.after)
	return w
}

func unfinished(w seen, in float64) seen {
	w.takes, w.in = math.NaN(), in
	return w
}

// full reports whether an addition is stopped in a moment: by its temperature, and where it
// is resumed by what waits as well.
func (g *governor) full(p vessel.Point) float64 {
	if g.kind == Resumed {
		return math.Max(p.Temperature-g.stop, p.MTSR-kelvin-g.a.Limit)
	}
	return p.Temperature - g.stop
}

// may reports whether it may go on: from 0 on.
func (g *governor) may(p vessel.Point) float64 {
	set := g.a.Set + kelvin
	if g.kind == Resumed {
		return math.Min(set+back*(g.stop-set)-p.Temperature, set+little*(g.a.Limit-g.a.Set)-p.MTSR)
	}
	return g.stop - band - p.Temperature
}

// view is a plan with one addition taken out of it.
type view struct {
	before, after []vessel.Piece
	in            vessel.Piece // in which something goes in
	amount        float64      // mol of it
}

func cut(p *vessel.Plan, step int) view {
	var v view
	at := 0.0
	for _, x := range p.Pieces {
		from := at
		at = x.Until
		switch {
		case x.Step == 2*step:
			if v.amount == 0 {
				v.in = x
			}
			v.amount += x.Dose * (x.Until - from)
		case v.amount == 0:
			v.before = append(v.before, x)
		default:
			x.Until -= from
			v.after = append(v.after, x)
		}
	}
	at = 0
	for i := range v.after {
		at += v.after[i].Until
		v.after[i].Until = at
	}
	return v
}

// doses is the vessel while something goes in at another rate, mol/s.
func (v *view) doses(rate float64) vessel.Piece {
	x := v.in
	x.Pour *= rate / x.Dose
	x.Dose, x.Added = rate, 0
	return x
}

// runner goes through a vessel stretch by stretch.
type runner struct {
	plan vessel.Plan
	seen *seen
}

// forth goes through some pieces, and reports whether it could.
func (r *runner) forth(pieces []vessel.Piece) bool {
	if len(pieces) == 0 {
		return true
	}
	r.plan.Pieces = pieces
	x, err := vessel.Simulate(r.plan)
	if err != nil {
		r.seen.stays, r.seen.could = math.NaN(), math.NaN()
		return false
	}
	r.saw(x.Peak.Value, x.MTSR.Value)
	r.plan.Begin = &x.End
	return true
}

func (r *runner) saw(peak, mtsr float64) {
	r.seen.stays, r.seen.could = math.Max(r.seen.stays, peak-kelvin), math.Max(r.seen.could, mtsr-kelvin)
}

// until goes on with a piece for a time, s, or until a value reaches 0, and gives how long
// that was; not a number where it could not.
func (r *runner) until(x vessel.Piece, long float64, value func(vessel.Point) float64) float64 {
	gone := 0.0
	for step := stretch; gone < long*(1-1e-12); step *= 2 {
		x.Until = math.Min(step, long-gone)
		r.plan.Pieces = []vessel.Piece{x}
		run, err := vessel.Simulate(r.plan)
		if err != nil {
			r.seen.stays, r.seen.could = math.NaN(), math.NaN()
			return math.NaN()
		}
		if at, ok := run.Path.When(value, 0); ok {
			s, err := run.Path.State(at)
			p, none := run.Path.At(at)
			if err != nil || none != nil {
				return math.NaN()
			}
			for _, q := range run.Points() {
				if q.Time <= at {
					r.saw(q.Temperature, q.MTSR)
				}
			}
			r.saw(p.Temperature, p.MTSR)
			r.plan.Begin = &s
			return gone + at
		}
		r.saw(run.Peak.Value, run.MTSR.Value)
		r.plan.Begin, gone = &run.End, gone+x.Until
	}
	return gone
}
