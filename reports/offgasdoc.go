package reports

import (
	"io"

	"etchbound/hazards"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/scrubbed"
	"etchbound/reports/selection"
	"etchbound/reports/words"
	"etchbound/scaling/scrubbing"
)

// BuildOffGas lays out what the gas of a route needs on its way out as a document of its own.
func BuildOffGas(r hazards.Review, all []scrubbing.Train, out scrubbing.Outdoors, o draft.Options) document.Document {
	b := newBuilder(&r, o)
	d := document.Document{Title: words.Of("offgas.title", b.Title()), Lang: words.Of("lang"), Paper: o.Paper, Flows: true,
		Control: b.ControlLine()}
	top := document.Section{Key: "page-1", Title: d.Title, Blocks: []document.Block{b.Control(),
		document.Paragraph{Text: words.Of("deference.line")}, document.Paragraph{Text: words.Of("offgas.lead")}}}
	top.Blocks = append(top.Blocks, selection.Warned(b.Draft)...)
	d.Sections = append([]document.Section{top}, scrubbed.Sections(all, out)...)
	return d
}

// OffGasJSON writes what the gas of a route needs on its way out for programs.
func OffGasJSON(w io.Writer, r *hazards.Review, all []scrubbing.Train, out scrubbing.Outdoors, o draft.Options) error {
	return scrubbed.JSON(w, r, all, &out, o)
}
