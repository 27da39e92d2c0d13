package reports

import (
	"io"

	"etchbound/reports/document"
	"etchbound/reports/draft"
)

// Options is what a review needs to know beyond the review itself.
type Options = draft.Options

// Since is a route that was reviewed before, and what is written otherwise now.
type Since = draft.Since

// Document is a review as a reader meets it.
type Document = document.Document

// Paper is what a document is printed on.
type Paper = document.Paper

// The papers a document is printed on. AnyPaper leaves the choice to the printer.
const (
	AnyPaper = document.AnyPaper
	A4       = document.A4
	Letter   = document.Letter
)

// Markdown writes a document as CommonMark with tables.
func Markdown(w io.Writer, d Document) error { return document.Markdown(w, d) }

// HTML writes a document as one page that fetches nothing.
func HTML(w io.Writer, d Document) error { return document.HTML(w, d) }
