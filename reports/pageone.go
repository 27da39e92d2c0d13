package reports

import (
	"etchbound/hazards"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/firstpage"
	"etchbound/reports/selection"
	"etchbound/scaling"
)

func (b *builder) pageOne() document.Section {
	return firstpage.Lay(selection.Read(b.Draft, b.outgrown()), b.Title(), b.Control(), b.replacedBlocks())
}

// outgrown is what a larger batch outgrows first, nil where none is looked at or none
// can be assessed.
func (b *builder) outgrown() *scaling.Outgrown {
	if x := b.Route().Precursor; !b.Options.Batches || x == nil || !x.Mass.Set {
		return nil
	}
	out, err := scaling.First(b.Review)
	if err != nil {
		return nil
	}
	return &out
}

// Stops are the hold points of a review in words, the most dangerous first.
func Stops(r hazards.Review, o draft.Options) []string { return selection.StopTexts(draft.New(&r, o)) }
