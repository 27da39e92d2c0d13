package reports

import (
	"bytes"
	"regexp"
	"testing"

	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/schemas/long"
)

// Behind each figure its working is folded, its line leads back to it, and no link of the
// page leads nowhere. Every figure that is not another under a shorter id has its row and its
// line, those of what fails too.
func TestFiguresAndLinesLeadToEachOther(t *testing.T) {
	long.NotShort(t)
	var page bytes.Buffer
	r := fixture.AtSite(t, "tmaoh-half-gram.yaml", "site-demo.yaml")
	if err := document.HTML(&page, Build(r, fixtureOptions)); err != nil {
		t.Fatal(err)
	}
	anchors := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]+)"`).FindAllStringSubmatch(page.String(), -1) {
		if anchors[m[1]] {
			t.Errorf("anchor %s is there twice", m[1])
		}
		anchors[m[1]] = true
	}
	for i := range r.Figures {
		f := &r.Figures[i]
		if f.Of().IsZero() && !anchors[draft.FigureAnchor(f.ID)] {
			t.Errorf("%s has no row", f.ID)
		}
		if n := f.Value.Line(); f.Of().IsZero() && n > 0 && !anchors[draft.LineAnchor(n)] {
			t.Errorf("line %d of %s is not there", n, f.ID)
		}
	}
	back := 0
	for _, m := range regexp.MustCompile(`href="#([^"]+)"`).FindAllStringSubmatch(page.String(), -1) {
		if !anchors[m[1]] {
			t.Errorf("a link leads to %s, which is nowhere", m[1])
		}
		if len(m[1]) > 3 && m[1][:3] == "of-" {
			back++
		}
	}
	worked := bytes.Count(page.Bytes(), []byte("<summary>worked</summary>"))
	if worked < 100 || back < worked {
		t.Errorf("%d figures have their working behind them, %d lines lead back to one", worked, back)
	}
}
