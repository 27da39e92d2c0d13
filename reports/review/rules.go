package review

import (
	_ "embed"
	"strconv"
	"strings"
	"sync"

	"etchbound/hazards/figure"
	"etchbound/hazards/meeting"
	"etchbound/reports/document"
	"etchbound/reports/draft"
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
type safeguard struct {
	tag                         meeting.Tag
	order, text, source, status string
}

var safeguardRules = sync.OnceValue(func() []safeguard {
	return tables.Must("reports/review/safeguards.csv", safeguardsCSV, func(r tables.Row) safeguard {
		return safeguard{meeting.Tag(r.Named("tag")), r.Named("order"), r.Named("text"), r.Named("source"),
			r.Named("status")}
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
