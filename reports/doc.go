// Package reports knows how a review is put before people: one document model
// and the four ways of writing it, Markdown, HTML, JSON and CSV, and the
// working tree of one figure as plain text. It must not know any arithmetic of
// a hazard: every number it prints was computed before it came here.
package reports
