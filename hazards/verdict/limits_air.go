package verdict

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
)

// breathing adds the limits a vapour near a person is held against: of every kind
// and averaging time the strictest that holds at the site, at what it allows for
// as long as the step lasts, and what is immediately dangerous.
func breathing(c route.Case, f *figure.Figure) []limit.Limit {
	var out []limit.Limit
	minutes := minutesOf(c, f)
	strictest := limit.Strictest(f.Agent, c.Jurisdiction())
	for i := range strictest {
		e := &strictest[i]
		if boilsOff(f) && e.Average > shortMinutes || drops(f) && e.Average != f.Case.Over {
			continue // it is over by then, or another figure counts for how long it comes
		}
		if f.Case.Over > 0 {
			out = append(out, exposure(e, f.Quantity, e.Value, math.NaN()))
			continue
		}
		out = append(out, exposure(e, f.Quantity, e.Allowed(minutes), minutes))
	}
	return out
}

// exposure is a limit of exposure as it holds for a time in min.
func exposure(e *limit.Exposure, quantity string, value, minutes float64) limit.Limit {
	l := limit.Limit{Key: limit.Named(limit.BuiltIn, e.ID), Quantity: quantity, Agent: e.Agent, Label: e.Label,
		Value: value, Unit: "ppm",
		Document: e.Document, Section: e.Section, Edition: e.Edition, Status: e.Status, Unseen: e.Remembered()}
	if e.Kind == limit.Escape {
		l.Role = limit.Escapes
	}
	if e.Average > 0 && minutes < e.Average {
		l.While = limit.While{Minutes: minutes, Full: e.Value}
	}
	return l
}

// averaged is a local limit that is averaged over time, as it holds for as long as
// a step lasts.
func averaged(c route.Case, f *figure.Figure, l *limit.Limit) limit.Limit {
	minutes := minutesOf(c, f)
	e := limit.Exposure{Value: l.Value, Average: l.Average}
	out := *l
	out.Value = e.Allowed(minutes)
	if minutes < l.Average {
		out.While = limit.While{Minutes: minutes, Full: l.Value}
	}
	return out
}

// offSite is, of a stack, the emergency level of tier 2 for as long as a step lasts, eight
// hours at most; of a bottle that breaks, the level for the time of a mean, and for the
// peak before it is empty the ceilings and what is immediately dangerous.
func offSite(c route.Case, f *figure.Figure) []limit.Limit {
	minutes := f.Case.Over
	switch {
	case f.Place == figure.Stack:
		minutes = longest(c)
	case minutes == 0:
		return peaks(c, f)
	}
	e, ok := limit.AEGL(f.Agent, 2, minutes)
	if !ok {
		return nil
	}
	return []limit.Limit{{Key: limit.Named(limit.BuiltIn, e.Series), Quantity: f.Quantity, Agent: f.Agent,
		Label: "AEGL-2", While: limit.While{Minutes: minutes}, Value: e.Value, Unit: "ppm",
		Document: e.Document, Edition: e.Edition, Status: e.Status}}
}

// peaks are the limits that no moment may pass: the ceilings of the site and what is
// immediately dangerous.
func peaks(c route.Case, f *figure.Figure) []limit.Limit {
	var out []limit.Limit
	all := limit.Strictest(f.Agent, c.Jurisdiction())
	for i := range all {
		if e := &all[i]; e.Average == 0 {
			out = append(out, exposure(e, f.Quantity, e.Value, math.NaN()))
		}
	}
	return out
}

// longest is the time of the longest step, min: that of the last tabled level at
// most, and where a step does not say.
func longest(c route.Case) float64 {
	const most = 480
	out := 10.0
	for i := range c.Route.Steps {
		s := &c.Route.Steps[i]
		t := minutesOf(c, &figure.Figure{ID: figure.ID{Place: figure.Step(s.Number)}})
		if math.IsNaN(t) {
			return most
		}
		out = max(out, t)
	}
	return min(out, most)
}

// minutesOf is how long the step of a figure goes on, min; not a number where it does
// not say.
func minutesOf(c route.Case, f *figure.Figure) float64 {
	if boilsOff(f) {
		return math.Inf(1) // for how long is not told: as if it went on
	}
	for i := range c.Route.Steps {
		if s := &c.Route.Steps[i]; figure.Step(s.Number) == f.Place {
			return c.Lasts(nil, s).V
		}
	}
	return math.NaN()
}

// What boils off is over within the time of a short limit, and is held against the
// emergency level of the shortest time, min.
const shortMinutes, soonest = 15, 10

// boilsOff reports whether a figure is of what goes off with a liquor that boils.
func boilsOff(f *figure.Figure) bool {
	return f.Case.Failure != "" || f.Case.Branch == figure.Boiling
}

// drops reports whether a figure is of what gas throws up: at its largest flow, or on average
// over the time of a limit.
func drops(f *figure.Figure) bool { return f.Case.Branch == figure.Mist && f.Case.Failure == "" }

// averagedAlike adds the limits that are averaged over the time that a figure of all
// steps is averaged over.
func averagedAlike(c route.Case, f *figure.Figure) []limit.Limit {
	var out []limit.Limit
	all := limit.Strictest(f.Agent, c.Jurisdiction())
	for i := range all {
		if e := &all[i]; e.Average > 0 && e.Average == f.Case.Over {
			out = append(out, exposure(e, f.Quantity, e.Value, math.NaN()))
		}
	}
	for i := range c.Limits.Limits {
		l := c.Limits.Limits[i]
		if l.Origin == limit.Local && l.Quantity == "air.breathing_zone" && (l.Agent == "" || l.Agent == f.Agent) &&
			l.Average > 0 && l.Average == f.Case.Over {
			l.Quantity = f.Quantity
			out = append(out, l)
		}
	}
	return out
}

// emergency adds the concentrations at which a room after a spill is left: what is
// immediately dangerous, and the emergency level for ten minutes. Where a bottle breaks,
// that level is for the mean of ten minutes, and the peak meets the ceilings too.
func emergency(c route.Case, f *figure.Figure) []limit.Limit {
	if f.Place == figure.Delivery && f.Case.Over == 0 {
		return peaks(c, f)
	}
	var out []limit.Limit
	all := limit.ExposureAt(f.Agent, "")
	for i := range all {
		e := &all[i]
		if e.Leave() && (f.Case.Over == 0 && !boilsOff(f) || f.Case.Over == e.Average ||
			boilsOff(f) && e.Average == soonest) {
			out = append(out, exposure(e, f.Quantity, e.Value, math.NaN()))
		}
	}
	return out
}
