package draft_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
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

// Rows of one quantity follow its name once, and that of the next quantity stands whole.
func TestAGlanceNamesAQuantityOnce(t *testing.T) {
	r := hazards.Review{Case: route.Case{Route: &route.Route{}}}
	for _, id := range []figure.ID{{Quantity: "air.breathing_zone", Agent: "hf"},
		{Quantity: "air.breathing_zone", Agent: "hcl"}, {Quantity: "air.saturated", Agent: "hcl"}} {
		id.Place = figure.Step(2)
		r.Figures = append(r.Figures, figure.Figure{ID: id, Value: working.Exact("x", "ppm", 1, "as written")})
	}
	b := draft.New(&r, draft.Options{})
	var got []string
	for _, row := range b.FigureTable(func(*figure.Figure) bool { return true })[0].(document.Table).Rows {
		got = append(got, row[0].Text)
	}
	want := []string{number.LabelOf("air.breathing_zone") + ", hydrogen fluoride", "– hydrogen chloride",
		number.LabelOf("air.saturated") + ", hydrogen chloride"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
