package aid

import (
	"math"

	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// FirstAid is what stands wherever contact is spoken of. It is always whole: a
// part of it would be followed as if it were all. It holds no dose and no time
// that anything may be left on the skin.
func (b *Aid) FirstAid() []document.Block {
	var out []document.Block
	if b.Tags.Has("hf") {
		out = append(out, document.Paragraph{Text: words.Of("skin.hf_lead"), Tone: document.Warning},
			document.List{Ordered: true, Items: []string{words.Of("skin.rinse"), words.Of("skin.gel"), words.Of("skin.help"),
				words.Of("skin.sheet")}},
			document.Paragraph{Text: words.Of("skin.gel_is")},
			document.Paragraph{Text: PainComes(b.StrongestHF()), Tone: document.Warning},
			document.Paragraph{Text: words.Of("skin.area")})
	}
	if b.Tags.Has("tmaoh") {
		out = append(out, document.Paragraph{Text: words.Of("skin.tmaoh"), Tone: document.Warning},
			document.List{Ordered: true, Items: []string{words.Of("skin.tmaoh_shower"), words.Of("skin.tmaoh_help"),
				words.Of("skin.tmaoh_breath"),
				words.Of("skin.sheet")}})
	}
	if len(out) == 0 && b.burns() {
		out = append(out, document.Paragraph{Text: words.Of("skin.corrosive"), Tone: document.Warning},
			document.List{Ordered: true, Items: []string{words.Of("skin.corrosive_rinse"), words.Of("skin.corrosive_help"),
				words.Of("skin.sheet")}})
	}
	out = append(out, b.otherWays(), document.Paragraph{Text: words.Of("skin.pointer")})
	if !b.Tags.Has("hf") && !b.Tags.Has("tmaoh") { // of what else there is nothing is held
		out = append(out, document.Blanks{Labels: []string{words.Of("skin.effects")}})
	}
	return out
}

// burns reports whether the route takes an acid or a base at all.
func (b *Aid) burns() bool {
	for i := range b.Review.Case.Route.Steps {
		for j := range b.Review.Case.Route.Steps[i].What {
			if s := b.Review.Case.Route.Steps[i].What[j].Substance; s != nil && s.Acid != 0 {
				return true
			}
		}
	}
	return false
}

// PainComes says how late pain can be by the strength of the strongest acid
// fluoride, wt%. The weaker the acid the later the pain, so an edge counts to
// the weaker side, and what is not known has the longest delay.
func PainComes(strength float64) string {
	at, when := words.Of("skin.strength_unknown"), words.Of("skin.pain_day")
	if !math.IsNaN(strength) {
		at = words.Of("skin.strength", number.With(number.Significant(strength, 3, 1), "wt%"))
	}
	switch {
	case strength > 50:
		when = words.Of("skin.pain_now")
	case strength > 20:
		when = words.Of("skin.pain_hours")
	}
	return words.Of("skin.delay", at, when)
}

// otherWays is the eyes, what was breathed in and what was swallowed.
func (b *Aid) otherWays() document.Block {
	eyes := words.Of("skin.eyes")
	if b.Tags.Has("hf") {
		eyes = words.Of("skin.eyes_hf")
	}
	return document.Facts{Pairs: []document.Pair{{Name: words.Of("skin.in_eyes"), Value: eyes},
		{Name: words.Of("skin.in_air"), Value: words.Of("skin.breathed")},
		{Name: words.Of("skin.in_mouth"), Value: words.Of("skin.swallowed")}}}
}

// Ready is what has to stand ready before the start, as boxes and blanks:
// nothing is known here of the people and the room.
func (b *Aid) Ready() []document.Block {
	if !b.Tags.Has("hf") && !b.Tags.Has("tmaoh") {
		return nil
	}
	boxes := []string{words.Of("ready.two"), words.Of("ready.shower"), words.Of("ready.eyewash")}
	lines := []string{words.Of("ready.second"), words.Of("ready.tested")}
	if b.Tags.Has("hf") {
		boxes = append(boxes, words.Of("ready.gel"))
		lines = append(lines, words.Of("emergency.gel"))
	}
	lines = append(lines, words.Of("emergency.number"), words.Of("emergency.medical"), words.Of("contacts.day_night"))
	return []document.Block{document.Paragraph{Text: words.Of("ready.never_alone"), Tone: document.Warning},
		document.FormLine{Label: words.Of("ready.lead"), Boxes: append(boxes, words.Of("ready.sheet"))},
		document.Blanks{Labels: lines}}
}

// Standing is what is filled in and ticked before the start on a sheet or card.
func (b *Aid) Standing() []document.Block {
	if out := b.Ready(); out != nil {
		return out
	}
	return []document.Block{document.Blanks{Labels: []string{words.Of("door.second"), words.Of("contacts.day_night"),
		words.Of("contacts.emergency")}}}
}
