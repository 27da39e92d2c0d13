package reports

import (
	"cmp"
	"slices"
	"unicode/utf8"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/upset"
	"etchbound/reports/document"
	"etchbound/reports/number"
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
	s := document.Section{Key: "page-1", Title: b.title()}
	s.Blocks = append(s.Blocks, b.control())
	s.Subs = []document.Section{b.decision(), b.envelope(), b.worst(), b.holdPoints(), b.notKnown(), b.contacts()}
	return s
}

func (b *builder) control() document.Block {
	return document.Facts{Pairs: []document.Pair{
		{Name: words.Of("control.digest"), Value: b.digestText()},
		{Name: words.Of("control.date"), Value: plain.Fold(b.route().Date)},
		{Name: words.Of("control.version"), Value: b.versionText()},
		{Name: words.Of("control.page"), Value: words.Of("control.page_value")},
		{Name: words.Of("control.state"), Value: words.Of("control.draft")},
	}}
}

func (b *builder) digestText() string {
	if d := plain.ShortDigest(b.route().Digest); d != "" {
		return d
	}
	return words.Of("value.none_given")
}

func (b *builder) versionText() string {
	return words.Of("control.version_value", words.OrNone(b.o.Version), words.OrNone(b.o.DataVersion))
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
			{Name: words.Of("envelope.batch"), Value: b.batchText()},
			{Name: words.Of("envelope.hf"), Value: b.bareValue("fluoride.hf_concentration", "envelope.no_fluoride")},
			{Name: words.Of("envelope.temperature"), Value: b.highestSet()},
			{Name: words.Of("envelope.attended"), Value: b.attendance()},
			{Name: words.Of("envelope.closure"), Value: plain.Clip(b.closures(), 80)},
			{Name: words.Of("envelope.vessels"), Value: plain.Clip(b.capacities(), 80)},
		}},
	}
	return s
}

// bareValue is the dangerous end of a bare figure, or the sentence of a key
// where the figure does not apply.
func (b *builder) bareValue(quantity, none string) string {
	f, ok := b.bare(quantity)
	if !ok {
		return words.Of(none)
	}
	return b.valueAndRange(f)
}

// hfPresent is the sentence that names HF, and whether there is any.
func (b *builder) hfPresent() (string, bool) {
	f, ok := b.bare("fluoride.hf_equivalent")
	if !ok {
		return "", false
	}
	where := f.Place
	if m, ok := b.byID[f.Of()]; ok {
		f, where = m, m.Place
	}
	at := func(quantity string) string {
		g, ok := b.at(quantity, where)
		if !ok {
			g, ok = b.bare(quantity)
		}
		if !ok || g.Value.Unknown() {
			return words.Of("hf.unknown", number.UnitOf(quantity))
		}
		return b.valueText(g)
	}
	s := words.Of("hf.present", b.valueText(f), at("fluoride.hf_concentration"), at("fluoride.hf_strength"))
	if !where.IsZero() {
		s = words.Of("hf.present_where", s, b.placeName(where))
	}
	return s, true
}

func (b *builder) worst() document.Section {
	s := document.Begin("worst")
	if hf, ok := b.hfPresent(); ok {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: hf, Tone: document.Warning})
	}
	s.Blocks = append(s.Blocks, b.replacedBlocks()...)
	t := document.Table{Caption: words.Of("worst.caption"),
		Columns: document.Columns("col.figure", "col.value_range", "col.limit", "col.margin", "col.verdict")}
	gas := b.gasRow()
	for _, f := range b.worstFindings() {
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
	f, ok := b.bare("gas.hydrogen.total")
	if !ok {
		return nil
	}
	for i := range b.r.Findings {
		if b.r.Findings[i].Figure.Quantity == f.Quantity {
			return nil
		}
	}
	return [][]document.Cell{{document.Text(plain.Clip(b.figureName(f), nameLength)), document.Text(b.valueAndRange(f)),
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

// worstFindings is at most eight findings, worst first, one a quantity: the same
// excess at three steps, or over three limits, is one line for the committee.
func (b *builder) worstFindings() []*figure.Finding {
	var all []*figure.Finding
	for i := range b.r.Findings {
		if f := &b.r.Findings[i]; f.Verdict == figure.Within && f.Figure.Quantity == "account.error" {
			continue // a check of the calculation is news only when it fails
		}
		if f := &b.r.Findings[i]; f.Limit.Key != upsetLimit || f == b.failing() {
			all = append(all, f)
		}
	}
	slices.SortStableFunc(all, worseFirst)
	seen := map[string]bool{}
	var out []*figure.Finding
	for _, f := range all {
		key := f.Figure.Quantity
		if f.Limit.Key == upsetLimit {
			key += "+" + upsetLimit.ID
		}
		if seen[key] || len(out) == maxWorst {
			continue
		}
		seen[key] = true
		out = append(out, f)
	}
	return out
}

// worseFirst orders findings by verdict and then by what is left of the limit.
// A known excess stands before an unknown of the same rank, and an excess over
// a limit of zero, which has no share left to compare, before the others.
func worseFirst(a, b *figure.Finding) int {
	if c := cmp.Compare(b.Verdict, a.Verdict); c != 0 {
		return c
	}
	if sa, sb := supposed(a), supposed(b); sa != sb {
		if sb {
			return -1
		}
		return 1
	}
	if za, zb := a.Limit.Value == 0, b.Limit.Value == 0; za != zb {
		if za {
			return -1
		}
		return 1
	}
	return cmp.Compare(a.Margin, b.Margin)
}

// failing is the finding that stands for all failures: of the worst verdict the
// first in their order, nil where nothing can fail.
func (b *builder) failing() *figure.Finding {
	var out *figure.Finding
	for i := range b.r.Findings {
		f := &b.r.Findings[i]
		if f.Limit.Key != upsetLimit {
			continue
		}
		if out == nil || f.Verdict > out.Verdict || f.Verdict == out.Verdict &&
			failureRank(f.Figure) < failureRank(out.Figure) {
			out = f
		}
	}
	return out
}

// failureRank is the place of a finding's failure in their order.
func failureRank(id figure.ID) int { return slices.Index(upset.Keys(), id.Case.Failure) }

// upsetLimit is what the temperature of a failure is held against.
var upsetLimit = limit.Named(limit.Review, "boiling_if_it_fails")

// supposed reports whether a finding is of something that is no step of the route:
// an agent it does not use, a bottle on its way.
func supposed(f *figure.Finding) bool {
	switch f.Figure.Place {
	case figure.Waste, figure.Delivery, figure.Yard:
		return f.Figure.Agent != ""
	}
	return false
}

func (b *builder) worstRow(f *figure.Finding) []document.Cell {
	value, name := words.Of("value.unknown"), f.Figure.String()
	if g, ok := b.byID[f.Figure]; ok {
		value, name = b.valueAndRange(g), b.figureName(g)
	}
	return []document.Cell{document.Text(plain.Clip(name, nameLength)), document.Text(value),
		document.Text(plain.Clip(b.limitText(&f.Limit, f.Figure.Agent), limitLength)),
		document.Text(b.margin(f)), verdictCell(f.Verdict)}
}

// unjudged are the figures a committee looks for even where no limit is held.
func (b *builder) unjudged(room int) [][]document.Cell {
	judged := map[string]bool{}
	for i := range b.r.Findings {
		judged[b.r.Findings[i].Figure.Quantity] = true
	}
	var out [][]document.Cell
	for _, q := range figure.Headlines() {
		f, ok := b.bare(q)
		if !ok || judged[q] || q == "gas.hydrogen.total" || len(out) >= room {
			continue
		}
		out = append(out, document.Row(plain.Clip(b.figureName(f), nameLength), b.valueAndRange(f),
			words.Of("limit.none"), words.Of("value.dash"), words.Of("verdict.none")))
	}
	return out
}

func (b *builder) holdPoints() document.Section {
	s := document.Begin("holds")
	if len(b.r.Holds) == 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("holds.none")})
		return s
	}
	l := document.List{Ordered: true}
	room := holdLines
	if len(b.r.Applied) > 0 {
		room -= replacedLines
	}
	for i, h := range b.r.Holds {
		item := plain.Clip(plain.Fold(words.Say(h.Says)), holdLength)
		if room -= lines(item, lineLength); room < 0 || i == maxHolds {
			break
		}
		l.Items = append(l.Items, item)
	}
	s.Blocks = append(s.Blocks, l)
	if more := len(b.r.Holds) - len(l.Items); more > 0 {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("holds.more", more)})
	}
	return s
}

func (b *builder) notKnown() document.Section {
	s := document.Begin("not-known")
	l := document.List{}
	for _, u := range b.r.Unknown {
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
	if b.r.Case.Brief {
		s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("upset.brief"), Tone: document.Warning})
	}
	return s
}

// assumed is the assumed values that move most figures, as far as there is
// room beside what is missing.
func (b *builder) assumed(room int) []string {
	all := slices.Clone(b.r.Assumptions)
	slices.SortStableFunc(all, func(a, b hazards.Assumption) int { return cmp.Compare(len(b.Moves), len(a.Moves)) })
	var out []string
	for _, a := range all {
		if len(out) < room && len(a.Moves) > 0 {
			what := plain.Clip(plain.Fold(a.Text), unknownText/2)
			out = append(out, plain.Clip(words.Of("unknown.assumed", what, a.ID, a.Status, b.movesText(a.Moves, 1)),
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
	more, d := max(len(b.r.Unknown)-maxUnknown, 0), b.r.Doubts
	return words.Of("unknown.count", more, d.Memory, d.Assumed, d.Estimated, len(b.r.NotAssessed))
}

func (b *builder) contacts() document.Section {
	s := document.Begin("contacts")
	s.Blocks = []document.Block{document.Blanks{Labels: []string{words.Of("contacts.day_night"),
		words.Of("contacts.emergency"), words.Of("contacts.gel")}}}
	return s
}
