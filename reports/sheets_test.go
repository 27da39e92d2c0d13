package reports

import (
	"bytes"
	"context"
	"errors"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/paper"
	"etchbound/schemas/long"
)

// The review of the demonstration is twelve sheets, page 1 among them, and three cards:
// on both papers, with the site and its limits. The auditor's book has at most thirty.
func TestTheDemonstrationKeepsToItsSheets(t *testing.T) {
	long.Only(t)
	if testing.Short() {
		t.Skip("the short form opens no page in a browser")
	}
	if _, err := paper.Browser(); errors.Is(err, paper.ErrNoBrowser) {
		t.Skip("no chromium is installed: nothing was printed")
	}
	r := fixture.AtSite(t, "demo-lif-hcl-2g.yaml", "site-demo.yaml", "limits-demo.yaml")
	type print struct {
		name  string
		paper document.Paper
		build func(hazards.Review, draft.Options) document.Document
		most  int
	}
	for _, c := range long.Some([]print{{"review, A4", document.A4, Build, 15},
		{"review, Letter", document.Letter, Build, 15},
		{"book, A4", document.A4, BuildWorking, 30}, {"book, Letter", document.Letter, BuildWorking, 30}}, 1, 0) {
		o := fixtureOptions
		o.Paper = c.paper
		var page bytes.Buffer
		if err := document.HTML(&page, c.build(r, o)); err != nil {
			t.Fatal(err)
		}
		pdf, err := paper.PDF(context.Background(), page.Bytes())
		if err != nil {
			t.Fatal(err)
		}
		if n := paper.Sheets(pdf); n == 0 || n > c.most {
			t.Errorf("%s: %d sheets, at most %d are wanted", c.name, n, c.most)
		}
	}
}

// The control line tells papers apart that stand on another file, other data, another
// program or a shorter form.
func TestControlLinesTellPapersApart(t *testing.T) {
	long.Only(t)
	r := fixture.AtSite(t, "demo-lif-hcl-2g.yaml", "site-demo.yaml")
	line := func(o draft.Options) string { return Build(r, o).Control }
	seen := map[string]string{}
	tell := func(what, control string) {
		if other, ok := seen[control]; ok {
			t.Errorf("%s and %s carry the same control line: %s", what, other, control)
		}
		seen[control] = what
	}
	o := fixtureOptions
	tell("as it is", line(o))
	o.DataDigest = strings.Repeat("cd", 32)
	tell("other data", line(o))
	o = fixtureOptions
	o.Version = "9.9"
	tell("another program", line(o))
	o = fixtureOptions
	o.Brief = true
	tell("brief", line(o))
	site := *r.Case.Site
	site.Digest = strings.Repeat("12", 32)
	r.Case.Site = &site
	tell("another site", line(fixtureOptions))
	r.Case.Site = nil
	tell("no site", line(fixtureOptions))
	limits := *r.Case.Limits
	limits.Digest = strings.Repeat("34", 32)
	r.Case.Limits = &limits
	tell("local limits", line(fixtureOptions))
	var page, text bytes.Buffer
	d := Build(r, fixtureOptions)
	if err := errors.Join(document.HTML(&page, d), document.Markdown(&text, d)); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(page.String(), "; "+d.Control+`"`) || !strings.Contains(text.String(), d.Control) {
		t.Error("the control line stands in the foot of neither the page nor the Markdown")
	}
}
