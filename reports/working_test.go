package reports

import (
	"regexp"
	"strings"
	"testing"

	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

var (
	leadsTo = regexp.MustCompile(`href="#([^"]+)"`)
	anchors = regexp.MustCompile(` id="([^"]+)"`)
)

// Every link of the auditor's book and of a review leads somewhere, no anchor is there twice, and a
// figure and its line lead to each other.
func TestWorkingLinks(t *testing.T) {
	for name, d := range map[string]Document{"empty": BuildWorking(emptyReview(), fixtureOptions),
		"fixture": BuildWorking(fixture.Review(), fixtureOptions), "review": Build(fixture.Review(), fixtureOptions),
		"upset": BuildUpset(fixture.Review(), fixtureOptions)} {
		var b strings.Builder
		if err := HTML(&b, d); err != nil {
			t.Fatal(err)
		}
		there := map[string]bool{}
		for _, m := range anchors.FindAllStringSubmatch(b.String(), -1) {
			if there[m[1]] {
				t.Errorf("%s: anchor %q is there twice", name, m[1])
			}
			there[m[1]] = true
		}
		links := 0
		for _, m := range leadsTo.FindAllStringSubmatch(b.String(), -1) {
			links++
			if !there[m[1]] {
				t.Errorf("%s: a link leads to %q, which is not there", name, m[1])
			}
		}
		if strings.Contains(b.String(), "data row ") && !strings.Contains(b.String(), `href="#datum-`) {
			t.Errorf("%s: no line leads to its datum", name)
		}
		if strings.Contains(b.String(), "landscape") != d.Wide || links == 0 {
			t.Errorf("%s: %d links, or not printed across", name, links)
		}
	}
}

// The book has every figure of what happens as it is written, and every finding that
// is not within its limit.
func TestWorkingLeavesNothingOut(t *testing.T) {
	r := fixture.Review()
	var b strings.Builder
	if err := Markdown(&b, BuildWorking(r, fixtureOptions)); err != nil {
		t.Fatal(err)
	}
	d := draft.New(&r, fixtureOptions)
	for i := range r.Figures {
		f := &r.Figures[i]
		if _, repeats := d.ByID[f.Of()]; !repeats && f.Case.Failure == "" &&
			!strings.Contains(b.String(), "`"+f.ID.String()+"`") {
			t.Errorf("%s is not in the register", f.ID)
		}
	}
	for _, key := range []string{"register", "conditions", "judged", "working", "values"} {
		if !strings.Contains(b.String(), words.Of("title."+key)) {
			t.Errorf("section %s is not there", key)
		}
	}
}

// No anchor of a review at a site is there twice: a curve is drawn once, whatever times
// it is averaged over.
func TestAnchorsAtASite(t *testing.T) {
	long.Only(t)
	r := fixture.AtSite(t, "demo-lif-hcl-2g.yaml", "site-demo.yaml")
	var b strings.Builder
	if err := HTML(&b, Build(r, fixtureOptions)); err != nil {
		t.Fatal(err)
	}
	there := map[string]bool{}
	for _, m := range anchors.FindAllStringSubmatch(b.String(), -1) {
		if there[m[1]] {
			t.Errorf("anchor %q is there twice", m[1])
		}
		there[m[1]] = true
	}
}
