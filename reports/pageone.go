package reports

import (
	"slices"
	"strings"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/firstpage"
	"etchbound/reports/plain"
	"etchbound/reports/selection"
	"etchbound/reports/words"
	"etchbound/scaling"
)

func (b *builder) pageOne() document.Section {
	return firstpage.Lay(selection.Read(b.Draft, b.outgrown()), b.Title(), b.Control(), b.replacedBlocks(),
		b.Options.Brief)
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
	b.Grown = &out
	return &out
}

// Worst is what of page 1 is worst, in one line: the first question whose answer exceeds
// what it is held against, else one that is not known, and how many hold points there
// are; empty where there is neither.
func Worst(r hazards.Review, o draft.Options) string {
	page := selection.Read(draft.New(&r, o), nil)
	lines := append(append([]selection.Line{}, page.Questions...), page.Others...)
	var said []string
	for _, v := range []figure.Verdict{figure.Exceeds, figure.UnknownVerdict, figure.Near} {
		at := slices.IndexFunc(lines, func(l selection.Line) bool { return l.State == selection.Judged && l.Verdict == v })
		if at >= 0 {
			said = append(said, words.Of("worst.line", lines[at].Asks, lines[at].Answer, v))
			break
		}
	}
	if n := len(page.Stops); n > 0 {
		said = append(said, words.Of("worst.stops", n))
	}
	return plain.Fold(plain.Printable(strings.Join(said, "; ")))
}

// Stops are the hold points of a review in words, the most dangerous first.
func Stops(r hazards.Review, o draft.Options) []string { return selection.StopTexts(draft.New(&r, o)) }
