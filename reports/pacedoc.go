package reports

import (
	"io"

	"etchbound/hazards"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/paced"
	"etchbound/reports/selection"
	"etchbound/reports/words"
	"etchbound/scaling/pacing"
)

// BuildPace lays out how what reacts in a route can be added as a document of its own.
func BuildPace(r hazards.Review, all []pacing.Addition, o draft.Options) document.Document {
	b := newBuilder(&r, o)
	d := document.Document{Title: words.Of("pace.title", b.Title()), Lang: words.Of("lang"), Paper: o.Paper, Flows: true,
		Control: b.ControlLine()}
	top := document.Section{Key: "page-1", Title: d.Title,
		Blocks: []document.Block{b.Control(), document.Paragraph{Text: words.Of("deference.line")}}}
	top.Blocks = append(top.Blocks, selection.Warned(b.Draft)...)
	d.Sections = append([]document.Section{top}, paced.Sections(b.Draft, all)...)
	return d
}

// PaceJSON writes how what reacts in a route can be added for programs.
func PaceJSON(w io.Writer, r *hazards.Review, all []pacing.Addition, o draft.Options) error {
	return paced.JSON(w, r, all, o)
}
