package reports

import (
	"io"

	"etchbound/hazards"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/review"
	"etchbound/reports/selection"
	"etchbound/reports/words"
	"etchbound/scaling/keeping"
)

// BuildKeep lays out how the product of a route can be kept as a document of its own.
func BuildKeep(r hazards.Review, ways []keeping.Way, o draft.Options) document.Document {
	b := newBuilder(&r, o)
	d := document.Document{Title: words.Of("keep.title", b.Title()), Lang: words.Of("lang"), Paper: o.Paper, Flows: true,
		Control: b.ControlLine()}
	top := document.Section{Key: "page-1", Title: d.Title,
		Blocks: []document.Block{b.Control(), document.Paragraph{Text: words.Of("deference.line")}}}
	top.Blocks = append(top.Blocks, selection.Warned(b.Draft)...)
	d.Sections = []document.Section{top, review.Keeping(b.Draft, ways)}
	return d
}

// KeepJSON writes how the product of a route can be kept for programs.
func KeepJSON(w io.Writer, r *hazards.Review, ways []keeping.Way, o draft.Options) error {
	return review.KeepJSON(w, r, ways, o)
}
