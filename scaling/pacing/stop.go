package pacing

import (
	"math"

	"etchbound/hazards/course"
	"etchbound/hazards/vessel"
)

// Stop is when an addition is stopped, in what a person sees.
type Stop struct {
	Above   float64 // degC
	Reaches float64 // degC that it could still come to after that stop if cooling is lost too
	By      []After
	Share   float64 // of the dose that piles up to the limit if nothing reacts; 1: not even all of it
	Within  float64 // s from the start, by when something has to be seen
	Reads   float64 // degC by then, if it reacts as it goes in
	Bare    float64 // degC by then, if nothing reacts
	Gas     float64 // mol/s
	Pile    float64 // degC that it could still come to if it is stopped then and nothing had reacted
	NoTime  bool    // it piles up to the limit before anybody could see and stop it
}

// After is what an addition comes to by one law.
type After struct {
	Law     vessel.Law
	Sees    bool    // it warms to where it is stopped while something goes in
	At      float64 // s of that; of the pile reaching the limit where it does not
	Stays   float64 // degC, highest after the stop with the cooling there is
	Reaches float64 // degC, if cooling is lost with the stop
	Reads   float64 // degC at the time by which something has to be seen
}

// reacts is how long a person takes to see and to stop, s: a minute.
const reacts = 60

// stop is the rule of an addition as the route makes it.
func (a *Addition) stop(n *course.Course, s *course.Stage) Stop {
	out := Stop{Share: 1, Reaches: math.Inf(-1)}
	for i, d := range a.Whole {
		if d.Hottest >= a.Limit {
			out.Share = d.Share
			if i > 0 {
				b := a.Whole[i-1]
				out.Share = b.Share + (d.Share-b.Share)*(a.Limit-b.Hottest)/(d.Hottest-b.Hottest)
			}
			break
		}
	}
	out.Within = math.Min(out.Share*a.Over-reacts, a.Over/4)
	out.NoTime = !(out.Within > 0)
	out.Within = math.Max(out.Within, 0)
	out.Pile = at(a.Whole, math.Min(1, (out.Within+reacts)/a.Over))
	g := governor{a: a, kind: Held}
	soon := atOnce(n.Runs[0].Vessel.Plan)
	out.Reads, out.Gas = expected(soon, s.Step.Number, out.Within, 1)
	out.Bare, _ = expected(soon, s.Step.Number, out.Within, 0)
	out.Above = a.warns(soon, s.Step.Number)
	g.stop = out.Above + kelvin
	for i := range n.Runs {
		x := g.after(&n.Runs[i], s.Step.Number, a.Over)
		x.Reads, _ = expected(n.Runs[i].Vessel.Plan, s.Step.Number, out.Within, 1)
		out.By, out.Reaches = append(out.By, x), math.Max(out.Reaches, x.Reaches)
	}
	return out
}

// Nothing is the highest temperature with a share of the dose in of which nothing has
// reacted, degC.
func (a *Addition) Nothing(share float64) float64 { return at(a.Whole, share) }

// at is the highest temperature with a share in, by straight lines.
func at(all []course.Dose, share float64) float64 {
	for i := 1; i < len(all); i++ {
		if a, b := all[i-1], all[i]; share <= b.Share {
			return a.Hottest + (b.Hottest-a.Hottest)*(share-a.Share)/(b.Share-a.Share)
		}
	}
	return math.NaN()
}

// A temperature at which an addition is stopped lies so much above what it comes to if all
// reacts as it goes in, K, and no closer to the limit than half the way there.
const above = 3.0

// warns is the temperature above which an addition is not as it was worked out, degC.
func (a *Addition) warns(soon vessel.Plan, step int) float64 {
	v := cut(&soon, step)
	w := nothing()
	r := runner{plan: soon, seen: &w}
	r.forth(v.before)
	w.stays = math.Inf(-1)
	r.until(v.doses(v.amount/a.Over), a.Over, func(vessel.Point) float64 { return -1 })
	return math.Min(math.Max(w.stays, a.Set)+above, (a.Set+a.Limit)/2)
}

// expected is where a plan stands after a time of an addition made with a share of its rate,
// degC, and its gas, mol/s.
func expected(p vessel.Plan, step int, after, share float64) (reads, gas float64) {
	v := cut(&p, step)
	w := nothing()
	r := runner{plan: p, seen: &w}
	if len(v.before) > 0 && !r.forth(v.before) {
		return math.NaN(), math.NaN()
	}
	x := v.doses(share * v.in.Dose)
	x.Until = math.Max(after, 1)
	r.plan.Pieces = []vessel.Piece{x}
	run, err := vessel.Simulate(r.plan)
	if err != nil {
		return math.NaN(), math.NaN()
	}
	last, err := run.Path.At(x.Until)
	if err != nil {
		return math.NaN(), math.NaN()
	}
	return last.Temperature - kelvin, last.Gas
}

// after is what a run of a course comes to that is stopped where it warms to the stop.
func (g *governor) after(x *course.Run, step int, over float64) After {
	p := x.Vessel.Plan
	v := cut(&p, step)
	w := nothing()
	r := runner{plan: p, seen: &w}
	out := After{Law: x.Law}
	if len(v.before) > 0 && !r.forth(v.before) {
		out.Stays, out.Reaches = math.NaN(), math.NaN()
		return out
	}
	w.could = math.Inf(-1)
	took := r.until(v.doses(v.amount/over), over, g.full)
	out.At, out.Sees = took, took < over*(1-1e-9)
	out.Reaches, w.stays = w.could, math.Inf(-1)
	r.until(v.doses(0), most, func(vessel.Point) float64 { return -1 })
	out.Stays = w.stays
	return out
}
