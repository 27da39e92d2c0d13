package review

import (
	"math"
	"strings"

	"etchbound/chemicals"
	"etchbound/hazards/figure"
	"etchbound/hazards/ranges"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/plain"
	"etchbound/reports/words"
)

// mostTurns is how many values that turn a verdict stand open; the others are folded.
const mostTurns = 4

// turnBlocks say which value would turn which verdict, and which verdicts none turns.
func (b *builder) turnBlocks() []document.Block {
	if len(b.Review.Turns) == 0 {
		return nil
	}
	t := document.Table{Caption: words.Of("turns.caption"),
		Columns: document.Columns("turns.finding", "turns.datum", "turns.now", "turns.at")}
	limits := b.limitNames()
	turns := map[figure.FindingID]bool{}
	for i := range b.Review.Turns {
		if x := &b.Review.Turns[i]; !math.IsNaN(x.At) {
			turns[x.Finding] = true
			t.Rows = append(t.Rows, document.Row(b.turnOf(x, limits), whatItIs(&x.Datum),
				number.With(number.Nearest(x.Datum.Value, 6)+" ("+draft.DataRange(x.Datum)+")", x.Datum.Unit), turnsAt(x)))
		}
	}
	var out []document.Block
	if rest := len(t.Rows) - mostTurns; rest > 0 {
		more := t
		t.Rows, more.Rows = t.Rows[:mostTurns], t.Rows[mostTurns:]
		out = append(out, t, document.Fold{Summary: words.Of("turns.more", rest), Blocks: []document.Block{more}})
	} else if len(t.Rows) > 0 {
		out = append(out, t)
	}
	var never []string
	for i := range b.Review.Turns {
		if x := &b.Review.Turns[i]; !turns[x.Finding] {
			turns[x.Finding] = true
			never = append(never, b.turnOf(x, limits))
		}
	}
	if never != nil {
		out = append(out, document.Fold{Summary: words.Of("turns.nevers", len(never)),
			Blocks: []document.Block{document.Paragraph{Text: words.Of("turns.never", strings.Join(never, "; "))}}})
	}
	return append(out, document.Paragraph{Text: words.Of("turns.note"), Tone: document.Note})
}

// limitNames are the words of the limit of every finding.
func (b *builder) limitNames() map[figure.FindingID]string {
	out := make(map[figure.FindingID]string, len(b.Review.Findings))
	for i := range b.Review.Findings {
		f := &b.Review.Findings[i]
		out[f.ID()] = b.LimitText(&f.Limit, f.Figure)
	}
	return out
}

func (b *builder) turnOf(x *ranges.Turn, limits map[figure.FindingID]string) string {
	return words.Of("turns.verdict", b.NameOf(x.Finding.Figure), draft.VerdictName(x.Verdict), limits[x.Finding])
}

// whatItIs is what a datum is, and its id.
func whatItIs(d *chemicals.Datum) string {
	says := plain.Fold(d.Named())
	if says == "" {
		return draft.DatumName(d.ID)
	}
	return words.Of("turns.named", says, draft.DatumName(d.ID))
}

func turnsAt(x *ranges.Turn) string {
	key := "turns.most"
	if x.At > x.Worst {
		key = "turns.least"
	}
	return words.Of(key, draft.VerdictName(x.Becomes), number.Measure(x.At, 3, x.Datum.Unit))
}
