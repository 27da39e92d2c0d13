package review

import (
	"math"
	"slices"
	"strings"

	"etchbound/chemicals/material"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/wetted"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// construction is what each part of each place meets, as the walk judged it.
func (b *builder) construction() document.Section {
	s := document.Begin("construction")
	open, suited := contactTable(), contactTable()
	for i := range b.Review.Walk.Contacts {
		t := &open
		if b.Review.Walk.Contacts[i].Verdict == material.Yes {
			t = &suited
		}
		if row := contactRow(&b.Review.Walk.Contacts[i]); !draft.Joins(t.Rows, row) {
			t.Rows = append(t.Rows, row)
		}
	}
	if len(b.Review.Walk.Contacts) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("construction.none")})
	}
	open.Rows = sameBut(open.Rows, 2)
	if len(open.Rows) > 0 {
		s.Blocks = append(s.Blocks, open)
	}
	if len(suited.Rows) > 0 {
		s.Blocks = append(s.Blocks, document.Fold{Summary: words.Of("construction.suited", listed(suited.Rows)),
			Blocks: []document.Block{suited}})
	}
	if silent := b.unstatedMaterials(); silent != "" {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("construction.unstated", silent),
			Tone: document.Warning})
	}
	if open := b.unstatedParts(); open != "" {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("construction.parts", open), Tone: document.Warning})
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("construction.note")})
	s.Blocks = append(s.Blocks, b.partsHeld()...)
	return s
}

// sameBut joins rows that say the same in all columns but one, which then has all they say.
func sameBut(rows [][]document.Cell, column int) [][]document.Cell {
	var out [][]document.Cell
	for _, r := range rows {
		at := slices.IndexFunc(out, func(o []document.Cell) bool {
			for i := range o {
				if i != column && !o[i].Says(r[i]) {
					return false
				}
			}
			return true
		})
		if at < 0 {
			out = append(out, r)
			continue
		}
		out[at][column].Add(r[column].Items()...)
	}
	return out
}

func contactTable() document.Table {
	return document.Table{Caption: words.Of("construction.caption"),
		Columns: document.OnScreen(document.Columns("col.place", "col.material_of", "col.medium",
			"col.suited", "col.note", "col.source", "col.status"), 5)}
}

func contactRow(c *process.Contact) []document.Cell {
	place, note, source, status := c.Place, c.Note, c.Source, c.Status
	switch c.Part {
	case "wall":
	case "lid":
		place = words.Of("construction.lid", c.Place)
	default:
		place = words.Of("construction.part", plain.Fold(c.Part), c.Place)
	}
	medium := words.Of("medium." + c.Medium)
	switch {
	case c.Material == "": // whatever it is that it meets
		medium, note = words.Of("construction.stands_there"), words.Of("construction.settle")
		source, status = words.Of("value.dash"), words.Of("value.dash")
	case c.Verdict == material.Unknown:
		note, source, status = words.Of("construction.settle"), words.Of("value.dash"), words.Of("value.dash")
	case c.Verdict != material.Yes:
		medium += met(c)
	}
	if !math.IsNaN(c.UsedTo) {
		note = words.Of("construction.used_to", c.UsedTo)
	}
	return document.Row(place, words.OrNotStated(plain.Fold(c.Material)), medium,
		words.Of("suited."+c.Verdict.String()), words.OrDash(note), source, status)
}

// thin is the least strength that is told, wt%: what is thinner is at most that.
const thin = 0.001

// met is how strong, hot and long a medium meets a part, as far as that is known.
func met(c *process.Contact) string {
	var out strings.Builder
	if !math.IsNaN(c.Met.Strength) {
		out.WriteString(words.Of("construction.strength", math.Max(c.Met.Strength, thin)))
	}
	if math.IsNaN(c.Met.DegC) {
		out.WriteString(words.Of("construction.temperature_open"))
	} else {
		out.WriteString(words.Of("construction.temperature", c.Met.DegC))
	}
	if math.IsNaN(c.Met.Hours) {
		return out.String() + words.Of("construction.hours_open")
	}
	return out.String() + words.Of("construction.hours", c.Met.Hours)
}

// unstatedParts are the parts that steps need and nobody states, and where.
func (b *builder) unstatedParts() string {
	var out []string
	for i := range b.Review.Unknown {
		u := &b.Review.Unknown[i]
		if u.Kind != wetted.Unstated {
			continue
		}
		var places []string
		for _, id := range u.Figures {
			places = append(places, id.Place.Key())
		}
		out = append(out, words.Of("construction.at", u.Subject.String(), strings.Join(places, ", ")))
	}
	return strings.Join(out, "; ")
}

// partsHeld folds the verdict of each part behind how many there are of each.
func (b *builder) partsHeld() []document.Block {
	n := map[figure.Verdict]int{}
	for i := range b.Review.Findings {
		if f := &b.Review.Findings[i]; f.Figure.Quantity == wetted.Quantity {
			n[f.Verdict]++
		}
	}
	blocks := b.Counts(func(f *figure.Figure) bool { return f.Quantity == wetted.Quantity })
	if blocks == nil {
		return nil
	}
	return []document.Block{document.Fold{Summary: words.Of("construction.held", n[figure.Within], n[figure.Near],
		n[figure.Exceeds], n[figure.UnknownVerdict]), Blocks: blocks}}
}

// listed is what the rows are about: a place, its material, what it stands, and how far
// that was checked.
func listed(rows [][]document.Cell) string {
	var out []string
	for _, r := range rows {
		out = append(out, words.Of("construction.listed", r[0].Text, r[1].Text, r[2].Text, r[6].Text))
	}
	return strings.Join(out, "; ")
}

func (b *builder) unstatedMaterials() string {
	var s []string
	for i := range b.Route().Places {
		if p := &b.Route().Places[i]; strings.TrimSpace(p.Material) == "" {
			s = append(s, p.Key)
		}
	}
	return strings.Join(s, ", ")
}
