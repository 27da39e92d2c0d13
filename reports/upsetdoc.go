package reports

import (
	"etchbound/hazards"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/failures"
	"etchbound/reports/review"
	"etchbound/reports/selection"
	"etchbound/reports/words"
)

// BuildUpset lays out what happens when something goes wrong as a document of
// its own, with the steps it speaks of.
func BuildUpset(r hazards.Review, o draft.Options) document.Document {
	b := newBuilder(&r, o)
	b.NoLines = true
	d := document.Document{Title: words.Of("upset.title", b.Title()), Lang: words.Of("lang"), Paper: o.Paper, Flows: true,
		Control: b.ControlLine()}
	top := document.Section{Key: "page-1", Title: d.Title,
		Blocks: []document.Block{b.Control(), document.Paragraph{Text: words.Of("deference.line")}}}
	top.Blocks = append(append(top.Blocks, selection.Warned(b.Draft)...), b.CoolingLost()...)
	d.Sections = []document.Section{top, failures.Alone(b.Draft), review.Steps(b.Draft), review.Emergency(b.Draft)}
	return d
}
