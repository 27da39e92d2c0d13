package verdict

import (
	"fmt"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Hold is a point at which work stops until something is so.
type Hold struct {
	ID   string
	Text string
}

// Holds are the points at which work stops until something is so, of what the walk
// of a route says and of what was found against limits.
func Holds(r *route.Route, facts []process.Fact, findings []figure.Finding) []Hold {
	var out []Hold
	add := func(id, text string) {
		for _, h := range out {
			if h.Text == text {
				return
			}
		}
		out = append(out, Hold{ID: id, Text: text})
	}
	said := func(last bool) {
		for _, f := range facts {
			if text, ok := holdText[f.ID]; ok && (f.ID == "lid_unknown") == last {
				add(f.ID, text+" "+f.Text)
			}
		}
	}
	said(false)
	for i := range r.Steps {
		if s := &r.Steps[i]; s.Verb().Does == route.Shuts {
			add("heated_closed", fmt.Sprintf("Do not open %s after step %d before it is at the temperature of the room: "+
				"then let its gas out slowly through a vent or scrubber, since gas does not condense.", s.In, s.Number))
		}
	}
	for i := range findings {
		f := &findings[i]
		if f.Verdict.Rank() < figure.Exceeds.Rank() {
			continue
		}
		text, ok := holdFinding[f.Limit.ID]
		if ok && f.Limit.Origin != limit.Local && !supposed(f.Figure) {
			add(f.Limit.ID, text)
		}
	}
	said(true)
	return out
}

// supposed reports whether a figure is of an agent the route does not use.
func supposed(id figure.ID) bool { return id.Place == figure.Waste && id.Agent != "" }

const noAcid = "Do not let acid meet this powder before a specialist review"

const notStood = "Do not start before it is known that the material stands what it meets."

var holdText = map[string]string{
	"hydride":          noAcid + "; no limit value for the gas is held here.",
	"hydride_impurity": noAcid + "; no limit value for the gas is held here.",
	"unlisted":         noAcid + ".",
	"toxic_metal":      "Ask the waste office before the first liquor is made.",
	"oxidant":          "Do not start before the gas and heat of this mixture have been measured at small scale.",
	"ammonia":          "Keep that vessel open in the hood in that step.",
	"carbon_dioxide":   "Keep that vessel open in that step and for hours afterwards.",
	"second_gas":       "Keep that vessel open to a vent in that step.",
	"melt":             "Do not start before what the melt gives off is known.",
	"stored":           "Do not store it shut: leave gas a way out, or open it in the hood at set intervals.",
	"overfull":         "Do not fill it so: take a larger container or a smaller batch.",
	"attacked":         "Do not start in this material.",
	"material_unknown": notStood,
	"lid_unknown":      notStood,
	"hf_strong":        "A specialist review is needed before anything else.",
	"slab":             "Do not start before the gas has been measured at small scale.",
}

var holdFinding = map[string]string{
	"no_rated_container": "Do not shut any container that can still give gas: open to a vent until it can give no more.",
	"boiling_point": "Do not add the powder until cooling, the addition and what is done if cooling fails have been " +
		"agreed: the whole charge could bring the liquor to boiling.",
	"bulk_40_degc": "Do not neutralise undiluted: dilution water first, cold, then acid into slurry in portions.",
	"written_mass": "Do not start neutralising until enough agent for all acid and all fluoride is at hand.",
	"mixing_to_boiling": "Do not mix it so: the heat of mixing alone could bring it to boiling. " +
		"Dense acid into water, cold and slowly, never water into acid.",
}
