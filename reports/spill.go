package reports

import (
	_ "embed"
	"sync"

	"etchbound/hazards/figure"
	tables "etchbound/schemas/columns"
)

//go:embed spill.csv
var spillCSV string

// spillRow is one thing that must never go on acid fluoride, or that trained
// responders put on it.
type spillRow struct{ use, what, why, source, status string }

var spillRows = sync.OnceValue(func() []spillRow {
	return tables.Must("reports/spill.csv", spillCSV, func(r tables.Row) spillRow {
		return spillRow{r.Choice("use", "never", "trained"), r.Named("what"), r.Named("why"), r.Named("source"),
			r.Named("status")}
	})
})

// leaveFirst reports whether the first line on a spill is to leave, close and
// call: wherever the route holds acid fluoride, which burns the skin as well, and
// wherever a spill or a broken bottle can bring the room to a level at which it is
// left, or nobody knows whether it can.
func (b *builder) leaveFirst() bool {
	if b.tags.has("hf") || b.tags.has("not_held") {
		return true
	}
	for i := range b.r.Findings {
		f := &b.r.Findings[i]
		if f.Figure.Quantity == "air.room_peak" && (f.Verdict == figure.Exceeds || f.Verdict == figure.UnknownVerdict) {
			return true
		}
	}
	return false
}

// spillLine is the first line on a spill, for a door or a card.
func (b *builder) spillLine() []Block {
	switch {
	case b.tags.has("hf"):
		return []Block{Paragraph{say("upset.spill"), Warning}}
	case b.leaveFirst():
		return []Block{Paragraph{say("upset.spill_other"), Warning}}
	}
	return nil
}

// spillWords is what to do where acid fluoride is spilled, people first.
func (b *builder) spillWords() []Block {
	if !b.tags.has("hf") {
		return nil
	}
	out := []Block{Paragraph{say("spill.first"), Warning}}
	out = append(out, Paragraph{Text: say("spill.inside")}, Paragraph{Text: say("spill.reagent")})
	return append(out, spillTable("never", say("spill.never")), spillTable("trained", say("spill.trained")))
}

func spillTable(use, caption string) Table {
	t := Table{Caption: caption, Columns: columns("spill.what", "spill.why", "col.source", "col.status")}
	for _, r := range spillRows() {
		if r.use == use {
			t.Rows = append(t.Rows, []Cell{text(r.what), text(r.why), text(r.source), text(r.status)})
		}
	}
	return t
}
