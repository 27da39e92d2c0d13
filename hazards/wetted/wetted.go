package wetted

import (
	"math"
	"slices"
	"strings"
	"unicode"

	"etchbound/chemicals/material"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Quantity is the name of the figures of this package.
const Quantity = "material.attack"

// Unstated is the kind of what is missing of a part that nobody states.
const Unstated = "wetted_open"

// grade is the value of a verdict; of what is not known there is none.
var grade = map[material.Verdict]float64{material.Yes: 0, material.Limited: 1, material.No: 2}

// part is a part of a place with all that it meets.
type part struct {
	id    figure.ID
	worst material.Verdict
	lacks working.Missing
	says  phrase.Phrase
	met   material.Exposure // the hottest and longest of all
	least float64           // h that are stated
}

// Read gives a figure for each part of each place that meets what some material does not
// stand, and for each part that a step needs there and that nobody names.
func Read(c route.Case, w *working.Sheet, k *process.Walk) []figure.Figure {
	all := met(k.Contacts)
	for _, x := range unstated(c.Route, k.Contacts) {
		for _, place := range x.places {
			all = append(all, part{id: ID(place, x.what), worst: material.Unknown,
				lacks: working.Lacks(Unstated, x.what), says: phrase.Of("material.unstated", x.what, place)})
		}
	}
	out := make([]figure.Figure, 0, len(all))
	for i := range all {
		p := &all[i]
		f := figure.Figure{ID: p.id, Conditions: p.says}
		if n, known := grade[p.worst]; known {
			f.Value = working.Exact("n", "1", n, "what the part stands of what it meets")
		} else {
			f.Value = working.Absent("n", "1", p.lacks)
		}
		f.Value = w.Keep(f.Value)
		f.SetRange(f.Value.V, f.Value.V)
		out = append(out, f)
	}
	return out
}

// met are the parts that the walk judged, each once, by the worst of what it meets.
func met(contacts []process.Contact) []part {
	var out []part
	for i := range contacts {
		c := &contacts[i]
		id := ID(c.Place, c.Part)
		at := slices.IndexFunc(out, func(p part) bool { return p.id == id })
		if at < 0 {
			at = len(out)
			out = append(out, part{id: id, worst: c.Verdict, lacks: lackOf(c), met: c.Met, least: c.AtLeast})
		}
		p := &out[at]
		p.worst, p.least = max(p.worst, c.Verdict), math.Max(p.least, c.AtLeast)
		p.met.DegC, p.met.Hours = math.Max(p.met.DegC, c.Met.DegC), math.Max(p.met.Hours, c.Met.Hours)
		p.says = p.says.And(of(c))
	}
	for i := range out {
		out[i].says = out[i].says.And(howLong(&out[i]))
	}
	return out
}

// lackOf is what has to be known of a part.
func lackOf(c *process.Contact) working.Missing {
	switch c.Part {
	case "wall":
		return working.Lacks("wall_open", c.Place)
	case "lid":
		return working.Lacks("lid_open", c.Place)
	}
	return working.Lacks("part_open", c.Part+" of "+c.Place)
}

// of says of a part what it is made of, what it meets, how strong, and what it stands of it.
func of(c *process.Contact) phrase.Phrase {
	made := phrase.As(c.Material)
	if c.Material == "" {
		made = phrase.Of("fact.material_unknown_none")
	}
	strong := phrase.Phrase{}
	if !math.IsNaN(c.Met.Strength) {
		strong = phrase.Of("material.strength", math.Max(c.Met.Strength, thin))
	}
	why := phrase.Phrase{}
	switch {
	case !math.IsNaN(c.UsedTo):
		why = phrase.Of("material.because", phrase.Of("fact.attacked_hot", c.UsedTo, c.Met.DegC))
	case c.Note != "":
		why = phrase.Of("material.because", phrase.As(c.Note))
	}
	return phrase.Of("material.part", c.Part, c.Place, made, phrase.Of("material.stands."+c.Verdict.String()),
		material.Called(c.Medium), strong, why)
}

// thin is the least strength that is told, wt%: what is thinner is at most that.
const thin = 0.001

// howLong says how hot what a part meets is at most, and for how long.
func howLong(p *part) phrase.Phrase {
	says := phrase.Of("material.temperature_open")
	if !math.IsNaN(p.met.DegC) {
		says = phrase.Of("material.temperature", p.met.DegC)
	}
	if math.IsNaN(p.met.Hours) {
		return says.And(phrase.Of("material.hours_open", p.least))
	}
	return says.And(phrase.Of("material.hours", p.met.Hours))
}

// ID is the id of the figure of a part.
func ID(place, what string) figure.ID {
	agent := strings.Join(strings.FieldsFunc(strings.ToLower(what), func(r rune) bool {
		return r > unicode.MaxASCII || !unicode.IsLetter(r) && !unicode.IsDigit(r)
	}), "_")
	agent = strings.ReplaceAll(agent, "_and_", "_with_") // which joins two agents
	if agent == "" {
		agent = "part"
	}
	return figure.ID{Quantity: Quantity, Place: figure.At(place), Agent: agent}
}
