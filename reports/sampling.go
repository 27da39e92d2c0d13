package reports

import (
	"math"
	"strconv"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// bandOf is where the draws of a figure lie; false where none were made or the
// figure is of a failure, whose range stays that of the corners.
func (b *builder) bandOf(f *figure.Figure) (scaling.Band, bool) {
	if b.o.Sample == nil {
		return scaling.Band{}, false
	}
	if x, there := b.o.Sample.Bands[f.ID]; there {
		return x, true
	}
	x, there := b.o.Sample.Bands[f.Of()]
	return x, there
}

// manyUnknown is the share of the draws from which on a chance is not known.
const manyUnknown = 0.05

// chanceOf is how often a finding exceeds; not a number where no draws were made,
// where none judged it, as one of a failure, and where too many do not know it.
func (b *builder) chanceOf(f *figure.Finding) float64 {
	if g := b.byID[f.Figure]; b.o.Sample == nil || g == nil || g.Case.Failure != "" {
		return math.NaN()
	}
	return sureChance(b.o.Sample.Chance, f.ID())
}

// sureChance is a chance, not a number where no draw judged the finding and where
// too many do not know it.
func sureChance(all map[figure.FindingID]scaling.Chance, id figure.FindingID) float64 {
	c, there := all[id]
	if !there || c.Unknown > manyUnknown {
		return math.NaN()
	}
	return c.Exceeds
}

// mostChances and mostInputs are how many rows are printed; all stand in the JSON.
const mostChances, mostInputs = 25, 4

// leastShare of what a figure depends on is worth a line.
const leastShare = 0.01

// sampling is what the draws say: where the headline figures lie, how often a
// finding exceeds, and what to measure first.
func (b *builder) sampling() document.Section {
	s, x := document.Begin("sampling"), b.o.Sample
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
	x := b.o.Sample
	for i := range x.Ranked {
		id := x.Ranked[i].Figure
		v, q := x.Bands[id], id.Quantity
		t.Rows = append(t.Rows, document.Row(b.nameOf(id), number.Measure(v.P05, 3, number.UnitOf(q)),
			number.Measure(v.P50, 3, number.UnitOf(q)), number.Measure(v.P95, 3, number.UnitOf(q)), strconv.Itoa(v.Unknown)))
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
		for i := range b.r.Findings {
			f := &b.r.Findings[i]
			c, there := b.o.Sample.Chance[f.ID()]
			sure := c.Exceeds+c.Unknown > 1-1e-9
			if !there || c.Exceeds+c.Unknown == 0 || sure != always || len(t.Rows) == mostChances || b.repeated(f) {
				continue
			}
			t.Rows = append(t.Rows, []document.Cell{document.Text(b.nameOf(f.Figure)),
				document.Text(b.limitText(&f.Limit, f.Figure.Agent)),
				verdictCell(f.Verdict),
				document.Text(percent(c.Exceeds)), document.Text(percent(c.Unknown))})
		}
	}
	return t
}

// percent of the draws.
func percent(share float64) string { return number.Nearest(100*share, 3) + " %" }

// measureFirst ranks what the headline figures depend on.
func (b *builder) measureFirst() document.Block {
	t := document.Table{Caption: words.Of("sampling.first"),
		Columns: document.Right(document.Columns("col.figure", "sampling.inputs",
			"sampling.unexplained"), 2)}
	for _, r := range b.o.Sample.Ranked {
		if r.Entered == 0 {
			continue // not known in every draw: there is nothing to rank
		}
		s := ""
		for i, x := range r.Shares {
			if i == mostInputs || x.Share < leastShare {
				break
			}
			s = joinTexts(s, x.Input+" "+percent(x.Share))
		}
		left := percent(r.Unexplained)
		if r.Unexplained > 0.3 || math.IsNaN(r.Unexplained) {
			left += " " + words.Of("sampling.little")
		}
		if r.Entered < len(b.o.Sample.Inputs) {
			s = joinTexts(s, words.Of("sampling.entered", r.Entered, len(b.o.Sample.Inputs)))
		}
		t.Rows = append(t.Rows, document.Row(b.nameOf(r.Figure), words.OrDash(s), left))
	}
	return t
}
