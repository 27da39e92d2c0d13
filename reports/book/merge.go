package book

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// merge picks the lines under the figures that count, and tells one for all that say
// the same of the same inputs.
func (k *binding) merge() {
	sheet := k.sheet()
	k.as = make([]int, len(sheet.Lines)+1)
	wanted := k.counting()
	first := map[string]int{}
	for i := range sheet.Lines {
		l := &sheet.Lines[i]
		if !wanted[l.N] {
			continue
		}
		if of := sameAs(l); of > 0 && k.as[of] > 0 {
			k.as[l.N] = k.as[of]
			continue
		}
		if l.Kind == working.KindDatum {
			continue // it stands among the data
		}
		key := says(l)
		if first[key] == 0 {
			first[key] = l.N
			k.told = append(k.told, l.N)
		}
		k.as[l.N] = first[key]
	}
	for _, n := range k.told {
		for _, in := range sheet.Lines[n-1].In {
			k.use(in.Line, document.Link{Text: strconv.Itoa(n), To: draft.LineAnchor(n)})
		}
	}
	for i, f := range k.shown {
		k.use(f.Value.Line(), document.Link{Text: words.Of("book.figure", i+1), To: anchor(i + 1)})
	}
}

// sameAs is the line that another only names again, 0 where it does more.
func sameAs(l *working.Line) int {
	if len(l.In) != 1 || len(l.Missing) > 0 || l.Unit != l.In[0].Unit || !(l.V == l.In[0].V) {
		return 0
	}
	if l.Formula != l.In[0].Symbol && l.Kind != working.KindSum {
		return 0
	}
	return l.In[0].Line
}

// sheet is the lines that were kept, or none.
func (b *builder) sheet() *working.Sheet {
	if b.Review.Sheet == nil {
		return &working.Sheet{}
	}
	return b.Review.Sheet
}

// use notes what a line is used by.
func (k *binding) use(line int, by document.Link) {
	if line > 0 && line < len(k.as) && k.as[line] > 0 {
		k.used[k.as[line]] = append(k.used[k.as[line]], by)
	}
}

// says is all that a line says but for its number.
func says(l *working.Line) string {
	var b strings.Builder
	fmt.Fprint(&b, l.Kind, "|", l.Symbol, "|", l.Unit, "|", l.Formula, "|", l.V, "|", l.Ref, "|", l.Status, "|",
		words.Names(l.Missing))
	for _, in := range l.In {
		fmt.Fprint(&b, "|", in.Symbol, "=", in.V, in.Unit)
	}
	return b.String()
}

// counting marks the lines under the figures on which verdicts stand and those that are
// not known, of what happens as it is written.
func (k *binding) counting() []bool {
	deciding := map[figure.ID]bool{}
	for _, id := range k.Review.Deciding() {
		deciding[id] = true
		if f := k.ByID[id]; f != nil {
			deciding[f.Of()] = true
		}
	}
	return under(k.Review, k.sheet().Lines, func(f *figure.Figure) bool {
		return f.Case.Failure == "" && (deciding[f.ID] || f.Value.Unknown())
	})
}

// open is the figures that are not within every limit, and those that these repeat.
func (b *builder) open() map[figure.ID]bool {
	open := map[figure.ID]bool{}
	for i := range b.Review.Findings {
		if f := &b.Review.Findings[i]; f.Verdict != figure.Within {
			open[f.Figure] = true
		}
	}
	for i := range b.Review.Figures {
		if f := &b.Review.Figures[i]; open[f.ID] {
			open[f.Of()] = true
		}
	}
	return open
}

// lineOf is the line of a figure, with a link where it is told.
func (k *binding) lineOf(f *figure.Figure) document.Cell {
	n := f.Value.Line()
	switch {
	case n <= 0:
		return document.Text(words.Of("value.dash"))
	case n < len(k.as) && k.as[n] > 0:
		return document.Cell{Links: []document.Link{{Text: strconv.Itoa(k.as[n]), To: draft.LineAnchor(k.as[n])}}}
	}
	return document.Text(strconv.Itoa(n))
}

// mostUses is how many users of a line are named.
const mostUses = 2

// manyInputs is from how many inputs on a line that is made as another is says so.
const manyInputs = 5

// amongData reports whether a datum has a row of its own.
func (b *builder) amongData(id datum.ID) bool {
	return slices.ContainsFunc(b.Review.Used, func(d chemicals.Datum) bool { return d.ID == id })
}

// inputs is how a line was made: by what, of what.
func inputs(l *working.Line) string {
	var b strings.Builder
	fmt.Fprint(&b, l.Kind, "|", l.Formula, "|", l.Ref)
	for _, in := range l.In {
		fmt.Fprint(&b, "|", in.Symbol, "=", in.V, in.Unit)
	}
	return b.String()
}

// made is how a line was made; what it was made of leads to its line, or to its datum.
func (k *binding) made(l *working.Line) document.Cell {
	made := document.Code(draft.MadeBy(l))
	for i := range l.In {
		in := &l.In[i]
		if in.Line <= 0 || in.Line >= len(k.as) {
			continue
		}
		from := &k.sheet().Lines[in.Line-1]
		id, reads := from.Datum()
		switch {
		case k.as[in.Line] > 0:
			made.Links = append(made.Links, document.Link{Text: draft.InputText(in, k.as[in.Line]),
				To: draft.LineAnchor(k.as[in.Line])})
		case reads && !k.amongData(id):
			made.Text += ", " + draft.InputOf(in, from)
		case reads:
			made.Links = append(made.Links, document.Link{Text: draft.InputOf(in, from), To: draft.DatumAnchor(id)})
		}
	}
	return made
}

func (k *binding) lines() document.Section {
	s := document.Begin("working")
	t := document.Table{Caption: words.Of("sheets.caption"), Columns: document.Right(document.Columns("col.line",
		"col.symbol", "col.value", "col.made", "col.status", "col.used"), 0, 2)}
	first := map[string]int{}
	for _, n := range k.told {
		l := &k.sheet().Lines[n-1]
		made := k.made(l)
		if key := inputs(l); len(l.In) > manyInputs && first[key] > 0 {
			at := first[key]
			made = document.Cell{Links: []document.Link{{Text: words.Of("book.same", at), To: draft.LineAnchor(at)}}}
		} else {
			first[key] = n
		}
		used := document.Cell{Links: k.used[n]}
		if times := len(used.Links); times > mostUses {
			used = document.Cell{Text: words.Of("book.more", times), Links: used.Links[:mostUses]}
		}
		t.Rows = append(t.Rows, []document.Cell{{Text: strconv.Itoa(n), Anchor: draft.LineAnchor(n)}, document.Code(l.Symbol),
			document.Text(number.Measure(l.V, draft.SheetDigits, l.Unit)), made,
			document.Text(number.StatusText(l.Status)), used})
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("sheets.lead")}, t)
	return s
}
