package order

import (
	"math"

	"etchbound/chemicals/working"
	"etchbound/hazards/meeting"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// early lists the holds of an etchant to which the powder comes only later, where what
// the liquor is held for after that is shorter: the hold stands before its powder.
func early(c *route.Case, k *process.Walk) []against {
	var out []against
	for i := range k.Steps {
		s, d := &c.Route.Steps[i], &k.Steps[i]
		in := inside(&d.Before)
		is, name := in.etches()
		if len(s.What) > 0 || !s.Verb().Held || in.solids || is == no {
			continue
		}
		comes, after := later(c, k, i)
		if comes == 0 {
			continue
		}
		x := against{step: s.Number, is: yes, says: phrase.Of("order.hold_first", phrase.Step(s.Number), name, s.In, comes),
			lacks: working.Lacks("order", s.In).In(s.Number)}
		switch held := seconds(c, s); {
		case held <= after:
			continue
		case math.IsNaN(held + after):
			x.is = maybe
		}
		out = append(out, x)
	}
	return out
}

// etches tells whether acid or base stands in a place, and what it is called.
func (c *contents) etches() (truth, string) {
	for _, tag := range [...]meeting.Tag{"hf", "acid", "base"} {
		if is, name := c.tag(tag); is != no {
			return is, name
		}
	}
	return no, ""
}

// later is the step in which the powder comes to the liquor that a step holds, 0 where
// it does not, and for how long the liquor is held from there until it is parted.
func later(c *route.Case, k *process.Walk, from int) (comes int, held float64) {
	place := c.Route.Steps[from].In
	for i := from + 1; i < len(k.Steps); i++ {
		s, d := &c.Route.Steps[i], &k.Steps[i]
		if s.In != place && s.Into != place && d.Place != place {
			continue
		}
		if s.Verb().Does == route.Moves && s.In == place && !s.Part.Set {
			place = s.Into
		}
		if comes == 0 && powdered(d, place) {
			comes = s.Number
		}
		switch {
		case s.Verb().EndsEtch:
			return comes, held
		case comes > 0 && s.Verb().Held:
			held += seconds(c, s)
		}
	}
	return comes, held
}

// powdered reports whether powder, etched or not, is in a place after a step.
func powdered(d *process.Done, place string) bool {
	for _, s := range [...]*process.State{&d.After, d.Filled} {
		if s != nil && s.Place == place {
			if in := inside(s); in.solids {
				return true
			}
		}
	}
	return false
}

// seconds is how long a step holds its liquor; NaN where it does not say.
func seconds(c *route.Case, s *route.Step) float64 {
	switch {
	case s.Time.Set:
		return c.Ranged(s.Time).In("s")
	case s.Over.Set || len(s.What) > 0:
		return 0
	}
	return math.NaN()
}
