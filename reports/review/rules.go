package review

import (
	_ "embed"
	"slices"
	"strconv"
	"strings"
	"sync"

	"etchbound/chemicals/material"
	"etchbound/hazards/figure"
	"etchbound/hazards/meeting"
	"etchbound/hazards/process"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/plain"
	"etchbound/reports/words"
	"etchbound/scaling"
	tables "etchbound/schemas/columns"
)

// The rules of thumb a committee expects stand in tables, a condition and its
// consequence a row, each with its source and how far that was checked.

//go:embed safeguards.csv
var safeguardsCSV string

//go:embed local.csv
var localCSV string

// safeguard is one precaution of one order.
type safeguard struct{ tag, order, text, source, status string }

var safeguardRules = sync.OnceValue(func() []safeguard {
	return tables.Must("reports/review/safeguards.csv", safeguardsCSV, func(r tables.Row) safeguard {
		return safeguard{r.Named("tag"), r.Named("order"), r.Named("text"), r.Named("source"), r.Named("status")}
	})
})

// leaveField is a question only people can answer.
type leaveField struct{ id, group, label string }

var leaveFields = sync.OnceValue(func() []leaveField {
	return tables.Must("reports/review/local.csv", localCSV, func(r tables.Row) leaveField {
		return leaveField{r.Named("id"), r.Named("group"), r.Named("label")}
	})
})

func (b *builder) pairs() document.Section {
	s := document.Begin("pairs")
	t := document.Table{Caption: words.Of("pairs.caption"),
		Columns: document.OnScreen(document.Columns("col.pair", "col.reaction", "col.met", "col.weight",
			"col.source", "col.status"), 4)}
	for i := range meeting.Pairs() {
		p := &meeting.Pairs()[i]
		where := b.meet(p)
		if len(where) == 0 {
			continue
		}
		t.Rows = append(t.Rows, document.Row(p.Names, p.Result, strings.Join(where, "; "),
			words.Of("severity."+p.Severity), p.Source, p.Status))
	}
	if len(t.Rows) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("pairs.none")})
	} else {
		s.Blocks = append(s.Blocks, t)
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("pairs.limits", len(meeting.Pairs())),
		Tone: document.Note})
	s.Blocks = append(s.Blocks, b.Counts(func(f *figure.Figure) bool {
		return draft.InFamily(f.Quantity, "order", "meeting")
	})...)
	return s
}

// meet is the places in which both sides of a pair have been, with the step
// that brought the second.
func (b *builder) meet(p *meeting.Pair) []string {
	var out []string
	for i := range b.Places {
		if step, ok := b.Places[i].Meets(p); ok {
			out = append(out, draft.MetAt(b.Places[i].Place.Key, step))
		}
	}
	return out
}

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
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("construction.note")})
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
		out[at][column].Text = joined(out[at][column].Text, r[column].Text)
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
	if c.Verdict == material.Unknown {
		note, source, status = words.Of("construction.settle"), words.Of("value.dash"), words.Of("value.dash")
	}
	return document.Row(place, words.OrNotStated(plain.Fold(c.Material)), words.Of("medium."+c.Medium),
		words.Of("suited."+c.Verdict.String()), words.OrDash(note), source, status)
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

// orders is the order of precedence of safeguards.
var orders = [...]string{"avoid", "reduce", "enclose", "ventilate", "procedure", "protective"}

func (b *builder) safeguards() document.Section {
	s := document.Begin("safeguards")
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("safeguards.lead")})
	run := scaling.RunOf(b.Review)
	s.Blocks = append(s.Blocks, trays(&run))
	s.Blocks = append(s.Blocks, b.less()...)
	s.Blocks = append(s.Blocks, b.past()...)
	t := document.Table{Caption: words.Of("safeguards.caption"), Columns: document.OnScreen(document.Columns(
		"col.order", "col.safeguard", "col.source", "col.status", "col.in_place"), 2)}
	for n, o := range orders {
		name, none := words.Of("safeguards.order", strconv.Itoa(n+1), words.Of("order."+o)), true
		for _, g := range safeguardRules() {
			if g.order == o && b.Tags.Has(g.tag) {
				t.Rows = append(t.Rows, document.Row(name, g.text, g.source, g.status, "☐"))
				none = false
			}
		}
		if o == "procedure" {
			for _, d := range b.Duties() {
				t.Rows = append(t.Rows, document.Row(name, d.Text, d.Source, d.Status, "☐"))
				none = false
			}
		}
		if none {
			t.Rows = append(t.Rows, document.Row(name, words.Of("safeguards.none"), words.Of("value.dash"),
				words.Of("value.dash"), words.Of("value.dash")))
		}
	}
	s.Blocks = append(s.Blocks, t)
	s.Blocks = append(s.Blocks, b.protective()...) // the last of the orders
	return s
}
