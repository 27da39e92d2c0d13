// Package cards knows the sheets that hang at a door, stand at the bench and stick on
// a bottle, one sheet each. It must not know another page.
package cards

import (
	"slices"
	"strconv"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/selection"
	"etchbound/reports/words"
)

// Sections is the door sheet, the bench card and the labels.
func Sections(d *draft.Draft) []document.Section {
	b := from(d)
	return []document.Section{b.doorSheet(), b.benchCard(), b.wasteLabel()}
}

func (b *builder) doorSheet() document.Section {
	s := document.Begin("door")
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("door.alarm"), Tone: document.Warning})
	s.Blocks = append(s.Blocks, selection.Warned(b.Draft)...)
	s.Blocks = append(s.Blocks, document.Facts{Pairs: []document.Pair{
		{Name: words.Of("door.operation"), Value: b.Title()},
		{Name: words.Of("door.materials"), Value: b.namesOf(b.Held())},
		{Name: words.Of("door.gas"), Value: b.gasText()},
		{Name: words.Of("envelope.batch"), Value: b.BatchText()},
		{Name: words.Of("door.alone"), Value: b.Alone()},
	}}, b.doorBlanks(), document.Paragraph{Text: words.Of("deference.short")})
	return s
}

// doorBlanks is what people write on the door: until when, who, and whom to call. What
// to do at the bench stands at the bench, since nobody is to go in to do it.
func (b *builder) doorBlanks() document.Block {
	return document.Blanks{Labels: []string{words.Of("door.start"), words.Of("door.end"), words.Of("door.person"),
		words.Of("door.second"), words.Of("contacts.day_night"), words.Of("contacts.emergency"),
		words.Of("door.shut")}}
}

func (b *builder) namesOf(h []*draft.Held) string {
	var s []string
	for _, m := range h {
		s = append(s, m.Name)
	}
	return strings.Join(s, "; ")
}

const hydrochloricAcid = "7647-01-0"

// gasText names the gases the review found.
func (b *builder) gasText() string {
	var s []string
	if _, ok := b.Bare("fluoride.hf_equivalent"); ok {
		s = append(s, words.Of("gas.hf_vapour"))
	}
	for _, h := range b.Held() {
		if h.Cas == hydrochloricAcid {
			s = append(s, words.Of("gas.hcl_vapour"))
		}
	}
	for _, q := range []string{"gas.hydrogen.total", "gas.hydride.bound", "neutralise.ammonia"} {
		if f, ok := b.Bare(q); ok && (f.Value.Unknown() || f.Value.V > 0 || f.High().V > 0) {
			s = append(s, b.FigureName(f)+": "+b.ValueAndRange(f))
		}
	}
	for f := range b.Set.Of("gas.evolved.bound") {
		name := draft.AgentName(f.Quantity, f.Agent)
		if f.Agent != "" && f.Case.Failure == "" && !(f.Danger().V <= 0) && !slices.Contains(s, name) {
			s = append(s, name)
		}
	}
	for f := range b.Set.Of("neutralise.carbon_dioxide") { // of an agent the route uses, not of those it might
		if !f.Place.IsZero() && f.Place != figure.Waste && f.Agent != "" {
			s = append(s, b.FigureName(f)+": "+b.ValueAndRange(f))
		}
	}
	if len(s) == 0 {
		return words.Of("gas.none_found")
	}
	return strings.Join(s, "; ")
}

func (b *builder) benchCard() document.Section {
	s := document.Begin("bench")
	s.Blocks = append(s.Blocks, selection.Warned(b.Draft)...)
	s.Blocks = append(s.Blocks, b.FirstAid()...) // at the head of the page, so that no page break cuts it
	t := document.Table{Caption: words.Of("bench.caption"),
		Columns: document.Right(document.Columns("col.step", "col.done", "col.materials", "col.time",
			"col.temperature", "col.tick"), 0)}
	for i := range b.Route().Steps {
		st := &b.Route().Steps[i]
		t.Rows = append(t.Rows, document.Row(strconv.Itoa(st.Number), draft.StepText(st)+", "+draft.StepWhere(st),
			b.StepMaterials(st),
			draft.StepTime(st), draft.Amount(st.Temperature), "☐"))
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	s.Blocks = append(s.Blocks, b.FirstLines()...)
	var stop document.List
	stop.Ordered = true
	stop.Items = selection.StopTexts(b.Draft)
	if len(stop.Items) > 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("bench.holds")}, stop)
	}
	s.Blocks = append(s.Blocks, b.storedLines()...)
	s.Blocks = append(s.Blocks, b.equipment()...)
	s.Blocks = append(append(s.Blocks, b.SpillLine()...), b.Standing()...)
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("deference.short")})
	return s
}

// equipment is what people do with what failed, stood unwatched or is handed on, in a line.
func (b *builder) equipment() []document.Block {
	var said []string
	for _, d := range b.Duties() {
		if d.Card != "" {
			said = append(said, d.Card)
		}
	}
	if said == nil {
		return nil
	}
	return []document.Block{document.Paragraph{Text: strings.Join(said, " ")}}
}

func (b *builder) wasteLabel() document.Section {
	s := document.Begin("label")
	for i := range b.Places {
		c := &b.Places[i]
		if waste := b.Route().TakesWaste(c.Place); waste || len(c.Names) > 0 {
			s.Blocks = append(s.Blocks, document.Label{Lines: b.labelLines(c, waste)})
		}
	}
	if len(s.Blocks) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("label.none")})
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("label.note")})
	return s
}
