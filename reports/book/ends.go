package book

import (
	"strconv"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/ranges"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// stoodText is a datum with where it stands and its best estimate.
func stoodText(s *ranges.Stood) string {
	return words.Of("ends.stood", draft.DatumName(s.ID), number.Measure(s.At, draft.SheetDigits, s.Unit),
		number.Nearest(s.Value, draft.SheetDigits))
}

// mostMoved is how many of the lines that are other at an end are told of one figure.
const mostMoved = 2

// ends is the working of the ends that decide: which data stand elsewhere, and the last
// lines that come out otherwise than with the best estimates, each once.
func (k *binding) ends() document.Section {
	s := document.Begin("ends")
	t := document.Table{Caption: words.Of("ends.caption"), Columns: document.Columns("col.figure", "ends.best",
		"ends.end", "ends.data")}
	lines := document.Table{Caption: words.Of("ends.lines"), Columns: document.Right(document.Columns("col.figure",
		"col.line", "col.symbol", "ends.best", "ends.end", "col.made"), 1)}
	told := map[string]bool{}
	hazards.Ends(k.Review, k.Review.Deciding(), func(e *hazards.End) {
		f := k.ByID[e.Figure]
		if f == nil {
			return
		}
		var data []string
		for i := range e.Stood {
			data = append(data, stoodText(&e.Stood[i]))
		}
		link := document.Cell{Links: []document.Link{k.figureLink(e.Figure)}}
		t.Rows = append(t.Rows, []document.Cell{link, document.Text(k.ValueText(f)),
			document.Text(k.Options.Units.Amount(f.Quantity, f.Agent, e.Value.V, 0)), document.Text(strings.Join(data, "; "))})
		rows := k.moved(e, f.Value.Line(), told)
		for i := range rows {
			rows[i][0] = link
		}
		lines.Rows = append(lines.Rows, rows...)
	})
	if len(t.Rows) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("ends.none")})
		return s
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("ends.lead", mostMoved)}, t, lines)
	return s
}

// moved are the last lines under a figure that come out otherwise at an end, with the
// line of the sheet of the best estimates that says the same of other numbers.
func (k *binding) moved(e *hazards.End, line int, told map[string]bool) [][]document.Cell {
	pairs := paired{k.sheet().Lines, e.Sheet.Lines, map[int]int{}}
	pairs.under(line, e.Value.Line())
	var out [][]document.Cell
	for at := e.Value.Line(); at > 0 && len(out) < mostMoved; at-- {
		was, there := pairs.of[at]
		l := &e.Sheet.Lines[at-1]
		if !there || l.Kind == working.KindDatum || k.sheet().Lines[was-1].V == l.V || told[says(l)] {
			continue
		}
		told[says(l)] = true
		made := document.Code(draft.MadeBy(l))
		for i := range l.In {
			made.Text += ", " + words.Of("ends.input", l.In[i].Symbol,
				number.Measure(l.In[i].V, draft.SheetDigits, l.In[i].Unit))
		}
		out = append(out, []document.Cell{{}, document.Text(strconv.Itoa(was)), document.Code(l.Symbol),
			document.Text(number.Measure(k.sheet().Lines[was-1].V, draft.SheetDigits, l.Unit)),
			document.Text(number.Measure(l.V, draft.SheetDigits, l.Unit)), made})
	}
	return out
}

// paired are two sheets of the same calculation with other data, and of each line of the
// second which it is in the first. Where they part, nothing is paired.
type paired struct {
	was, now []working.Line
	of       map[int]int
}

func (p *paired) under(was, now int) {
	if was < 1 || now < 1 || was > len(p.was) || now > len(p.now) || p.of[now] != 0 {
		return
	}
	a, b := &p.was[was-1], &p.now[now-1]
	if a.Kind != b.Kind || a.Symbol != b.Symbol || a.Formula != b.Formula || a.Ref != b.Ref || len(a.In) != len(b.In) {
		return
	}
	p.of[now] = was
	for i := range b.In {
		p.under(a.In[i].Line, b.In[i].Line)
	}
}
