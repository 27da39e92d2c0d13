package draft_test

import (
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/words"
)

// Whatever exceeds or is not known stands open on the sheet, and every figure stands
// behind its fold.
func TestFindingsThatCountAreNotFolded(t *testing.T) {
	r := fixture.Review()
	b := draft.New(&r, draft.Options{})
	open := 0
	for _, block := range b.Findings(func(*figure.Finding) bool { return true }) {
		switch x := block.(type) {
		case document.Table:
			for _, row := range x.Rows {
				if row[3].Mark == document.MarkWithin {
					t.Errorf("%s: within, and printed", row[0].Text)
				}
				open++
			}
		case document.Fold:
			for _, row := range x.Blocks[0].(document.Table).Rows {
				if row[3].Mark != document.MarkWithin {
					t.Errorf("%s: %s, and folded", row[0].Text, row[3].Text)
				}
			}
		}
	}
	if open == 0 {
		t.Error("no finding is printed")
	}
}

// A number at a glance has its worst verdict behind it.
func TestGlanceSaysVerdicts(t *testing.T) {
	r := fixture.Review()
	b := draft.New(&r, draft.Options{})
	blocks := b.FigureTable(func(*figure.Figure) bool { return true })
	all := ""
	for _, row := range blocks[0].(document.Table).Rows {
		all += row[1].Text + "\n"
	}
	for _, v := range []figure.Verdict{figure.Exceeds, figure.Near} {
		if !strings.Contains(all, ", "+words.Of("verdict."+v.String())) {
			t.Errorf("%s is not said in:\n%s", v, all)
		}
	}
	rows := len(blocks[1].(document.Fold).Blocks[0].(document.Table).Rows)
	if rows < len(blocks[0].(document.Table).Rows) {
		t.Errorf("%d figures are folded, fewer than are shown", rows)
	}
}
