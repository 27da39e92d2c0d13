package aid

import (
	_ "embed"
	"sync"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/words"
	tables "etchbound/schemas/columns"
)

//go:embed spill.csv
var spillCSV string

// spillRow is one thing that must never go on acid fluoride, or that trained
// responders put on it.
type spillRow struct{ Use, What, Why, Source, Status string }

var SpillRows = sync.OnceValue(func() []spillRow {
	return tables.Must("reports/aid/spill.csv", spillCSV, func(r tables.Row) spillRow {
		return spillRow{r.Choice("use", "never", "trained"), r.Named("what"), r.Named("why"), r.Named("source"),
			r.Named("status")}
	})
})

// leaveFirst reports whether the first line on a spill is to leave, close and
// call: wherever the route holds acid fluoride, which burns the skin as well, and
// wherever a spill or a broken bottle can bring the room to a level at which it is
// left, or nobody knows whether it can.
func (b *Aid) leaveFirst() bool {
	if b.Tags.Has("hf") || b.Tags.Has("not_held") {
		return true
	}
	for i := range b.Review.Findings {
		f := &b.Review.Findings[i]
		_, step := f.Figure.Place.Step() // what boils off is no spill
		reached := f.Verdict == figure.Exceeds || f.Verdict == figure.UnknownVerdict
		if f.Figure.Quantity == "air.room_peak" && !step && reached {
			return true
		}
	}
	return false
}

// SpillLine is the first line on a spill, for a door or a card.
func (b *Aid) SpillLine() []document.Block {
	switch {
	case b.Tags.Has("hf"):
		return []document.Block{document.Paragraph{Text: words.Of("upset.spill"), Tone: document.Warning}}
	case b.leaveFirst():
		return []document.Block{document.Paragraph{Text: words.Of("upset.spill_other"), Tone: document.Warning}}
	}
	return nil
}

// SpillWords is what to do where acid fluoride is spilled, people first.
func (b *Aid) SpillWords() []document.Block {
	if !b.Tags.Has("hf") {
		return nil
	}
	out := []document.Block{document.Paragraph{Text: words.Of("spill.first"), Tone: document.Warning}}
	out = append(out, document.Paragraph{Text: words.Of("spill.inside")},
		document.Paragraph{Text: words.Of("spill.reagent")})
	return append(out, spillTable("never", words.Of("spill.never")), spillTable("trained", words.Of("spill.trained")))
}

func spillTable(use, caption string) document.Table {
	t := document.Table{Caption: caption, Columns: document.OnScreen(document.Columns("spill.what", "spill.why",
		"col.source",
		"col.status"), 2)}
	for _, r := range SpillRows() {
		if r.Use == use {
			t.Rows = append(t.Rows, document.Row(r.What, r.Why, r.Source, r.Status))
		}
	}
	return t
}
