// Package draft knows a review on its way to paper: how its figures, findings, places
// and materials are named, and the tables that more than one page has. It must not
// know which page it is on, nor work anything out.
package draft

import (
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/meeting"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/scaling"
)

// Options is what a review needs to know beyond the review itself.
type Options struct {
	Brief       bool   // page 1 and the table of figures only
	Version     string // of the program
	DataVersion string // of the embedded data
	DataDigest  string // SHA-256 of the embedded data, hex
	Platform    string // operating system and architecture
	Asked       string // what is worked out of the files beside a review, with what was chosen; "" for a review
	Paper       document.Paper
	Units       number.Units    // in which pressures and what is in air are written
	Sample      *scaling.Sample // draws of the data; nil where none were made
	Batches     bool            // a few larger batches are looked at for what they outgrow
	Since       *Since          // what changed of a route that was reviewed; nil where none is given
}

// Since is a route that was reviewed before, and what is written otherwise now.
type Since struct {
	Title, Digest string
	Changed       []scaling.InputDiff
}

// Draft is one review on its way to a document, its figures by their ids.
type Draft struct {
	Review  *hazards.Review
	Options Options
	Set     *figure.Set
	ByID    map[figure.ID]*figure.Figure
	missing map[string]bool // quantities no model covers yet
	Places  []meeting.Contents
	Tags    meeting.Tags      // of the whole route
	Grown   *scaling.Outgrown // what a few larger batches outgrow, once page 1 has looked; else nil
	NoLines bool              // the document has no lines for a figure to lead to
}

// Bare is the figure of a quantity for the whole route.
func (b *Draft) Bare(quantity string) (*figure.Figure, bool) { return b.At(quantity, figure.Place{}) }

// At is the figure of a quantity at a place, by no case in particular.
func (b *Draft) At(quantity string, place figure.Place) (*figure.Figure, bool) {
	f, ok := b.ByID[figure.ID{Quantity: quantity, Place: place}]
	return f, ok
}

// New is the draft of a review.
func New(r *hazards.Review, o Options) *Draft {
	b := &Draft{Review: r, Options: o, Set: figure.NewSet(r.Figures), ByID: map[figure.ID]*figure.Figure{},
		missing: map[string]bool{}}
	for i := range r.Figures {
		b.ByID[r.Figures[i].ID] = &r.Figures[i]
	}
	for _, q := range r.NotAssessed {
		b.missing[q] = true
	}
	b.Places = meeting.Of(r.Case.Route)
	b.Tags = b.routeTags()
	return b
}

// Title is the title of the route on one line.
func (b *Draft) Title() string { return plain.Fold(b.Route().Title) }
