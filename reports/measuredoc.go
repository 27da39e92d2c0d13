package reports

import (
	"io"

	"etchbound/hazards"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/measures"
	"etchbound/reports/selection"
	"etchbound/reports/words"
	"etchbound/scaling/measuring"
)

// BuildMeasure lays out what is measured first of a route as a document of its own.
func BuildMeasure(r hazards.Review, all []measuring.Figure, o draft.Options) document.Document {
	b := newBuilder(&r, o)
	d := document.Document{Title: words.Of("measure.title", b.Title()), Lang: words.Of("lang"), Paper: o.Paper,
		Flows:   true,
		Control: b.ControlLine()}
	top := document.Section{Key: "page-1", Title: d.Title,
		Blocks: []document.Block{b.Control(), document.Paragraph{Text: words.Of("deference.line")}}}
	top.Blocks = append(top.Blocks, selection.Warned(b.Draft)...)
	d.Sections = append([]document.Section{top}, measures.Sections(b.Draft, all)...)
	return d
}

// MeasureJSON writes what is measured first of a route for programs.
func MeasureJSON(w io.Writer, r *hazards.Review, all []measuring.Figure, o draft.Options) error {
	return measures.JSON(w, r, all, o)
}
