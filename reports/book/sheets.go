// Package book knows how a figure is followed to what it was made from: the sheets of
// lines, the working of one figure, and the rows of data with their sources. It must
// not know another page.
package book

import (
	"strconv"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
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
	used := under(b.Review, b.Review.Sheet.Lines, func(*figure.Figure) bool { return true })
	of := b.figuresOf()
	for i := range b.Review.Sheet.Lines {
		l := &b.Review.Sheet.Lines[i]
		if !used[l.N] {
			continue
		}
		made := draft.MadeOf(l)
		if id, reads := l.Datum(); reads && b.amongData(id) {
			made = document.Cell{Links: []document.Link{{Text: made.Text, To: draft.DatumAnchor(id)}}}
		}
		t.Rows = append(t.Rows, []document.Cell{{Text: strconv.Itoa(l.N), Anchor: draft.LineAnchor(l.N), Links: of[l.N]},
			document.Code(l.Symbol),
			document.Text(number.Measure(l.V, draft.SheetDigits, l.Unit)),
			made, document.Text(number.StatusText(l.Status))})
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("sheets.lead")},
		document.Fold{Summary: words.Of("sheets.fold", len(t.Rows)), Blocks: []document.Block{t}, Away: true})
	return s
}

// figuresOf leads from each line to the figures that it is.
func (b *builder) figuresOf() map[int][]document.Link {
	out := map[int][]document.Link{}
	for i := range b.Review.Figures {
		f := &b.Review.Figures[i]
		if _, repeats := b.ByID[f.Of()]; repeats || f.Value.Line() <= 0 {
			continue
		}
		n := f.Value.Line()
		out[n] = append(out[n], document.Link{Text: b.FigureName(f), To: draft.FigureAnchor(f.ID)})
	}
	return out
}

// under marks the lines that some figure that want picks rests on.
func under(r *hazards.Review, lines []working.Line, want func(*figure.Figure) bool) []bool {
	used := make([]bool, len(lines)+1)
	var mark func(int)
	mark = func(n int) {
		if n <= 0 || n >= len(used) || used[n] {
			return
		}
		used[n] = true
		for _, in := range lines[n-1].In {
			mark(in.Line)
		}
	}
	for i := range r.Figures {
		if want(&r.Figures[i]) {
			mark(r.Figures[i].Value.Line())
		}
	}
	return used
}
