package firstpage

import (
	"slices"
	"strconv"
	"strings"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/words"
)

// Order is the order of the numbered sections of a review, so that page 1 can point to
// one where only page 1 is written.
var Order = [...]string{"purpose", "steps", "materials", "chemistry", "heat", "gas", "air", "skin", "solids",
	"storage", "waste", "scale", "upset", "safeguards", "construction", "pairs", "emergency", "local", "actions",
	"values"}

// Lay lays page 1 out, with the control line of the document and what the writer put in
// the place of the program's data.
func (p *Page) Lay(title string, control document.Block, replaced []document.Block) document.Section {
	s := document.Section{Key: "page-1", Title: title, Blocks: []document.Block{control}}
	s.Subs = []document.Section{p.decision(replaced),
		table("questions", words.Of("questions.caption"), words.Of("questions.none"), p.Questions),
		table("worst", words.Of("worst.caption"), words.Of("worst.none"), p.Others), p.stops(), p.notKnown(), contacts()}
	return s
}

// decision is what is asked, what can kill without warning, and who decides.
func (p *Page) decision(replaced []document.Block) document.Section {
	s := document.Begin("decision")
	s.Blocks = append([]document.Block{document.Paragraph{Text: p.Asked}, document.Paragraph{Text: p.Within}},
		warnings(p.Banner)...)
	s.Blocks = append(append(s.Blocks, replaced...),
		document.FormLine{Label: words.Of("decision.asked"), Boxes: []string{words.Of("decision.accept"),
			words.Of("decision.conditions"), words.Of("decision.return")}},
		document.Blanks{Labels: []string{words.Of("decision.supervisor"), words.Of("decision.committee")}},
		document.Paragraph{Text: words.Of("deference.line")})
	return s
}

// Warned is what can kill without warning, for every page that has to say it.
func Warned(d *draft.Draft) []document.Block { return warnings(newReader(d).banner()) }

// warnings are texts that must not be overlooked, each a block.
func warnings(texts []string) []document.Block {
	var out []document.Block
	for _, t := range texts {
		out = append(out, document.Paragraph{Text: t, Tone: document.Warning})
	}
	return out
}

// table is lines of page 1 under a heading.
func table(key, caption, none string, lines []Line) document.Section {
	s := document.Begin(key)
	if len(lines) == 0 {
		s.Blocks = []document.Block{document.Paragraph{Text: none}}
		return s
	}
	t := document.Table{Caption: caption, Columns: document.Tight(document.Columns(
		"col.question", "col.answer", "col.against", "col.verdict", "col.section"), 3, 4)}
	for i := range lines {
		l := &lines[i]
		t.Rows = append(t.Rows, []document.Cell{document.Text(l.Asks), document.Text(l.Answer),
			document.Text(words.OrDash(joinedBy("; ", l.Against, l.Surely))), l.cell(), document.Text(numberOf(l.Section))})
	}
	s.Blocks = []document.Block{t}
	return s
}

// cell is the verdict of a line, or why it has none.
func (l *Line) cell() document.Cell {
	v := l.Verdict
	switch l.State {
	case NotYet:
		v = figure.UnknownVerdict
	case Unjudged:
		return document.Text(words.Of("verdict.none"))
	case Told, Absent:
		return document.Text(words.Of("value.dash"))
	}
	return document.Cell{Text: words.Of("verdict." + v.String()), Mark: document.Mark(v.String())}
}

// numberOf is the number of a section of the review.
func numberOf(key string) string {
	if i := slices.Index(Order[:], key); i >= 0 {
		return strconv.Itoa(i + 1)
	}
	return words.Of("value.dash")
}

// stops are all hold points, the most dangerous first.
func (p *Page) stops() document.Section {
	s := document.Begin("holds")
	if len(p.Stops) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("holds.none")})
		return s
	}
	s.Blocks = append(s.Blocks, document.List{Ordered: true, Items: texts(p.Stops)})
	return s
}

// StopTexts are all hold points of a review as they are printed.
func StopTexts(d *draft.Draft) []string { return texts(Stops(d)) }

// texts are hold points as they are printed.
func texts(all []Stop) []string {
	var out []string
	for _, x := range all {
		if len(x.At) == 0 {
			out = append(out, x.Says)
			continue
		}
		out = append(out, say("stop.at", x.Says, strings.Join(x.At, ", ")))
	}
	return out
}

func (p *Page) notKnown() document.Section {
	s := document.Begin("not-known")
	l := document.List{}
	for _, g := range p.Gaps {
		what := g.What
		if g.Where != "" {
			what = say("gap.at", what, g.Where)
		}
		if g.Settles != "" {
			what = say("gap.settled", what, g.Settles)
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
