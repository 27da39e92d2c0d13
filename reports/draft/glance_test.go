package draft_test

import (
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// Whatever exceeds, is near or is not known stands open on the sheet with its limit and
// margin, however many limits there are; what is within is counted.
func TestFindingsThatCountAreNotFolded(t *testing.T) {
	r := fixture.Review()
	b := draft.New(&r, draft.Options{})
	blocks := b.Findings(func(*figure.Finding) bool { return true })
	shown := ""
	for _, row := range blocks[0].(document.Table).Rows {
		if row[2].Mark == document.MarkWithin {
			t.Errorf("%s: within, and printed", row[0].Text)
		}
		shown += row[0].Text + row[1].Text + "\n"
	}
	for i := range r.Findings {
		f := &r.Findings[i]
		if f.Verdict == figure.Within || b.Repeated(f) {
			continue
		}
		for _, want := range []string{b.NameOf(f.Figure), b.LimitText(&f.Limit, f.Figure), b.Margin(f)} {
			if !strings.Contains(shown, want) {
				t.Errorf("%s: %q is not printed", f.ID(), want)
			}
		}
	}
}

// A number at a glance has its worst verdict behind it.
func TestGlanceSaysVerdicts(t *testing.T) {
	r := fixture.Review()
	b := draft.New(&r, draft.Options{})
	blocks := b.FigureTable(func(*figure.Figure) bool { return true })
	all, named := "", map[string]int{}
	for _, row := range blocks[0].(document.Table).Rows {
		all += row[1].Text + "\n"
		name, _, _ := strings.Cut(row[0].Text, ", ")
		named[name]++
	}
	for i := range r.Figures { // rows of one quantity follow its name once
		if name := number.LabelOf(r.Figures[i].Quantity); named[name] > 1 {
			t.Errorf("%q stands %d times", name, named[name])
		}
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
