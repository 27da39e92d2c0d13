// Package review knows the sections of a review and their order: what is in each, in
// the words a committee reads. It must not know page 1, the cards nor the working
// sheets, nor work anything out.
package review

import (
	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
)

// Sections is every numbered section of the review, in the order the committee reads
// them, with the one on failures in its place.
func Sections(d *draft.Draft, failed document.Section) []document.Section {
	b := from(d)
	out := []document.Section{
		b.purpose(), b.steps(), b.materials(), b.chemistry(), b.heat(), b.gas(), b.air(),
		b.skin(), b.solids(), b.storage(), b.waste(), b.scale(), failed, b.safeguards(),
		b.construction(), b.pairs(), b.emergency(), b.local(), b.actions(), b.values(maxMoves),
	}
	if b.Options.Sample != nil {
		out = append(out, b.sampling())
	}
	return append(out, b.signOff())
}

// Steps is the section of the steps.
func Steps(d *draft.Draft) document.Section { return from(d).steps() }

// Emergency is the section of what is done in an emergency.
func Emergency(d *draft.Draft) document.Section { return from(d).emergency() }

// Figures is the table of all figures, for a brief review.
func Figures(b *draft.Draft) document.Section {
	s := document.Begin("figures")
	s.Blocks = append(s.Blocks, b.FigureTable(func(*figure.Figure) bool { return true })...)
	s.Blocks = append(s.Blocks, b.NotAssessed()...)
	return s
}
