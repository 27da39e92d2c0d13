package order

import (
	"math"

	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// together is what comes to what in a step.
type together struct {
	place        string
	there, comes contents
	rise         float64 // K, the greatest that the acid and the base that meet can give; NaN where it is not known
}

// meetings walks through the steps and shows all that comes to what is in a place
// already, in the order in which it comes.
func meetings(r *route.Route, k *process.Walk, show func(s *route.Step, m *together)) {
	at := map[string]process.State{}
	for i := range k.Steps {
		d, s := &k.Steps[i], &r.Steps[i]
		in := at[s.In]
		after := after(d, s, in)
		each(r, s, inside(&in), rise(s, &in, &after.in), func(m *together) { show(s, m) })
		if s.Into != "" {
			to := at[s.Into]
			m := together{place: s.Into, there: inside(&to), comes: sent(r, s, &in), rise: growth(&to, &after.to)}
			show(s, &m)
			at[s.Into] = after.to
		}
		at[s.In] = after.in
	}
}

// each shows what a step puts in, in the order in which it lists it.
func each(r *route.Route, s *route.Step, there contents, rise float64, show func(*together)) {
	for i := range s.What {
		comes := material(&s.What[i], r)
		show(&together{s.In, there, comes, rise})
		there = there.with(comes)
	}
}

// sent is what a step sends to another place.
func sent(r *route.Route, s *route.Step, in *process.State) contents {
	out := inside(in)
	for i := range s.What {
		out = out.with(material(&s.What[i], r))
	}
	if s.Verb().Solids == route.Stays && s.Product != "liquid" {
		return out.liquid()
	}
	return out
}

// states are the two places of a step when it is done.
type states struct{ in, to process.State }

// after is what the places of a step hold when it is done. Where powder met its etchant
// only in the place that was filled, the walk tells of that one.
func after(d *process.Done, s *route.Step, in process.State) states {
	switch {
	case s.Into == "":
		return states{in: d.After}
	case d.Place != s.Into:
		out := states{in: d.After}
		if d.Filled != nil {
			out.to = *d.Filled
		}
		return out
	case s.Verb().Does == route.Moves && !s.Part.Set:
		return states{in: process.State{Place: s.In}, to: d.After}
	}
	return states{in: in, to: d.After}
}

// rise is the greatest that what a step puts in can give where acid meets base: of what
// it parts again only the acid that was there is known.
func rise(s *route.Step, before, after *process.State) float64 {
	if does := s.Verb().Does; does == route.Washes || does == route.Prewashes {
		acid, base := before.Sides()
		return before.MostRise(math.Max(acid-base, 0))
	}
	return growth(before, after)
}

// growth is the greatest rise by the acid and base that have met since.
func growth(before, after *process.State) float64 {
	a0, b0 := before.Sides()
	a1, b1 := after.Sides()
	met := math.Min(a1, b1) - math.Min(a0, b0)
	if met <= 0 {
		return 0
	}
	if most := after.MostRise(met); !math.IsNaN(most) {
		return most
	}
	return before.MostRise(met) // what comes takes up more, nobody knows how much
}
