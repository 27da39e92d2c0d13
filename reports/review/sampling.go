package review

import (
	"math"
	"strconv"

	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// mostChances and mostInputs are how many rows are printed; all stand in the JSON.
const mostChances, mostInputs = 25, 4

// leastShare of what a figure depends on is worth a line.
const leastShare = 0.01

// sampling is what the draws say: where the headline figures lie, how often a
// finding exceeds, and what to measure first.
func (b *builder) sampling() document.Section {
	s, x := document.Begin("sampling"), b.Options.Sample
	s.Blocks = append(s.Blocks, document.Paragraph{Text: words.Of("sampling.lead", x.N, x.Seed, len(x.Inputs))},
		b.bandTable(),
		b.chanceTable(), document.Paragraph{Text: words.Of("sampling.most", mostChances), Tone: document.Note},
		b.measureFirst(),
		document.Paragraph{Text: words.Of("sampling.note"), Tone: document.Note})
	return s
}

func (b *builder) bandTable() document.Block {
	t := document.Table{Caption: words.Of("sampling.bands"),
		Columns: document.Right(document.Columns("col.figure", "sampling.p05", "sampling.p50",
			"sampling.p95", "sampling.unknown"), 1, 2, 3, 4)}
	x := b.Options.Sample
	for i := range x.Ranked {
		id := x.Ranked[i].Figure
		v, q := x.Bands[id], id.Quantity
		t.Rows = append(t.Rows, document.Row(b.NameOf(id), number.Said(v.P05, 3, number.UnitOf(q)),
			number.Said(v.P50, 3, number.UnitOf(q)), number.Said(v.P95, 3, number.UnitOf(q)), strconv.Itoa(v.Unknown)))
	}
	return t
}

// chanceTable has the findings that the draws do not agree on, and those that are
// always so behind them.
func (b *builder) chanceTable() document.Block {
	t := document.Table{Caption: words.Of("sampling.chances"),
		Columns: document.Right(document.Columns("col.figure", "col.limit_basis", "col.verdict", "sampling.exceeds",
			"sampling.unknowns"), 3,
			4)}
	for _, always := range []bool{false, true} {
		for i := range b.Review.Findings {
			f := &b.Review.Findings[i]
			c, there := b.Options.Sample.Chance[f.ID()]
			sure := c.Exceeds+c.Unknown > 1-1e-9
			if !there || c.Exceeds+c.Unknown == 0 || sure != always || len(t.Rows) == mostChances || b.Repeated(f) {
				continue
			}
			t.Rows = append(t.Rows, []document.Cell{document.Text(b.NameOf(f.Figure)),
				document.Text(b.LimitText(&f.Limit, f.Figure)),
				draft.VerdictCell(f.Verdict),
				document.Text(draft.Percent(c.Exceeds)), document.Text(draft.Percent(c.Unknown))})
		}
	}
	return t
}

// measureFirst ranks what the headline figures depend on.
func (b *builder) measureFirst() document.Block {
	t := document.Table{Caption: words.Of("sampling.first"),
		Columns: document.Right(document.Columns("col.figure", "sampling.inputs",
			"sampling.unexplained"), 2)}
	for _, r := range b.Options.Sample.Ranked {
		if r.Entered == 0 {
			continue // not known in every draw: there is nothing to rank
		}
		s := ""
		for i, x := range r.Shares {
			if i == mostInputs || x.Share < leastShare {
				break
			}
			s = plain.Join(s, x.Input+" "+draft.Percent(x.Share))
		}
		left := draft.Percent(r.Unexplained)
		if r.Unexplained > 0.3 || math.IsNaN(r.Unexplained) {
			left += " " + words.Of("sampling.little")
		}
		if r.Entered < len(b.Options.Sample.Inputs) {
			s = plain.Join(s, words.Of("sampling.entered", r.Entered, len(b.Options.Sample.Inputs)))
		}
		t.Rows = append(t.Rows, document.Row(b.NameOf(r.Figure), words.OrDash(s), left))
	}
	return t
}
