package reports

import (
	"cmp"
	"slices"
	"unicode/utf8"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// Page 1 has to fit one side of either paper, so its lists are cut to a number
// of printed lines and say how much more there is and where it stands. The
// lengths are in characters of a line as printed; the tests measure the page.
const (
	maxWorst    = 8
	maxHolds    = 6
	maxUnknown  = 3
	lineLength  = 84
	holdLength  = 2*lineLength - 6
	unknownText = lineLength + 10
	nameLength  = 52 // two lines of the figure's column
	limitLength = 46 // two lines of the limit's column
	worstLines  = 15
	holdLines   = 9
	// lines that what the writer replaced takes from the hold points
	replacedLines = 4
)

func (b *builder) pageOne() document.Section {
	s := document.Section{Key: "page-1", Title: b.Title()}
	s.Blocks = append(s.Blocks, b.Control())
	s.Subs = []document.Section{b.decision(), b.envelope(), b.worst(), b.holdPoints(), b.notKnown(), b.contacts()}
	return s
}

func (b *builder) decision() document.Section {
	s := document.Begin("decision")
	s.Blocks = []document.Block{
		document.FormLine{Label: words.Of("decision.asked"),
			Boxes: []string{words.Of("decision.accept"), words.Of("decision.conditions"), words.Of("decision.return")}},
		document.Blanks{Labels: []string{words.Of("decision.supervisor"), words.Of("decision.committee")}},
		document.Paragraph{Text: words.Of("deference.line")},
	}
	return s
}

func (b *builder) envelope() document.Section {
	s := document.Begin("envelope")
	s.Blocks = []document.Block{
		document.Facts{Pairs: []document.Pair{
			{Name: words.Of("envelope.batch"), Value: b.BatchText()},
			{Name: words.Of("envelope.hf"), Value: b.bareValue("fluoride.hf_concentration", "envelope.no_fluoride")},
			{Name: words.Of("envelope.temperature"), Value: b.HighestSet()},
			{Name: words.Of("envelope.attended"), Value: b.Attendance()},
			{Name: words.Of("envelope.closure"), Value: plain.Clip(b.Closures(), 80)},
			{Name: words.Of("envelope.vessels"), Value: plain.Clip(b.Capacities(), 80)},
		}},
	}
	return s
}

// bareValue is the dangerous end of a bare figure, or the sentence of a key
// where the figure does not apply.
func (b *builder) bareValue(quantity, none string) string {
	f, ok := b.Bare(quantity)
	if !ok {
		return words.Of(none)
	}
	return b.ValueAndRange(f)
}

func (b *builder) worst() document.Section {
	s := document.Begin("worst")
	if hf, ok := b.HfPresent(); ok {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: hf, Tone: document.Warning})
	}
	s.Blocks = append(s.Blocks, b.replacedBlocks()...)
	t := document.Table{Caption: words.Of("worst.caption"),
		Columns: document.Columns("col.figure", "col.value_range", "col.limit", "col.margin", "col.verdict")}
	gas := b.gasRow()
	for _, f := range b.WorstFindings(maxWorst) {
		if len(t.Rows) < maxWorst-len(gas) {
			t.Rows = append(t.Rows, b.worstRow(f))
		}
	}
	t.Rows = append(t.Rows[:min(len(t.Rows), 2)], append(gas, t.Rows[min(len(t.Rows), 2):]...)...)
	t.Rows = fitting(append(t.Rows, b.unjudged(maxWorst-len(t.Rows))...))
	if len(t.Rows) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("figures.none")})
		return s
	}
	s.Blocks = append(s.Blocks, t)
	return s
}

// gasRow is the hydrogen of the route, which the committee looks for whether or
// not a limit is held for it; nothing where a finding speaks of it already.
func (b *builder) gasRow() [][]document.Cell {
	f, ok := b.Bare("gas.hydrogen.total")
	if !ok {
		return nil
	}
	for i := range b.Review.Findings {
		if b.Review.Findings[i].Figure.Quantity == f.Quantity {
			return nil
		}
	}
	return [][]document.Cell{{document.Text(plain.Clip(b.FigureName(f), nameLength)), document.Text(b.ValueAndRange(f)),
		document.Text(words.Of("limit.none")),
		document.Text(words.Of("value.dash")), document.Text(words.Of("verdict.none"))}}
}

// fitting is the rows that page 1 has lines for; the first ones are the worst.
func fitting(rows [][]document.Cell) [][]document.Cell {
	room := worstLines
	for i, r := range rows {
		room -= max(lines(r[0].Text, nameLength/2), lines(r[1].Text, nameLength/2-4), lines(r[2].Text, limitLength/2))
		if room < 0 {
			return rows[:i]
		}
	}
	return rows
}

// lines is how many printed lines of a length a text takes.
func lines(s string, length int) int { return (utf8.RuneCountInString(s) + length - 1) / length }

func (b *builder) worstRow(f *figure.Finding) []document.Cell {
	value, name := words.Of("value.unknown"), f.Figure.String()
	if g, ok := b.ByID[f.Figure]; ok {
		value, name = b.ValueAndRange(g), b.FigureName(g)
	}
	return []document.Cell{document.Text(plain.Clip(name, nameLength)), document.Text(value),
		document.Text(plain.Clip(b.LimitText(&f.Limit, f.Figure.Agent), limitLength)),
		document.Text(b.Margin(f)), draft.VerdictCell(f.Verdict)}
}

// unjudged are the figures a committee looks for even where no limit is held.
func (b *builder) unjudged(room int) [][]document.Cell {
	judged := map[string]bool{}
	for i := range b.Review.Findings {
		judged[b.Review.Findings[i].Figure.Quantity] = true
	}
	var out [][]document.Cell
	for _, q := range figure.Headlines() {
		f, ok := b.Bare(q)
		if !ok || judged[q] || q == "gas.hydrogen.total" || len(out) >= room {
			continue
		}
		out = append(out, document.Row(plain.Clip(b.FigureName(f), nameLength), b.ValueAndRange(f),
			words.Of("limit.none"), words.Of("value.dash"), words.Of("verdict.none")))
	}
	return out
}

func (b *builder) holdPoints() document.Section {
	s := document.Begin("holds")
	if len(b.Review.Holds) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("holds.none")})
		return s
	}
	l := document.List{Ordered: true}
	room := holdLines
	if len(b.Review.Applied) > 0 {
		room -= replacedLines
	}
	for i, h := range b.Review.Holds {
		item := plain.Clip(plain.Fold(words.Say(h.Says)), holdLength)
		if room -= lines(item, lineLength); room < 0 || i == maxHolds {
			break
		}
		l.Items = append(l.Items, item)
	}
	s.Blocks = append(s.Blocks, l)
	if more := len(b.Review.Holds) - len(l.Items); more > 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("holds.more", more)})
	}
	return s
}

func (b *builder) notKnown() document.Section {
	s := document.Begin("not-known")
	l := document.List{}
	for _, u := range b.Review.Unknown {
		line := plain.Clip(unknownLine(words.Named(u.Missing)), unknownText)
		if len(l.Items) < maxUnknown && !slices.Contains(l.Items, line) {
			l.Items = append(l.Items, line)
		}
	}
	l.Items = append(l.Items, b.assumed(maxUnknown-len(l.Items))...)
	if len(l.Items) > 0 {
		s.Blocks = append(s.Blocks, l)
	}
	s.Blocks = append(s.Blocks, document.Paragraph{Text: b.doubtCount()},
		document.Paragraph{Text: words.Of("notassessed.page_one"), Tone: document.Warning})
	if b.Review.Case.Brief {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("upset.brief"), Tone: document.Warning})
	}
	return s
}

// assumed is the assumed values that move most figures, as far as there is
// room beside what is missing.
func (b *builder) assumed(room int) []string {
	all := slices.Clone(b.Review.Assumptions)
	slices.SortStableFunc(all, func(a, b hazards.Assumption) int { return cmp.Compare(len(b.Moves), len(a.Moves)) })
	var out []string
	for _, a := range all {
		if len(out) < room && len(a.Moves) > 0 {
			what := plain.Clip(plain.Fold(a.Text), unknownText/2)
			out = append(out, plain.Clip(words.Of("unknown.assumed", what, a.ID, a.Status, b.MovesText(a.Moves, 1)),
				unknownText))
		}
	}
	return out
}

func unknownLine(what, measure string) string {
	if measure == "" {
		return plain.Fold(what)
	}
	return words.Of("unknown.line", plain.Fold(what), plain.Fold(measure))
}

// doubtCount says how much more is missing or not assessed, and how many of the numbers
// used nobody has read or measured.
func (b *builder) doubtCount() string {
	more, d := max(len(b.Review.Unknown)-maxUnknown, 0), b.Review.Doubts
	return words.Of("unknown.count", more, d.Memory, d.Assumed, d.Estimated, len(b.Review.NotAssessed))
}

func (b *builder) contacts() document.Section {
	s := document.Begin("contacts")
	s.Blocks = []document.Block{document.Blanks{Labels: []string{words.Of("contacts.day_night"),
		words.Of("contacts.emergency"), words.Of("contacts.gel")}}}
	return s
}
