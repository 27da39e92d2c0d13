package ranges

import (
	"math"
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

// loose is a course of several steps of which nobody states what cools it, how much that takes,
// or what its powder holds beside its phase. What is colder in one step leaves more for a later
// one, and what is warmer gets faster: where it can run away at all within what is known, nobody
// knows in which step, and no end of what is not stated bounds what a later step does.
type loose struct {
	steps   []figure.Place // in their order
	from    int            // the first of them that what is not stated reaches; the one that begins where it may heat that
	warm    int            // likewise of temperatures and air, with the first where nobody states how warm ice is
	set     float64        // degC, the highest that a step is set to, or that what is around it has
	hot     []float64      // degC beyond which each of them runs away
	boils   []float64      // degC at which each of them boils
	missing []working.Missing
}

// looseOf are those of a case.
func looseOf(c route.Case, ea float64, courses []course.Course) []loose {
	var out []loose
	for i := range courses {
		x := loose{set: math.Inf(-1), from: len(courses[i].Stages), warm: len(courses[i].Stages)}
		if p := c.Route.Precursor; p != nil && !p.Stated {
			x.from, x.missing = 1, append(x.missing, working.Lacks("impurities_open", ""))
		}
		for j := range courses[i].Stages {
			s := &courses[i].Stages[j]
			x.set = max(x.set, s.Set.V, s.Coolant.V)
			x.steps = append(x.steps, figure.Step(s.Step.Number))
			x.hot = append(x.hot, hot(s, ea))
			x.boils = append(x.boils, s.Boils.V)
			if s.Loose != nil {
				x.from = min(x.from, max(j, 1))
			}
			if unheated(s, &courses[i]) {
				x.from = min(x.from, j)
			}
			if s.Guessed { // colder, more waits in the step that begins too
				x.warm = min(x.warm, j)
			}
			for _, m := range s.Loose {
				if !slices.Contains(x.missing, m) {
					x.missing = append(x.missing, m)
				}
			}
		}
		if x.missing != nil && len(x.steps) > 1 {
			out = append(out, x)
		}
	}
	return out
}

const kelvin = 273.15

// open leaves what goes with the run of a later step of a loose course open where that course
// runs away in some step by some law; what boils off, where it boils in some step or all of its
// heat suffices for that. How hot it gets is bounded by all of its heat.
func (r *ranger) open() {
	for n := range r.loose {
		x := &r.loose[n]
		away, most := r.passes(x.steps, x.hot), r.hottestOf(x)
		boils := r.passes(x.steps, x.boils) || slices.ContainsFunc(x.boils, func(b float64) bool { return !(most < b) })
		for i := range r.base {
			f := &r.base[i]
			if !away || f.Searched || f.Case.Supposed() || !x.reaches(f) {
				continue
			}
			switch {
			case boilsOff(f) && !boils, !boilsOff(f) && !r.goes(i):
			case f.Value.Unit == "degC" && most == most:
				f.Widened = f.Widened || most > f.High().V
				f.SetRange(f.Low().V, max(f.High().V, most))
			default:
				f.LeaveOpen(x.missing)
			}
		}
	}
}

// unheated reports whether a stage of which nobody says what stands around it comes before one
// that is set warmer: what heats that one may heat it too, which is walked in the air of the room.
func unheated(s *course.Stage, n *course.Course) bool {
	return slices.ContainsFunc(s.Loose, func(m working.Missing) bool { return m.Subject.Of("cooling") }) &&
		slices.ContainsFunc(n.Stages, func(o course.Stage) bool { return o.Set.V > s.Set.V })
}

// reaches reports whether a figure is of a later step, or stands on the largest flow of any: in
// the air of a hood, where all the gas there is comes at once into a room.
func (x *loose) reaches(f *figure.Figure) bool {
	if len(x.steps) > x.from && f.Quantity == "air.hydrogen_share" && f.Place == figure.Hood {
		return true
	}
	from := x.from
	if f.Value.Unit == "degC" || figure.Row(f.Quantity).Family == "air" {
		from = min(from, x.warm)
	}
	return slices.Contains(x.steps[from:], f.Place)
}

// boilsOff reports whether a figure is of what boils off as a step is meant to run.
func boilsOff(f *figure.Figure) bool { return f.Case.Failure == "" && f.Case.Branch == figure.Boiling }

// hottestOf is the most that a course can come to, degC: all of it has waited for its warmest
// step and reacts there at once, T + dT. NaN where that of any of its steps is not known, or
// none has one.
func (r *ranger) hottestOf(x *loose) float64 {
	rise := math.Inf(-1)
	for i := range r.base {
		if f := &r.base[i]; tellsHeat(f) && !f.Case.Supposed() && slices.Contains(x.steps, f.Place) {
			rise = max(rise, f.High().V) // which is NaN where that is
		}
	}
	if math.IsInf(rise, -1) {
		return math.NaN()
	}
	return x.set + rise
}

// passes reports whether some of the steps of a course gets hotter, by a law, than it may.
func (r *ranger) passes(steps []figure.Place, most []float64) bool {
	return slices.ContainsFunc(r.base, func(f figure.Figure) bool {
		i := slices.Index(steps, f.Place)
		return i >= 0 && f.Quantity == "heat.temperature_peak" && law(f.Case) && !(f.High().V <= most[i])
	})
}

// goes reports whether a figure goes with how a run goes: it is of a law, or of the air where
// some datum that says how fast a run goes moves it or the same of another step.
func (r *ranger) goes(i int) bool {
	f := &r.base[i]
	if law(f.Case) || r.runs(i) {
		return true
	}
	if figure.Row(f.Quantity).Family != "air" {
		return false
	}
	for v := range r.vars {
		if !r.paces(v) {
			continue
		}
		for j := range r.base {
			if g := &r.base[j]; g.Quantity == f.Quantity && g.Agent == f.Agent && g.Case == f.Case && r.stirs(v, j) {
				return true
			}
		}
	}
	return false
}

// paces reports whether a variable says how fast a run goes: it moves that, and neither how
// much heat nor how much gas there is.
func (r *ranger) paces(v int) bool {
	fast := false
	for i := range r.base {
		switch f := &r.base[i]; {
		case (tellsHeat(f) || tellsGas(f)) && r.stirs(v, i):
			return false
		case tellsRate(f):
			fast = fast || r.stirs(v, i)
		}
	}
	return fast
}
