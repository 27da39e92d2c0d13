// Package book knows how a figure is followed to what it was made from: the sheets of
// lines, the working of one figure, and the rows of data with their sources. It must
// not know another page.
package book

import (
	"strconv"

	"etchbound/hazards"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// Section is the section of the lines under the figures.
func Section(d *draft.Draft) document.Section { return from(d).sheets() }

func (b *builder) sheets() document.Section {
	s := document.Begin("sheets")
	if b.Review.Sheet == nil || len(b.Review.Sheet.Lines) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("sheets.none")})
		return s
	}
	t := document.Table{Caption: words.Of("sheets.caption"),
		Columns: document.Right(document.Columns("col.line", "col.symbol", "col.value", "col.made", "col.status"), 0, 2)}
	used := underFigures(b.Review)
	for i := range b.Review.Sheet.Lines {
		l := &b.Review.Sheet.Lines[i]
		if !used[l.N] {
			continue
		}
		t.Rows = append(t.Rows, []document.Cell{document.Text(strconv.Itoa(l.N)), document.Code(l.Symbol),
			document.Text(number.Measure(l.V, draft.SheetDigits, l.Unit)),
			document.Code(draft.Made(l)), document.Text(number.StatusText(l.Status))})
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("sheets.lead")},
		document.Fold{Summary: words.Of("sheets.fold", len(t.Rows)), Blocks: []document.Block{t}, Away: true})
	return s
}

// underFigures marks the lines that some figure rests on of what happens as it
// is meant to.
func underFigures(r *hazards.Review) []bool {
	used := make([]bool, len(r.Sheet.Lines)+1)
	var mark func(int)
	mark = func(n int) {
		if n <= 0 || n >= len(used) || used[n] {
			return
		}
		used[n] = true
		for _, in := range r.Sheet.Lines[n-1].In {
			mark(in.Line)
		}
	}
	for i := range r.Figures {
		if r.Figures[i].Case.Failure == "" { // what fails would fill as many pages again, and stands in the JSON
			mark(r.Figures[i].Value.Line())
		}
	}
	return used
}
