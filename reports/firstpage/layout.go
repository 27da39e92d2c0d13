// Package firstpage knows how page 1 of a review is laid out. It must not know what is
// chosen for it, nor any figure.
package firstpage

import (
	"slices"
	"strconv"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/selection"
	"etchbound/reports/words"
)

// Order is the order of the numbered sections of a review, so that page 1 can point to
// one where only page 1 is written.
var Order = [...]string{"purpose", "steps", "materials", "chemistry", "heat", "gas", "air", "skin", "solids",
	"storage", "waste", "scale", "upset", "safeguards", "construction", "pairs", "emergency", "local", "actions",
	"values"}

// page is page 1 on its way to a document.
type page struct{ selection.Page }

// Lay lays page 1 out, with the control line of the document and what the writer put in
// the place of the program's data. A short review has no sections to lead to.
func Lay(of selection.Page, title string, control document.Block, replaced []document.Block,
	short bool) document.Section {
	p := page{of}
	s := document.Section{Key: "page-1", Title: title, Blocks: []document.Block{control}}
	s.Subs = []document.Section{p.decision(replaced),
		table("questions", words.Of("questions.caption"), words.Of("questions.none"), p.Questions, !short),
		table("worst", words.Of("worst.caption"), words.Of("worst.none"), p.Others, !short), p.stops(), p.notKnown(),
		contacts()}
	return s
}

// decision is what is asked, what can kill without warning, and who decides.
func (p page) decision(replaced []document.Block) document.Section {
	s := document.Begin("decision")
	s.Blocks = append([]document.Block{document.Paragraph{Text: p.Asked}, document.Paragraph{Text: p.Within}},
		selection.Warnings(p.Banner)...)
	s.Blocks = append(append(s.Blocks, replaced...),
		document.FormLine{Label: words.Of("decision.asked"), Boxes: []string{words.Of("decision.accept"),
			words.Of("decision.conditions"), words.Of("decision.return")}},
		document.Blanks{Labels: []string{words.Of("decision.supervisor"), words.Of("decision.committee")}},
		document.Paragraph{Text: words.Of("deference.line")})
	return s
}

// table is lines of page 1 under a heading.
func table(key, caption, none string, lines []selection.Line, linked bool) document.Section {
	s := document.Begin(key)
	if len(lines) == 0 {
		s.Blocks = []document.Block{document.Paragraph{Text: none}}
		return s
	}
	t := document.Table{Caption: caption, Columns: document.Tight(document.Columns(
		"col.question", "col.answer", "col.against", "col.verdict", "col.section"), 3, 4)}
	for i := range lines {
		l := &lines[i]
		answer := document.Text(l.Answer)
		if against(l) == "" && (l.State == selection.Told || l.State == selection.Absent) {
			answer.Span = 3 // nothing is held against it
		}
		t.Rows = append(t.Rows, []document.Cell{document.Text(l.Asks), answer,
			document.Text(words.OrDash(against(l))), cell(l), linkOf(l.Section, linked)})
	}
	s.Blocks = []document.Block{t}
	return s
}

// against is what a line is held against, and how surely.
func against(l *selection.Line) string {
	if l.Against == "" || l.Surely == "" {
		return l.Against + l.Surely
	}
	return l.Against + "; " + l.Surely
}

// cell is the verdict of a line, or why it has none.
func cell(l *selection.Line) document.Cell {
	v := l.Verdict
	switch l.State {
	case selection.NotYet:
		v = figure.UnknownVerdict
	case selection.Unjudged:
		return document.Text(words.Of("verdict.none"))
	case selection.Told, selection.Absent:
		return document.Text(words.Of("value.dash"))
	}
	return document.Cell{Text: words.Of("verdict." + v.String()), Mark: document.Mark(v.String())}
}

// linkOf is the number of a section of the review, which leads to it where there is one.
func linkOf(key string, linked bool) document.Cell {
	i := slices.Index(Order[:], key)
	switch n := strconv.Itoa(i + 1); {
	case i < 0:
		return document.Text(words.Of("value.dash"))
	case !linked:
		return document.Text(n)
	default:
		return document.Cell{Links: []document.Link{{Text: n, To: key}}}
	}
}

// stops are all hold points, the most dangerous first.
func (p page) stops() document.Section {
	s := document.Begin("holds")
	if len(p.Stops) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("holds.none")})
		return s
	}
	s.Blocks = append(s.Blocks, document.List{Ordered: true, Items: selection.Texts(p.Stops)})
	return s
}

func (p page) notKnown() document.Section {
	s := document.Begin("not-known")
	l := document.List{}
	for _, g := range p.Gaps {
		what := g.What
		if g.Where != "" {
			what = words.FirstPage("gap.at", what, g.Where)
		}
		if g.Settles != "" {
			what = words.FirstPage("gap.settled", what, g.Settles)
		}
		l.Items = append(l.Items, what)
	}
	if len(l.Items) > 0 {
		s.Blocks = append(s.Blocks, l)
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: p.Left})
	if p.Brief {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("upset.brief"), Tone: document.Warning})
	}
	return s
}

func contacts() document.Section {
	s := document.Begin("contacts")
	s.Blocks = []document.Block{document.Blanks{Labels: []string{words.Of("contacts.day_night"),
		words.Of("contacts.emergency"), words.Of("contacts.gel")}}}
	return s
}
