package draft

import (
	"slices"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// A tally is one quantity of an agent in a case, over whatever time it is a mean, on its
// way to a row: what it is at each place, the limits that it is not within, and what that
// means.
type tally struct {
	id      figure.ID // without a place
	line    line
	open    line // the places at which it is not within every limit
	top     line // the places at which the verdict is the worst of all
	most    figure.Verdict
	verdict figure.Verdict
	worst   *figure.Finding // that is furthest over, or not known
	means   *figure.Finding // the same among the limits that say what it means, not those of a file
	limits  []limit.Key     // keys of those that it is not within
	unknown bool
}

// Counts is what a reader has to see of the figures that want picks: matrices, and a row
// for each quantity that is not within every limit, is not known, or is asked for first.
// All of them, with what each holds for and what each is held against, are folded behind.
func (b *Draft) Counts(want func(*figure.Figure) bool) []document.Block {
	tallies := b.tallies(want)
	if len(tallies) == 0 {
		return nil
	}
	out := b.matricesOf(want)
	t := document.Table{Caption: words.Of("held.caption"), Kind: document.Held,
		Columns: document.Columns("col.figure", "glance.at", "held.limits", "col.verdict", "held.means")}
	left, of := 0, "" // of: the quantity of the last row
	for _, x := range tallies {
		if !x.counts() {
			left++
			continue
		}
		row := x.row(b)
		if Joins(t.Rows, row) || of == x.id.Quantity && x.alsoOpen(t.Rows[len(t.Rows)-1], row) {
			continue
		}
		if n := len(t.Rows); n > 0 && row[4].Text != "" && said(t.Rows, row[4].Text) {
			row[4].Text = words.Of("held.same")
		}
		t.Rows, of = append(t.Rows, row), x.id.Quantity
	}
	if len(t.Rows) > 0 {
		out = append(out, t)
	}
	return append(out, b.behind(want, left))
}

// alsoOpen adds an agent of which nothing is known to the row before it, which is of the
// same quantity, where that is of the same places. What each is missing stands with what
// settles it.
func (x *tally) alsoOpen(last, row []document.Cell) bool {
	if x.id.Agent == "" || x.verdict != figure.UnknownVerdict || x.worst == nil {
		return false
	}
	for i := 1; i < 4; i++ {
		if !last[i].Says(row[i]) {
			return false
		}
	}
	last[0].Add(AgentName(x.id.Quantity, x.id.Agent))
	last[4].Text = words.Of("held.open")
	return true
}

// said reports whether the last text of the rows is s.
func said(rows [][]document.Cell, s string) bool {
	for i := len(rows) - 1; i >= 0; i-- {
		if text := rows[i][4].Text; text != words.Of("held.same") {
			return text == s
		}
	}
	return false
}

// behind is everything of the figures that want picks, folded away; so many quantities
// stand nowhere else.
func (b *Draft) behind(want func(*figure.Figure) bool, left int) document.Block {
	all := b.FigureTable(want)
	count := 0
	for i := range b.Review.Figures {
		if want(&b.Review.Figures[i]) {
			count++
		}
	}
	all = append(all, b.Findings(func(f *figure.Finding) bool {
		g, ok := b.ByID[f.Figure]
		return ok && want(g)
	})...)
	return document.Fold{Summary: words.Of("counts.fold", left, count), Blocks: all}
}

// tallies are the quantities that want picks, in the order of the review.
func (b *Draft) tallies(want func(*figure.Figure) bool) []*tally {
	worst := b.verdicts()
	beside := b.beside(want)
	rows := map[figure.ID]*tally{}
	var out []*tally
	for i := range b.Review.Figures {
		f := &b.Review.Figures[i]
		if !want(f) || b.shown(f.ID) != f.ID {
			continue
		}
		key := kindOf(f.ID)
		x := rows[key]
		if x == nil {
			x = &tally{id: key}
			rows[key] = x
			out = append(out, x)
		}
		value := b.valueIn(f, beside[key]) + b.outerBound(f) + verdictAfter(worst[f.ID])
		x.line.add(b.whereOf(f), value)
		if worst[f.ID] != figure.Within {
			x.open.add(b.whereOf(f), value)
		}
		if v := worst[f.ID]; v >= x.most {
			if v > x.most {
				x.top, x.most = line{}, v
			}
			x.top.add(b.whereOf(f), value)
		}
		x.unknown = x.unknown || f.Value.Unknown()
	}
	for i := range b.Review.Findings {
		f := &b.Review.Findings[i]
		key := kindOf(b.shown(f.Figure))
		if x := rows[key]; x != nil && f.Verdict != figure.Within {
			x.hold(f)
		}
	}
	return out
}

// beside are the units of figures that stand in one row, by the quantity of the row.
func (b *Draft) beside(want func(*figure.Figure) bool) map[figure.ID]number.Units {
	of := map[figure.ID][]*figure.Figure{}
	for i := range b.Review.Figures {
		if f := &b.Review.Figures[i]; want(f) && b.shown(f.ID) == f.ID {
			key := kindOf(f.ID)
			of[key] = append(of[key], f)
		}
	}
	out := make(map[figure.ID]number.Units, len(of))
	for key, all := range of {
		out[key] = b.Options.Units.Common(all)
	}
	return out
}

// valueIn is ValueAndRange in the units of a row.
func (b *Draft) valueIn(f *figure.Figure, u number.Units) string {
	if _, ok := b.BoilsAt(f); ok {
		return b.ValueAndRange(f)
	}
	return u.Whole(f)
}

// outerBound is what is told beside a figure that has an outer bound; nothing for another.
func (b *Draft) outerBound(f *figure.Figure) string {
	id := f.ID
	if id.Case.Branch = figure.OuterBound; id.Case.State == 0 {
		id.Case.State = f.Of().Case.State
	}
	if x, ok := b.ByID[id]; ok && f.Case.Branch == "" && !x.Danger().Unknown() {
		return words.Of("glance.outer", b.Options.Units.Danger(x))
	}
	return ""
}

// kindOf is an id without where it holds: no place, and no time that it is a mean over.
func kindOf(id figure.ID) figure.ID {
	id.Place, id.Case.Over = figure.Place{}, 0
	return id
}

// whereOf is the place of a figure, with the time that it is a mean over.
func (b *Draft) whereOf(f *figure.Figure) string {
	at := b.placeOf(f)
	if f.Case.Over == 0 {
		return at
	}
	over := CaseName(figure.Case{Over: f.Case.Over})
	if at == "" {
		return over
	}
	return at + " " + over
}

// hold puts a finding to a tally.
func (x *tally) hold(f *figure.Finding) {
	x.verdict = max(x.verdict, f.Verdict)
	if !slices.Contains(x.limits, f.Limit.Key) {
		x.limits = append(x.limits, f.Limit.Key)
	}
	x.worst = further(x.worst, f)
	if f.Limit.Origin != limit.Local {
		x.means = further(x.means, f)
	}
}

// further is the one of two findings that is further over its limit.
func further(a, b *figure.Finding) *figure.Finding {
	if a == nil || b.Verdict > a.Verdict || b.Verdict == a.Verdict && share(b) < share(a) {
		return b
	}
	return a
}

// share is a margin as a part of its limit.
func share(f *figure.Finding) float64 {
	if f.Limit.Value == 0 {
		return f.Margin
	}
	return f.Margin / f.Limit.Value
}

// counts reports whether a quantity is printed.
func (x *tally) counts() bool {
	q := figure.Row(x.id.Quantity)
	return x.verdict != figure.Within || x.unknown || q.Headline > 0 && !inMatrix(x.id.Quantity)
}

// row is a tally as a row: of what stands in a matrix the worst places, of what is within
// at some places the others.
func (x *tally) row(b *Draft) []document.Cell {
	at := x.line.text()
	if len(x.open.values) > 0 && len(x.open.values) < len(x.line.values) {
		at = x.open.text()
		if inMatrix(x.id.Quantity) {
			at = x.top.text()
		}
	}
	row := []document.Cell{document.Text(glanceName(x.id)), document.Text(at),
		document.Text(words.Of("value.dash")), document.Text(words.Of("value.dash")), document.Text("")}
	if x.worst == nil {
		if x.unknown {
			row[3] = VerdictCell(figure.UnknownVerdict)
		}
		return row
	}
	limits := words.Of("held.limit", b.LimitText(&x.worst.Limit, x.worst.Figure), b.Margin(x.worst))
	if n := len(x.limits); n > 1 {
		limits = words.Of("held.others", limits, n-1)
	}
	row[2], row[3] = document.Text(limits), VerdictCell(x.verdict)
	means := x.means
	if means == nil {
		means = x.worst
	}
	if !means.Says.IsZero() {
		row[4] = document.Text(plain.Fold(words.Say(means.Says)))
	}
	return row
}
