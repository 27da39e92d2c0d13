package review

import (
	_ "embed"
	"strings"
	"sync"

	"etchbound/hazards/meeting"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
	tables "etchbound/schemas/columns"
	"etchbound/schemas/quantity"
)

//go:embed receiving.csv
var receivingCSV string

// kept is one thing to do where a bottle is received, carried, stored or poured from.
type kept struct {
	tag                        meeting.Tag
	when, text, source, status string
}

var receivingRules = sync.OnceValue(func() []kept {
	return tables.Must("reports/review/receiving.csv", receivingCSV, func(r tables.Row) kept {
		return kept{meeting.Tag(r.Named("tag")), r.Choice("when", "receive", "carry", "store", "dispense", "empty", "drain"),
			r.Named("text"), r.Named("source"), r.Named("status")}
	})
})

// receiving is how what the route takes comes, stands and is poured: what of the stock
// stands apart, the tray below the largest bottle, the largest pour, and the rules.
func (b *builder) receiving() []document.Block {
	t := document.Table{Caption: words.Of("receiving.caption"), Columns: document.OnScreen(document.Columns(
		"receiving.when", "receiving.do", "col.source", "col.status", "col.in_place"), 2)}
	for _, r := range receivingRules() {
		if b.Tags.Has(r.tag) {
			t.Rows = append(t.Rows, document.Row(words.Of("receiving."+r.when), r.text, r.source, r.status, "☐"))
		}
	}
	out := []document.Block{b.bottleTray(), b.largestPour()}
	in := []document.Block{t}
	if apart := b.apart(); apart != nil {
		in = []document.Block{apart, t}
	}
	return append(out, document.Fold{Summary: words.Of("receiving.fold", len(t.Rows)), Blocks: in})
}

// bottleTray is 110 % of the largest bottle of the stock, in litres.
func (b *builder) bottleTray() document.Block {
	site := b.Review.Case.Site
	if site == nil || len(site.Stock) == 0 {
		return document.Paragraph{Text: words.Of("receiving.tray_no_site"), Tone: document.Note}
	}
	most, of := 0.0, ""
	var unsaid []string
	for i := range site.Stock {
		s := &site.Stock[i]
		v := s.Bottle
		if !v.Set {
			v = s.Volume
		}
		switch {
		case v.Set && v.Dim == quantity.Volume:
			if x := v.In("L"); x > most {
				most, of = x, s.Substance.Name
			}
		case s.Substance != nil && (s.Substance.State == "l" || s.Strength.Set):
			unsaid = append(unsaid, s.Substance.Name)
		}
	}
	switch {
	case len(unsaid) > 0:
		return document.Paragraph{Text: words.Of("receiving.tray_unknown", strings.Join(unsaid, ", ")),
			Tone: document.Warning}
	case of == "":
		return document.Paragraph{Text: words.Of("receiving.tray_none"), Tone: document.Note}
	}
	return document.Paragraph{Text: words.Of("receiving.tray", number.Thing{Unit: "L"}.Bound(1.1*most, 1), of)}
}

// largestPour is the most that is poured at once of one liquid.
func (b *builder) largestPour() document.Block {
	most, of, step := 0.0, "", 0
	for i := range b.Route().Steps {
		s := &b.Route().Steps[i]
		for j := range s.What {
			m := &s.What[j]
			if !m.Volume.Set || m.Precursor || m.Substance == nil {
				continue
			}
			if x := m.Volume.In("L") / float64(max(s.Portions, 1)); x > most {
				most, of, step = x, b.MaterialName(m), s.Number
			}
		}
	}
	if of == "" {
		return document.Paragraph{Text: words.Of("receiving.pour_none"), Tone: document.Note}
	}
	return document.Paragraph{Text: words.Of("receiving.pour", number.Thing{Unit: "L"}.Bound(most, 1), of, step)}
}

// apart is which two of the stock of the site do not stand together; nil where none is known.
func (b *builder) apart() document.Block {
	if b.Review.Case.Site == nil {
		return nil
	}
	t := document.Table{Caption: words.Of("shelf.caption"), Columns: document.Columns("shelf.two", "col.reaction",
		"shelf.stands", "col.in_place")}
	for _, x := range meeting.Shelf(b.Review.Case.Site.Stock) {
		t.Rows = append(t.Rows, document.Row(words.Of("shelf.pair", x.One, x.Other), strings.Join(x.Why, "; "),
			standing(&x), "☐"))
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return t
}

// standing is how two of the stock stand, by the site file.
func standing(x *meeting.Apart) string {
	switch x.Stands {
	case meeting.Parted:
		return words.Of("shelf.parted")
	case meeting.Together:
		return words.Of("shelf.together", x.In)
	}
	return words.Of("shelf.unsaid")
}
