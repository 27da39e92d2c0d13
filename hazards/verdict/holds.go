package verdict

import (
	"slices"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Hold is a point at which work stops until something is so: one a matter, with
// everything that it is of.
type Hold struct {
	ID     string
	Says   phrase.Phrase
	Places []figure.Place  // of the findings it is of, in their order
	Parts  []phrase.Phrase // what stands in its sentence, where that is several things of which the same is said
}

// takes reports whether a hold point says something already, or says it from now on: of
// several things of which the same is said, one sentence tells them all.
func (h *Hold) takes(says phrase.Phrase) bool {
	if h.Says.Key != says.Key {
		return false
	}
	one, ok := onlyPart(says)
	if !ok || len(h.Parts) == 0 {
		return h.Says.Equal(says)
	}
	if !slices.ContainsFunc(h.Parts, one.Equal) {
		h.Parts = append(h.Parts, one)
		h.Says.Args = []any{h.Says.Args[0].(phrase.Phrase).And(phrase.As(" "), one)}
	}
	return true
}

// Tells reports whether a hold point says something among what it says.
func (h *Hold) Tells(says phrase.Phrase) bool { return slices.ContainsFunc(h.Parts, says.Equal) }

// at notes where a hold point holds.
func at(h *Hold, place figure.Place) {
	if !place.IsZero() && !slices.Contains(h.Places, place) {
		h.Places = append(h.Places, place)
	}
}

// onlyPart is the one phrase that stands in another.
func onlyPart(p phrase.Phrase) (phrase.Phrase, bool) {
	if len(p.Args) != 1 || len(p.More) > 0 {
		return phrase.Phrase{}, false
	}
	part, ok := p.Args[0].(phrase.Phrase)
	return part, ok
}

// Holds are the points at which work stops until something is so, of what the walk
// of a route says and of what was found against limits.
func Holds(r *route.Route, k *process.Walk, set *figure.Set, findings []figure.Finding) []Hold {
	var out []Hold
	add := func(id string, says phrase.Phrase) *Hold {
		for i := range out {
			if out[i].takes(says) {
				return &out[i]
			}
		}
		h := Hold{ID: id, Says: says}
		if one, ok := onlyPart(says); ok {
			h.Parts = []phrase.Phrase{one}
		}
		out = append(out, h)
		return &out[len(out)-1]
	}
	said := func(last bool) {
		for _, f := range k.Facts {
			switch {
			case f.ID == "drops_thrown" && !last:
				at(add("acid_mist", phrase.Of("hold.acid_mist")), figure.Step(f.Step))
			case !holdFact[f.ID] || (f.ID == "lid_unknown") != last:
			case keptVented[f.ID] && heatsClosed(r, f.Step):
				add(f.ID, phrase.Of("hold.gives_gas_closed", f.Says))
			default:
				add(f.ID, phrase.Of("hold."+f.ID, f.Says))
			}
		}
	}
	said(false)
	for i := range r.Steps {
		if s := &r.Steps[i]; s.Verb().Does == route.Shuts {
			add("heated_closed", phrase.Of("hold.heated_closed", s.In, s.Number))
		}
	}
	for i := range findings {
		f := &findings[i]
		if f.Verdict.Rank() < figure.Exceeds.Rank() {
			continue
		}
		if f.Figure.Case.Branch == figure.Mist {
			at(add("acid_mist", phrase.Of("hold.acid_mist")), f.Figure.Place)
		}
		of := set.Get(f.Figure)
		if f.Limit.Stops.Halts(f.Verdict == figure.Exceeds || strange(of) || atWorst(of, &f.Limit)) && !supposed(f.Figure) {
			at(add(holdOf(f), stops(r, k, f)), f.Figure.Place)
		}
	}
	said(true)
	return out
}

// strange reports whether a figure is unknown by something that the data do not hold: it may
// be as bad as any, and work stops as where it is exceeded.
func strange(f *figure.Figure) bool {
	return f != nil && slices.ContainsFunc(f.Value.Missing(), working.Missing.OfUnheld)
}

// atWorst reports whether a figure that is unknown for want of facts of the site exceeds a limit
// with each of them as bad as a bench has it: work stops as where it is known to.
func atWorst(f *figure.Figure, l *limit.Limit) bool {
	if f == nil || f.Worst.None() {
		return false
	}
	// Of what a writer leaves out there is no worst. Where only a hold is missing, since nothing follows
	// the etch yet, nothing is left out of what is written.
	if m := f.Worst.Missing(); m != nil {
		return !slices.ContainsFunc(m, func(m working.Missing) bool { return !m.LeftOut() }) &&
			slices.ContainsFunc(m, func(m working.Missing) bool { return m.Kind == working.NotGiven })
	}
	q, _ := figure.Lookup(f.Quantity)
	level, _ := l.Compare(f.Worst.V, q.Danger == figure.Low)
	return level == limit.Exceeds
}

// keptVented are the facts that say to keep a vessel open, which one that is heated
// closed cannot be.
var keptVented = map[string]bool{"ammonia": true, "carbon_dioxide": true, "second_gas": true}

// heatsClosed reports whether a step heats its place closed.
func heatsClosed(r *route.Route, step int) bool {
	for i := range r.Steps {
		if r.Steps[i].Number == step {
			return r.Steps[i].Verb().Does == route.Shuts
		}
	}
	return false
}

// holdOf is the id of the hold point of a finding: that of its limit, but for gas that
// gathers, which is one matter wherever it does.
func holdOf(f *figure.Finding) string {
	if f.Limit.Role == limit.Gathers {
		return gathersKey
	}
	return f.Limit.ID
}

const gathersKey = "hydrogen_quarter"

// stops says what to do before work goes on, with how much where that is a number.
func stops(r *route.Route, k *process.Walk, f *figure.Finding) phrase.Phrase {
	switch {
	case f.Limit.Role == limit.Unrated && heatedShut(f.Figure):
		return phrase.Of("hold.finding." + heatedKey)
	case len(f.Needs) > 0 && f.Limit.Role == limit.Diluted && f.Needs[0].Value > 0:
		return phrase.Of("hold.finding.bulk_40_degc_by", figure.RoundUp(f.Needs[0].Value, 3))
	case f.Limit.Role == limit.Met:
		return phrase.Of("hold.finding."+f.Limit.ID, f.Says)
	case f.Limit.Role == limit.Mixing:
		return stopsMixing(r, k, f)
	case f.Figure.Quantity == "air.oxygen" && f.Verdict == figure.UnknownVerdict: // of no one gas
		return phrase.Of("hold.finding.oxygen_unknown")
	}
	return phrase.Of("hold.finding." + holdOf(f))
}

// stopsMixing names the pair that meets and gives its advice. A heat that nobody knows
// is not said to boil anything.
func stopsMixing(r *route.Route, k *process.Walk, f *figure.Finding) phrase.Phrase {
	step, _ := f.Figure.Place.Step()
	p, advice := mixing(r, k, f.Figure.Place)
	unknown, named := f.Verdict == figure.UnknownVerdict, p.Comes != "" && p.There != ""
	switch {
	case unknown && named:
		return phrase.Of("hold.finding.mixing_unknown", phrase.Step(step), p.Comes, p.There, advice)
	case unknown:
		return phrase.Of("hold.finding.mixing_unknown_which", phrase.Step(step), advice)
	case named:
		return phrase.Of("hold.finding.mixing_to_boiling", phrase.Step(step), p.Comes, p.There, advice)
	}
	return phrase.Of("hold.finding.mixing_to_boiling_which", phrase.Step(step), advice)
}

// supposed reports whether a figure is of an agent the route does not use.
func supposed(id figure.ID) bool { return id.Place == figure.Waste && id.Agent != "" }

// holdFact are the facts that stop work, each with words of its own.
var holdFact = map[string]bool{
	"not_held":             true,
	"unfollowed":           true,
	"unfollowed_hot":       true,
	"hydride":              true,
	"hydride_impurity":     true,
	"formula":              true,
	"unlisted":             true,
	"toxic_metal":          true,
	"toxic_gas":            true,
	"oxidant":              true,
	"ammonia":              true,
	"carbon_dioxide":       true,
	"second_gas":           true,
	"powder_in_air":        true,
	"sintered_shut":        true,
	"jar_opened":           true,
	"sieved":               true,
	"melt_gas":             true,
	"melt_shut":            true,
	"anode":                true,
	"nitrogen_trichloride": true,
	"melt":                 true,
	"stored_unsaid":        true,
	"overfull":             true,
	"attacked":             true,
	"material_unknown":     true,
	"lid_unknown":          true,
	"hf_strong":            true,
	"slow_fluoride":        true,
	"slab":                 true,
	"wash_open":            true,
}
