package hazards

import (
	"math"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/upset"
)

// judge holds every figure that stands for something that can happen against
// every limit of its quantity, by its dangerous end.
func judge(c route.Case, figs []figure.Figure, k *process.Walk) []figure.Finding {
	return judgedBy(c, figs, k, finding, func(*figure.Figure) bool { return false })
}

// judgedBy is judge with what makes a finding of a figure and a limit, and figures
// that are left out.
func judgedBy(c route.Case, figs []figure.Figure, k *process.Walk, by func(c route.Case, figs []figure.Figure, f *figure.Figure, id string, l *limit.Limit) figure.Finding, skip func(*figure.Figure) bool) []figure.Finding {
	out := make([]figure.Finding, 0, len(figs)/2)
	var ls []limit.Limit
	for i := range figs {
		f := &figs[i]
		if !judged(figs, f) || skip(f) {
			continue
		}
		if f.Quantity == "fluoride.hf_strength" && !isWorst(figs, f) && !isWorstKnown(figs, f) {
			continue // one strength is enough to say so
		}
		ls = heldBy(c, figs, k, f, ls[:0])
		id := ""
		if len(ls) > 0 {
			id = f.ID()
		}
		for i := range ls {
			out = append(out, by(c, figs, f, id, &ls[i]))
		}
	}
	return out
}

// judged reports whether a figure has a verdict of its own: not what is so only
// if a container were shut, nor what repeats another. What follows from a failure
// is judged once, by the worst of its laws.
func judged(figs []figure.Figure, f *figure.Figure) bool {
	switch {
	case f.Case == "closed" || strings.HasPrefix(f.Case, "closed,"):
		return false
	case f.Failure != "" && f.Quantity == "heat.temperature_peak" && upset.AsMeant(f.Failure):
		return false
	case f.Failure != "":
		return f.Case == f.Failure
	}
	return f.Of == "" && !(f.Place == "" && hasMembers(figs, f.Quantity))
}

// beside are figures shown beside another that carries the verdict.
var beside = map[string]bool{"fluoride.free_hf": true, "heat.etch.dissolution_bound": true, "heat.etch.per_gram": true, "heat.boiling_point": true,
	"heat.accumulation": true, "heat.time_to_boil": true, "heat.time_left": true, "heat.time_to_maximum_rate": true, "heat.cooling.required": true, "heat.ice": true, "heat.peak_power.during_addition": true, "heat.peak_power.after_addition": true,
	"gas.hydrogen.dilution_air": true, "gas.hydrogen.peak_rate": true, "gas.hydrogen.room_time": true,
	"gas.closed.time_to_10_kpa": true, "gas.headspace.flammable_time": true, "gas.headspace.energy": true, "gas.headspace.flammable_from": true, "gas.suck_back": true,
	"air.saturated": true, "air.emission": true, "air.exhaust_required": true, "air.warm_emission": true, "air.hood_limit": true, "air.time_to_idlh": true, "air.time_to_short_limit": true, "air.spill_area": true,
	"heat.technical_limit": true, "heat.criticality_class": true, "heat.class_margin": true}

// mustBeKnown is the limit of a figure that no other limit judges and that is
// unknown where danger lies: a figure nobody knows is a finding of its own.
func mustBeKnown(f *figure.Figure) limit.Limit {
	return limit.Limit{ID: "has_to_be_known", Quantity: f.Quantity, Label: "has to be known", Value: math.NaN(), Unit: f.Value.Unit,
		Document: "Working rule of this tool", Status: "common practice"}
}

// isWorstKnown reports whether f is the first of the greatest known members of
// a quantity whose worst is unknown: beside that one, it still has its verdict.
func isWorstKnown(figs []figure.Figure, f *figure.Figure) bool {
	if f.Danger().Unknown() {
		return false
	}
	first := true
	for i := range figs {
		g := &figs[i]
		switch {
		case g.Quantity != f.Quantity:
		case g.Place == "" && g.Of != "" && !g.Danger().Unknown():
			return false
		case g == f:
			first = false
		case g.Of == "" && (beyond(g.Danger().V, f.Danger().V) || first && !beyond(f.Danger().V, g.Danger().V) && !g.Danger().Unknown()):
			return false
		}
	}
	return true
}

// isWorst reports whether f is the member the bare figure repeats.
func isWorst(figs []figure.Figure, f *figure.Figure) bool {
	for i := range figs {
		if figs[i].Quantity == f.Quantity && figs[i].Place == "" {
			return figs[i].Of == f.ID()
		}
	}
	return false
}

func hasMembers(figs []figure.Figure, quantity string) bool {
	for i := range figs {
		if figs[i].Quantity == quantity && figs[i].Place != "" {
			return true
		}
	}
	return false
}

// heldBy is limitsFor, or that a figure has to be known where no limit judges it.
func heldBy(c route.Case, figs []figure.Figure, k *process.Walk, f *figure.Figure, out []limit.Limit) []limit.Limit {
	out = limitsFor(c, figs, k, f, out)
	if len(out) == 0 && f.Danger().Unknown() && !beside[f.Quantity] {
		out = append(out, mustBeKnown(f))
	}
	return out
}

// limitsFor adds the limits of a figure to out: those of the set, and those
// another figure or the route itself sets.
func limitsFor(c route.Case, figs []figure.Figure, k *process.Walk, f *figure.Figure, out []limit.Limit) []limit.Limit {
	for i := range c.Limits.Limits {
		if l := &c.Limits.Limits[i]; l.Quantity != f.Quantity || (l.Agent != "" && l.Agent != f.Agent) || !here(c, l) {
			continue
		}
		l := c.Limits.Limits[i]
		if l.ID == "no_rated_container" {
			if r, ok := rating(c, f.Place); ok {
				l = r
			}
		}
		if l.Average > 0 {
			l = averaged(c, f, &l)
		}
		out = append(out, l)
	}
	switch f.Quantity {
	case "heat.mtsr":
		out = append(append(out, boilingLimit(figs, f)), technicalLimit(figs, f)...)
		out = append(out, hoodLimit(figs, f)...)
	case "heat.quench_water":
		out = append(out, vesselRoom(c, k, f)...)
	case "heat.temperature_peak":
		l := boilingLimit(figs, f)
		l.ID, l.Label = "boiling_as_run", "boiling point, as it is cooled here"
		if f.Failure != "" {
			l.ID, l.Label = "boiling_if_it_fails", "boiling point, if something goes wrong"
		}
		out = append(out, l)
	case "heat.addition_time.required", "gas.addition_time.hood", "gas.addition_time.vent":
		out = append(out, writtenOver(c, f)...)
	case "air.breathing_zone", "air.floor":
		out = breathing(c, f, out)
	case "air.time_average":
		out = together(c, f, out)
	case "air.plume":
		out = append(out, offSite(c, f)...)
	case "air.room_peak":
		out = emergency(f, out)
	case "gas.hydrogen.dilution_air":
		out = append(out, siteHood(c, f)...)
	case "gas.vent.bore_required":
		out = append(out, writtenVent(c, k, f)...)
	case "gas.free_volume.required":
		out = append(out, roomLeft(c, k, f)...)
	case "heat.cooling.required":
		out = append(out, siteCooling(c, k, f)...)
	case "heat.ice":
		out = append(out, writtenIce(c, k, f)...)
	case "wash.cycles":
		out = append(out, writtenCycles(k, f)...)
	case "neutralise.mass":
		out = append(out, writtenMass(k, f)...)
	}
	return out
}

// here reports whether a limit holds at the site; where no jurisdiction is
// stated, those of every one do.
func here(c route.Case, l *limit.Limit) bool {
	if l.Jurisdiction == "" || c.Site == nil || c.Site.Jurisdiction == "" {
		return true
	}
	return c.Site.Jurisdiction == l.Jurisdiction || within[c.Site.Jurisdiction] == l.Jurisdiction
}

// within are the jurisdictions inside another, whose limits hold there too.
var within = map[string]string{"us_california": "us", "de": "eu"}

// rating is the pressure a place may hold: the lower of its rating and its
// relief, and only if it has both.
func rating(c route.Case, key string) (limit.Limit, bool) {
	for i := range c.Route.Places {
		p := &c.Route.Places[i]
		if p.Key == key && p.Rating.Set && p.Relief.Set {
			return limit.Limit{ID: "container_rating", Quantity: "gas.closed.pressure", Label: "lower of rating and relief",
				Value: min(p.Rating.In("kPa"), p.Relief.In("kPa")), Unit: "kPa gauge", Document: "the route", Section: p.At, Status: "given"}, true
		}
	}
	return limit.Limit{}, false
}

func boilingLimit(figs []figure.Figure, f *figure.Figure) limit.Limit {
	l := limit.Limit{ID: "boiling_point", Quantity: f.Quantity, Label: "boiling point", Value: math.NaN(), Unit: "degC", Document: "this review", Status: "computed"}
	for i := range figs {
		if figs[i].Quantity == "heat.boiling_point" && figs[i].Place == f.Place {
			l.Value, l.Section = figs[i].Low.V, figs[i].ID()
		}
	}
	return l
}

// writtenOver is the time the route gives an addition: none where it does not
// say that it takes any.
func writtenOver(c route.Case, f *figure.Figure) []limit.Limit {
	for i := range c.Route.Steps {
		if s := &c.Route.Steps[i]; figure.Step(s.Number) == f.Place {
			l := limit.Limit{ID: "written_over", Quantity: f.Quantity, Label: "time the route gives the addition", Unit: "min",
				Document: "the route", Section: route.At(s.Number, "over"), Status: "given", Near: 1}
			if s.Over.Set {
				l.Value = c.Given("t", "min", s.Over).V
			}
			return []limit.Limit{l}
		}
	}
	return nil
}

// siteCooling is the heat that the shared cooling of the site takes, for a vessel
// with a jacket; not known where no site says, nor where nothing is said of what
// cools the vessel. A bath and a vessel that nothing cools do not stand on it.
func siteCooling(c route.Case, k *process.Walk, f *figure.Figure) []limit.Limit {
	p, _ := placeOf(c, k, f)
	if p == nil || p.Cooling != nil && p.Cooling.Kind != "jacket" {
		return nil
	}
	l := limit.Limit{ID: "site_cooling", Quantity: f.Quantity, Label: "heat the shared cooling takes", Value: math.NaN(), Unit: "W",
		Document: "the site", Section: "cooling.power", Status: "given"}
	if p.Cooling != nil && c.Site != nil && c.Site.CoolingPower.Set {
		l.Value, l.Section = least(c.Site.CoolingPower).In("W"), c.Site.CoolingPower.At
	}
	return []limit.Limit{l}
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
			l := limit.Limit{ID: "written_ice", Quantity: f.Quantity, Label: "ice the route has", Value: math.NaN(), Unit: "kg",
				Document: "the route", Section: p.At, Status: "given", Near: 0.5}
			if p.Cooling != nil && p.Cooling.Ice.Set {
				l.Value = c.Given("m", "kg", p.Cooling.Ice).V
			}
			return []limit.Limit{l}
		}
	}
	return nil
}

func writtenCycles(k *process.Walk, f *figure.Figure) []limit.Limit {
	for i := range k.Washes {
		if x := &k.Washes[i]; figure.Step(x.Step) == f.Place && x.Written > 0 {
			return []limit.Limit{{ID: "written_cycles", Quantity: f.Quantity, Label: "cycles the route writes", Value: float64(x.Written), Unit: "1",
				Document: "the route", Section: route.At(x.Step, "cycles"), Status: "given", Near: 1}}
		}
	}
	return nil
}

func writtenMass(k *process.Walk, f *figure.Figure) []limit.Limit {
	for i := range k.Treated {
		x := &k.Treated[i]
		if x.Step > 0 && figure.Step(x.Step) == f.Place && x.Agent != nil {
			return []limit.Limit{{ID: "written_mass", Quantity: f.Quantity, Label: "agent the route writes", Value: x.Added.V, Unit: "kg",
				Document: "the route", Section: route.At(x.Step, "what"), Status: "given", Near: 1}}
		}
	}
	return nil
}

// finding is a verdict with what it means and what would be necessary.
func finding(c route.Case, figs []figure.Figure, f *figure.Figure, id string, l *limit.Limit) figure.Finding {
	out := verdict(c, figs, f, id, l)
	out.Text, out.Needs = words(c, figs, f, l, out.Verdict)
	if f.Quantity == "heat.mtsr" {
		out.Text += countedBy(figs, f)
	}
	return out
}

// verdict holds a figure against a limit, without words.
func verdict(_ route.Case, figs []figure.Figure, f *figure.Figure, id string, l *limit.Limit) figure.Finding {
	q, _ := figure.Lookup(f.Quantity)
	danger := f.High.V
	if q.Danger == figure.Low {
		danger = f.Low.V
	}
	if f.Quantity == "heat.mtsr" {
		danger, _ = highest(figs, f.Place)
	}
	level, margin := l.Compare(danger, q.Danger == figure.Low)
	out := figure.Finding{Figure: id, Margin: margin, Limit: figure.LimitRef{ID: l.ID, Label: l.Label, Value: l.Value, Unit: l.Unit,
		Document: l.Document, Section: l.Section, Edition: l.Edition, Status: l.Status}}
	out.Verdict = [...]figure.Verdict{figure.Within, figure.Near, figure.UnknownVerdict, figure.Exceeds}[level]
	if l.ID == "no_rated_container" && level == limit.Unknown {
		out.Verdict = figure.Exceeds // whatever the pressure is, none may be held
	}
	return out
}

// words says what a finding means and what would be necessary, never
// sufficient, to meet its limit.
func words(c route.Case, figs []figure.Figure, f *figure.Figure, l *limit.Limit, v figure.Verdict) (string, []figure.Need) {
	if v == figure.Within {
		return "Within the stated limit under the stated assumptions.", nil
	}
	need := func(quantity string, value float64, unit, text string) []figure.Need {
		return []figure.Need{{Quantity: quantity, Value: value, Unit: unit, Text: "Necessary, not sufficient: " + text}}
	}
	none := math.NaN()
	if v == figure.UnknownVerdict {
		return "It cannot be judged: what is missing is listed.", nil
	}
	switch l.ID {
	case "no_rated_container":
		return "Gas from the first moment and nowhere for it to go: this container may not be shut while it can still give gas.",
			need("gas.closed.pressure", 0, "kPa gauge", "leave it open to a vent until no more gas can come, or use a vessel with a stated rating and relief.")
	case "fill_limit":
		return "Hot, the liquid grows into the room that is left; a container full of liquid bursts whatever it is rated for.",
			need("vessel.filling", l.Value*l.Near, "%", "less liquid, or a larger container.")
	case "container_rating":
		return "The pressure comes to what the container or its relief is rated for, or close to it.",
			need("gas.closed.pressure", l.Value/2, "kPa gauge", "less powder, more gas space or a container rated for more, with its relief led where it harms nobody.")
	case "additive":
		return "Each may be within its own limit and the two are not, since both burn the same airways.",
			need("air.additive", 1, "1", "more extract at the source, a colder liquor or less of it open.")
	case "scrubber_hf", "scrubber_hcl", "scrubber_ammonia":
		return "So much leaves that it is not to be let out unscrubbed.", need("air.emission", l.Value, "mg/min", "a scrubber, or less open surface.")
	case "oxygen":
		return "The gas of the route takes the place of air in the room.", need("air.oxygen", l.Value, "vol%", "extract that is checked, and an oxygen alarm where gas can gather.")
	case "written_over":
		return "If everything reacts as it goes in, the stated cooling follows only a slower addition. If the etch is slow, this time controls free metal and wetting alone, and what waits afterwards is in the share that has not reacted.",
			need("heat.addition_time.required", f.High.V, "min", "give the addition at least this long, or cool better.")
	case "site_hood":
		return "The hydrogen takes more air than the hood moves, even if all of it took part; at the mouth of the vessel the gas is not diluted, whatever the hood moves.",
			need("gas.hydrogen.dilution_air", f.High.V, "m3/h", "a slower addition or a smaller batch, or the gas led off from the vessel itself.")
	case "written_vent":
		return "Through the stated bore twice the largest flow takes more than 1 kPa, or the vessel has none that is known.",
			need("gas.vent.bore_required", f.High.V, "mm", "a vent nowhere narrower than this, that nothing can close.")
	case "room_left":
		return "Bubbles and foam take more room than there is over the liquor: it comes out with the gas.",
			need("gas.free_volume.required", f.High.V, "mL", "a larger vessel, a smaller batch or a slower addition.")
	case "two_phase":
		return "Gas leaves the liquor so fast that it takes liquid with it: plan the vent and the room over the liquor for both together, which is not done here.",
			need("gas.superficial_velocity", l.Value*l.Near, "mm/s", "a slower addition or a wider vessel.")
	case "site_cooling":
		return "If everything reacts as it goes in, that is more heat than the shared cooling takes, or close to it, whatever gets through the wall.",
			need("heat.cooling.required", f.High.V, "W", "a slower addition, a smaller batch or more cooling, and nothing else on the same cooling at the time.")
	case "written_ice":
		return "The ice melts away before it has taken up the heat of the etch.", need("heat.ice", f.High.V, "kg", "have at least this much ice, and the bath cold before.")
	case "boiling_as_run":
		return "As it is cooled here, the liquor comes to its boiling point or close to it; boiling drives acid vapour out and is no barrier.",
			need("heat.temperature_peak", l.Value-limit.NearKelvin, "degC", "a slower addition, better cooling or less powder per volume of liquor.")
	case "boiling_if_it_fails":
		return "If this goes wrong the liquor comes to its boiling point or close to it; boiling drives acid vapour out and is no barrier.",
			need("heat.temperature_peak", l.Value-limit.NearKelvin, "degC", "less powder per volume of liquor, and a way to keep this from happening.")
	case "boiling_point":
		return "If cooling fails with nothing yet reacted, the liquor comes to its boiling point or close to it; boiling drives acid vapour out and is no barrier.",
			need("heat.mtsr", l.Value-limit.NearKelvin, "degC", "less powder per volume of liquor, or an addition slow enough that little accumulates.")
	case "technical_limit":
		return "If cooling fails with nothing yet reacted, the liquor comes to what its vessel stands, or close to it, before it boils.",
			need("heat.mtsr", l.Value-limit.NearKelvin, "degC", "a vessel that stands more, stated in the route, or less powder per volume of liquor.")
	case "hood_limit":
		return "If cooling fails with nothing yet reacted, the liquor gets so warm that its vapour takes more than the hood moves, or has to be scrubbed, before it boils.",
			need("heat.mtsr", l.Value-limit.NearKelvin, "degC", "less powder per volume of liquor, less open surface, or a closed vessel whose gas is led through a scrubber.")
	case "vessel_room":
		return "The vessel does not hold its quench water: plan a second vessel under it.",
			need("heat.quench_water", f.High.V, "kg", "have this much cold water at hand, in a vessel with room for it and for the liquor.")
	case "mixing_to_boiling":
		return "The heat of mixing alone warms the liquor by this much.", need("heat.mix.rise", l.Value*0.2, "K", "the denser acid into the water, in portions, cooled.")
	case "severity_medium":
		return "The heat of the whole charge is of more than low severity.", need("heat.adiabatic_rise", l.Value, "K", "less powder per volume of liquor.")
	case "bulk_40_degc":
		return "Neutralised as it stands, the liquor gets too warm to hold its acid.", need("neutralise.dilution_water", dilution(figs, f), "L", "dilute first with this much water, cold, and add the acid to the slurry in portions.")
	case "written_cycles":
		return "Dilution alone needs more cycles than the route writes.", need("wash.cycles", f.High.V, "1", "plan for this many cycles, and measure the pH and the fluoride.")
	case "written_mass":
		return "The route writes less neutraliser than all acid and all fluoride take.", need("neutralise.mass", f.High.V, "kg", "have at least this much, with the usual excess on top.")
	case "no_release":
		return "A toxic hydride can come off. No limit value for it is held here; a specialist has to set one.", need("gas.hydride.bound", none, "L", "a review by a specialist before any acid meets this powder.")
	case "specialist_50_wt":
		return "This strength needs a specialist review.", need("fluoride.hf_strength", l.Value, "wt%", "a weaker acid.")
	}
	switch f.Quantity {
	case "air.breathing_zone":
		return "A person near the source can breathe more than this limit allows for as long as it lasts.",
			need("air.exhaust_required", exhaust(figs, f), "m3/h", "extract of this much at the source, in a hood whose containment has been tested.")
	case "air.time_average":
		return "Each step may be short enough for itself, and all of them together are not.",
			need("air.time_average", l.Value, "ppm", "extract at the source, a colder liquor, less of it open, or steps apart from each other and shared by several people.")
	case "air.plume":
		return "Out of doors people downwind can breathe more than the emergency level for as long as it lasts.",
			need("air.plume", l.Value, "ppm", "smaller bottles, a scrubber, or a stack that is high enough by a calculation of the site.")
	case "air.floor":
		return "Carbon dioxide on the floor can come to this level: nobody kneels or sits there, and nobody goes into a pit.",
			need("air.floor", l.Value, "ppm", "extract near the floor, and a slower neutralisation.")
	case "air.hydrogen_share":
		return "The hydrogen of the route can make this air flammable.",
			need("air.hydrogen_share", l.Value, "vol%", "extract that is checked, and no closed cabinet for anything that can still give gas.")
	case "air.room_peak":
		return "Spilt on the floor outside a hood it can bring the room to this level: leave, close, call. Reagent is for trained responders.",
			need("air.room_peak", l.Value, "ppm", "smaller containers, carried in a tray under a hood, and a room that can be left at once.")
	}
	return "Held against a limit of the site.", need(f.Quantity, l.Value, l.Unit, "bring the figure to the limit.")
}

// exhaust is the extract that goes with a figure of the air of a step, m3/h.
func exhaust(figs []figure.Figure, f *figure.Figure) float64 {
	for i := range figs {
		if figs[i].Quantity == "air.exhaust_required" && figs[i].Place == f.Place && figs[i].Agent == f.Agent {
			return figs[i].High.V
		}
	}
	return math.NaN()
}

func dilution(figs []figure.Figure, f *figure.Figure) float64 {
	for i := range figs {
		if figs[i].Quantity == "neutralise.dilution_water" && figs[i].Place == f.Place && figs[i].Agent == f.Agent {
			return figs[i].High.V
		}
	}
	return math.NaN()
}
