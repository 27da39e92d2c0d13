package reports

import (
	_ "embed"
	"sync"
)

//go:embed spill.csv
var spillCSV string

// spillRow is one thing that must never go on acid fluoride, or that trained
// responders put on it.
type spillRow struct{ use, what, why, source, status string }

var spillRows = sync.OnceValue(func() []spillRow {
	var out []spillRow
	for _, r := range rows("spill.csv", spillCSV) {
		out = append(out, spillRow{r[0], r[1], r[2], r[3], r[4]})
	}
	return out
})

// leaveFirst reports whether the first line on a spill is to leave, close and
// call. Nothing here computes the air over a spill, so it is wherever the route
// holds acid fluoride.
func (b *builder) leaveFirst() bool { return b.tags.has("hf") }

// spillLine is the first line on a spill, for a door or a card.
func (b *builder) spillLine() []Block {
	if !b.leaveFirst() {
		return nil
	}
	return []Block{Paragraph{say("upset.spill"), Warning}}
}

// spillWords is what to do where acid fluoride is spilled, people first.
func (b *builder) spillWords() []Block {
	if !b.tags.has("hf") {
		return nil
	}
	var out []Block
	if b.leaveFirst() {
		out = append(out, Paragraph{say("spill.first"), Warning})
	}
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
