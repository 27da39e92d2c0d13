package reports

import (
	"strconv"

	"etchbound/hazards"
	"etchbound/reports/book"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/review"
	"etchbound/reports/words"
)

// BuildWorking lays out the auditor's book: a document of its own, printed across, with
// every figure, finding, datum, limit and source, and the working of what counts.
func BuildWorking(r hazards.Review, o draft.Options) document.Document {
	d := draft.New(&r, o)
	title := words.Of("book.title", d.Title())
	front, rest := book.Sections(d)
	front.Title = title
	at := len(rest) - 2 // the data come before the lines that use them
	rest = append(append(rest[:at:at], review.Checked(d)), rest[at:]...)
	for i := range rest {
		rest[i].Number = strconv.Itoa(i + 1)
	}
	return document.Document{Title: title, Lang: words.Of("lang"), Paper: o.Paper, Wide: true, Flows: true,
		Control: d.ControlLine(), Sections: append([]document.Section{front}, rest...)}
}
