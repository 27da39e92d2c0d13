package verdict

import (
	"maps"
	"math"
	"slices"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// LimitsOf is limitsFor, or that a figure has to be known where no limit judges it.
func LimitsOf(c route.Case, figs *figure.Set, k *process.Walk, f *figure.Figure, out []limit.Limit) []limit.Limit {
	return limitsOf(&subject{c, figs, k, f}, inOrder(c.Limits, f.Quantity), out)
}

func limitsOf(h *subject, in ordered, out []limit.Limit) []limit.Limit {
	f := h.f
	out = limitsFor(h, in, out)
	if len(out) == 0 && f.Danger().Unknown() && !Beside(f.Quantity) {
		out = append(out, mustBeKnown(f))
	}
	return out
}

// ordered are the places of the limits of a set by their quantity, from 1: of each the
// first, and behind each limit the next of the same.
type ordered struct {
	first map[string]int32
	next  []int32
}

// inOrder orders the limits of a set, or of one quantity where it is named.
func inOrder(s *limit.Set, only string) ordered {
	out := ordered{map[string]int32{}, make([]int32, len(s.Limits))}
	for i := len(s.Limits) - 1; i >= 0; i-- {
		if q := s.Limits[i].Quantity; only == "" || q == only {
			out.next[i], out.first[q] = out.first[q], int32(i+1)
		}
	}
	return out
}

// limitsFor adds the limits of a figure to out: those of the set, and those
// another figure or the route itself sets.
func limitsFor(h *subject, in ordered, out []limit.Limit) []limit.Limit {
	c, figs, f := h.c, h.figs, h.f
	for i := int(in.first[f.Quantity]) - 1; i >= 0; i = int(in.next[i]) - 1 {
		if l := &c.Limits.Limits[i]; (l.Agent != "" && l.Agent != f.Agent) || !holdsAt(c, l) {
			continue
		}
		if !heldWhen(c, figs, &c.Limits.Limits[i], f) {
			continue
		}
		l := c.Limits.Limits[i]
		if l.Role == limit.Unrated {
			if r, ok := rating(c, f); ok {
				l = r
			}
		}
		switch {
		case drops(f) && l.Quantity == "air.breathing_zone" && l.Average != f.Case.Over:
			continue // the figure of that time is held against it
		case drops(f):
		case l.Average > 0:
			l = averaged(c, f, &l)
		}
		out = append(out, l)
	}
	if by := made[f.Quantity]; by != nil {
		return append(out, by(h)...)
	}
	return out
}

// subject is a figure that is held against limits, and what those are made of.
type subject struct {
	c    route.Case
	figs *figure.Set
	walk *process.Walk
	f    *figure.Figure
}

// Made are the quantities that are held against what another figure, the route, the site or a
// time says, by name.
func Made() []string { return slices.Sorted(maps.Keys(made)) }

// made are the limits that another figure, the route, the site or a time makes of a
// quantity.
var made = map[string]func(*subject) []limit.Limit{
	"heat.mtsr":                   ofMTSR,
	"heat.quench_water":           func(h *subject) []limit.Limit { return vesselRoom(h.c, h.walk, h.f) },
	"heat.temperature_peak":       ofPeak,
	"heat.addition_time.required": func(h *subject) []limit.Limit { return writtenOver(h.c, h.f) },
	"gas.addition_time.hood":      func(h *subject) []limit.Limit { return writtenOver(h.c, h.f) },
	"gas.addition_time.vent":      func(h *subject) []limit.Limit { return writtenOver(h.c, h.f) },
	"air.breathing_zone":          func(h *subject) []limit.Limit { return breathing(h.c, h.f) },
	"air.floor":                   func(h *subject) []limit.Limit { return breathing(h.c, h.f) },
	"air.time_average":            func(h *subject) []limit.Limit { return averagedAlike(h.c, h.f) },
	"air.boiled_average":          func(h *subject) []limit.Limit { return averagedAlike(h.c, h.f) },
	"air.plume":                   func(h *subject) []limit.Limit { return offSite(h.c, h.f) },
	"air.room_peak":               func(h *subject) []limit.Limit { return emergency(h.c, h.f) },
	"gas.hydrogen.dilution_air":   func(h *subject) []limit.Limit { return siteHood(h.c, h.f) },
	"gas.vent.bore_required":      func(h *subject) []limit.Limit { return writtenVent(h.c, h.walk, h.f) },
	"gas.free_volume.required":    func(h *subject) []limit.Limit { return roomLeft(h.c, h.walk, h.f) },
	"heat.cooling.required":       func(h *subject) []limit.Limit { return siteCooling(h, "site_cooling") },
	"heat.jacket.load":            chillers,
	"heat.ice":                    func(h *subject) []limit.Limit { return writtenIce(h.c, h.walk, h.f) },
	"wash.cycles":                 func(h *subject) []limit.Limit { return writtenCycles(h.walk, h.f) },
	"neutralise.mass":             func(h *subject) []limit.Limit { return writtenMass(h.walk, h.f) },
	"store.time_to_quarter":       func(h *subject) []limit.Limit { return writtenStore(h.c, h.f) },
	"stock.share":                 func(h *subject) []limit.Limit { return ofPrograms(h.c, h.f) },
	"stock.release":               func(h *subject) []limit.Limit { return ofPrograms(h.c, h.f) },
}

// ofMTSR are the temperatures that the highest temperature of a step is held
// against.
func ofMTSR(h *subject) []limit.Limit {
	out := append([]limit.Limit{boilingLimit(h.figs, h.f)}, technicalLimit(h.figs, h.f)...)
	return append(out, hoodLimit(h.figs, h.f)...)
}

// ofPeak is the boiling point, as it is cooled or as it went wrong.
func ofPeak(h *subject) []limit.Limit {
	l := boilingLimit(h.figs, h.f)
	l.Key = limit.Named(limit.Review, "boiling_as_run")
	if h.f.Case.Failure != "" {
		l.Key, l.Stops = limit.Named(limit.Review, "boiling_if_it_fails"), limit.GoesOn
	}
	return []limit.Limit{l}
}

// holdsAt reports whether a limit holds at the site; where no jurisdiction is
// stated, those of every one do.
func holdsAt(c route.Case, l *limit.Limit) bool {
	if l.Jurisdiction == "" || c.Site == nil || c.Site.Jurisdiction == "" {
		return true
	}
	return c.Site.Jurisdiction == l.Jurisdiction || insideOf[c.Site.Jurisdiction] == l.Jurisdiction
}

// insideOf are the jurisdictions inside another, whose limits hold there too.
var insideOf = map[string]string{"us_california": "us", "de": "eu"}

// rating is the pressure a place may hold: the lower of its rating and its
// relief, and only if it has both.
func rating(c route.Case, f *figure.Figure) (limit.Limit, bool) {
	for i := range c.Route.Places {
		p := &c.Route.Places[i]
		if p.Key == f.Place.Key() && p.Rating.Set && p.Relief.Set {
			return limit.Limit{Key: limit.Named(limit.Route, "container_rating"), Quantity: f.Quantity,
				Value: min(p.Rating.In("kPa"), p.Relief.In("kPa")), Unit: "kPa gauge", Section: p.At, Status: "given"}, true
		}
	}
	return limit.Limit{}, false
}

func boilingLimit(figs *figure.Set, f *figure.Figure) limit.Limit {
	l := limit.Limit{Key: limit.Named(limit.Review, "boiling_point"), Quantity: f.Quantity, Value: math.NaN(),
		Unit:   "degC",
		Status: "computed", Role: limit.Boils, Stops: limit.UnlessKept}
	for g := range figs.At("heat.boiling_point", f.Place) {
		l.Value, l.Section = g.Low().V, g.ID.String()
	}
	return l
}

// writtenOver is the time the route gives an addition: none where it does not
// say that it takes any.
func writtenOver(c route.Case, f *figure.Figure) []limit.Limit {
	for i := range c.Route.Steps {
		if s := &c.Route.Steps[i]; figure.Step(s.Number) == f.Place {
			l := limit.Limit{Key: limit.Named(limit.Route, "written_over"), Quantity: f.Quantity, Unit: "min",
				Section: route.At(s.Number, "over"), Status: "given", Near: 1}
			if s.Over.Set {
				l.Value = c.GoesIn(nil, s).V / 60
			}
			return []limit.Limit{l}
		}
	}
	return nil
}

// siteCooling is the heat that the shared cooling of the site takes beside other work, for
// a vessel with a jacket; not known where no site says either, nor where nothing is said of
// what cools the vessel. A bath and a vessel that nothing cools do not stand on it.
func siteCooling(h *subject, key string) []limit.Limit {
	c, f := h.c, h.f
	p, _ := placeOf(c, h.walk, f)
	if p == nil || p.Cooling != nil && p.Cooling.Kind != "jacket" {
		return nil
	}
	l := limit.Limit{Key: limit.Named(limit.Site, key), Quantity: f.Quantity,
		Value: math.NaN(), Unit: "W", Section: "cooling.power", Status: "given"}
	if p.Cooling != nil && c.Site != nil && c.Site.CoolingPower.Set {
		l.Value, l.Section = math.NaN(), "cooling.others"
		if taken := most(c.Site.CoolingTaken); taken.Set {
			l.Value, l.Section = max(0, least(c.Site.CoolingPower).In("W")-taken.In("W")), c.Site.CoolingPower.At
		}
	}
	return []limit.Limit{l}
}

// chillers are the heat that the shared cooling takes, and the heat that the chiller of the vessel
// itself takes at the temperature of its coolant: more of it comes into the jacket than leaves.
func chillers(h *subject) []limit.Limit {
	out := siteCooling(h, "site_chiller")
	if out == nil {
		return nil
	}
	p, _ := placeOf(h.c, h.walk, h.f)
	l := limit.Limit{Key: limit.Named(limit.Route, "written_chiller"), Quantity: h.f.Quantity, Value: math.NaN(),
		Unit: "W", Section: p.At, Status: "given"}
	if p.Cooling != nil && p.Cooling.Power.Set {
		l.Value, l.Section = least(p.Cooling.Power).In("W"), p.Cooling.Power.At
	}
	return append(out, l)
}

// writtenIce is the ice that stands around the place of a step; not known where
// nothing is said of its cooling, or only that it is ice.
func writtenIce(c route.Case, k *process.Walk, f *figure.Figure) []limit.Limit {
	for i := range k.Steps {
		if figure.Step(k.Steps[i].Number) != f.Place {
			continue
		}
		for j := range c.Route.Places {
			p := &c.Route.Places[j]
			if p.Key != k.Steps[i].Place || p.Cooling != nil && p.Cooling.Kind != "ice_bath" && !p.Cooling.Ice.Set {
				continue
			}
			l := limit.Limit{Key: limit.Named(limit.Route, "written_ice"), Quantity: f.Quantity, Value: math.NaN(), Unit: "kg",
				Section: p.At, Status: "given", Near: 0.5}
			if p.Cooling != nil && p.Cooling.Ice.Set {
				l.Value = c.Given("m", "kg", p.Cooling.Ice).V
			}
			return []limit.Limit{l}
		}
	}
	return nil
}

// writtenCycles is how often the route washes; not known where it does not say, so
// that leaving the number out never takes the finding away.
func writtenCycles(k *process.Walk, f *figure.Figure) []limit.Limit {
	for i := range k.Washes {
		x := &k.Washes[i]
		if figure.Step(x.Step) != f.Place {
			continue
		}
		written := math.NaN()
		if x.Written > 0 {
			written = float64(x.Written)
		}
		return []limit.Limit{{Key: limit.Named(limit.Route, "written_cycles"), Quantity: f.Quantity,
			Value: written, Unit: "1", Section: route.At(x.Step, "cycles"), Status: "given", Near: 1}}
	}
	return nil
}

func writtenMass(k *process.Walk, f *figure.Figure) []limit.Limit {
	for i := range k.Treated {
		x := &k.Treated[i]
		if x.Step > 0 && figure.Step(x.Step) == f.Place {
			return []limit.Limit{{Key: limit.Named(limit.Route, "written_mass"), Quantity: f.Quantity,
				Value: x.Added.V, Unit: "kg", Section: route.At(x.Step, "what"), Status: "given", Near: 1,
				Stops: limit.UnlessKept}}
		}
	}
	return nil
}
