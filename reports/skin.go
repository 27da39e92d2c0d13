package reports

import "math"

func (b *builder) skin() Section {
	s := section("skin")
	s.Blocks = append(b.firstAid(), b.ready()...)
	if b.tags.has("hf") {
		s.Blocks = append(s.Blocks, Paragraph{say("skin.sources_hf"), Note})
	}
	if b.tags.has("tmaoh") {
		s.Blocks = append(s.Blocks, Paragraph{say("skin.sources_tmaoh"), Note})
	}
	return s
}

// firstAid is what stands wherever contact is spoken of. It is always whole: a
// part of it would be followed as if it were all. It holds no dose and no time
// that anything may be left on the skin.
func (b *builder) firstAid() []Block {
	var out []Block
	if b.tags.has("hf") {
		out = append(out, Paragraph{say("skin.hf_lead"), Warning},
			List{Ordered: true, Items: []string{say("skin.rinse"), say("skin.gel"), say("skin.help"), say("skin.sheet")}},
			Paragraph{Text: say("skin.gel_is")}, Paragraph{painComes(b.strongestHF()), Warning},
			Paragraph{Text: say("skin.area")})
	}
	if b.tags.has("tmaoh") {
		out = append(out, Paragraph{say("skin.tmaoh"), Warning},
			List{Ordered: true, Items: []string{say("skin.tmaoh_shower"), say("skin.tmaoh_help"), say("skin.tmaoh_breath"),
				say("skin.sheet")}})
	}
	if len(out) == 0 && b.burns() {
		out = append(out, Paragraph{say("skin.corrosive"), Warning},
			List{Ordered: true, Items: []string{say("skin.corrosive_rinse"), say("skin.corrosive_help"), say("skin.sheet")}})
	}
	if len(out) > 0 {
		out = append(out, b.otherWays())
	}
	return append(out, Paragraph{Text: say("skin.pointer")})
}

// burns reports whether the route takes an acid or a base at all.
func (b *builder) burns() bool {
	for i := range b.r.Case.Route.Steps {
		for j := range b.r.Case.Route.Steps[i].What {
			if s := b.r.Case.Route.Steps[i].What[j].Substance; s != nil && s.Acid != 0 {
				return true
			}
		}
	}
	return false
}

// painComes says how late pain can be by the strength of the strongest acid
// fluoride, wt%. The weaker the acid the later the pain, so an edge counts to
// the weaker side, and what is not known has the longest delay.
func painComes(strength float64) string {
	at, when := say("skin.strength_unknown"), say("skin.pain_day")
	if !math.IsNaN(strength) {
		at = say("skin.strength", with(significant(strength, 3, 1), "wt%"))
	}
	switch {
	case strength > 50:
		when = say("skin.pain_now")
	case strength > 20:
		when = say("skin.pain_hours")
	}
	return say("skin.delay", at, when)
}

// otherWays is the eyes, what was breathed in and what was swallowed.
func (b *builder) otherWays() Block {
	eyes := say("skin.eyes")
	if b.tags.has("hf") {
		eyes = say("skin.eyes_hf")
	}
	return Facts{[]Pair{{say("skin.in_eyes"), eyes}, {say("skin.in_air"), say("skin.breathed")},
		{say("skin.in_mouth"), say("skin.swallowed")}}}
}

// ready is what has to stand ready before the start, as boxes and blanks:
// nothing is known here of the people and the room.
func (b *builder) ready() []Block {
	if !b.tags.has("hf") && !b.tags.has("tmaoh") {
		return nil
	}
	boxes := []string{say("ready.two"), say("ready.shower"), say("ready.eyewash")}
	lines := []string{say("ready.second"), say("ready.tested")}
	if b.tags.has("hf") {
		boxes = append(boxes, say("ready.gel"))
		lines = append(lines, say("emergency.gel"))
	}
	lines = append(lines, say("emergency.number"), say("emergency.medical"), say("contacts.day_night"))
	return []Block{Paragraph{say("ready.never_alone"), Warning},
		FormLine{say("ready.lead"), append(boxes, say("ready.sheet"))}, Blanks{lines}}
}

// standing is what is filled in and ticked before the start on a sheet or card.
func (b *builder) standing() []Block {
	if out := b.ready(); out != nil {
		return out
	}
	return []Block{Blanks{[]string{say("door.second"), say("contacts.day_night"), say("contacts.emergency")}}}
}
