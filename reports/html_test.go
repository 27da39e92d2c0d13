package reports

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
)

func htmlOf(t *testing.T, d document.Document) string {
	t.Helper()
	var b bytes.Buffer
	if err := document.HTML(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestPageIsSelfContained(t *testing.T) {
	page := htmlOf(t, Build(fixture.Review(), fixtureOptions))
	for _, bad := range []string{"<script", "<img", "<iframe", "url(", "@import", "ZgotmplZ", "onerror="} {
		if strings.Contains(page, bad) {
			t.Errorf("the page holds %q", bad)
		}
	}
	for _, m := range regexp.MustCompile(`(?:href|src)="([^"]*)"`).FindAllStringSubmatch(page, -1) {
		if !strings.HasPrefix(m[1], "#") && m[1] != "data:," {
			t.Errorf("the page points to %q", m[1])
		}
	}
	for _, want := range []string{"Content-Security-Policy", `<html lang="en">`,
		"&lt;script&gt;alert(1)&lt;/script&gt; | **x** # not a heading", `<h1>`, `class="skip"`} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	if n := strings.Count(page, "<h1"); n != 1 {
		t.Errorf("%d first headings", n)
	}
}

// Every section of the design stands, in its order, even in a review of
// nothing; what is not there says so.
func TestSectionsNeverVanish(t *testing.T) {
	want := []string{"page-1", "purpose", "steps", "materials", "chemistry", "heat", "gas", "air", "skin", "solids",
		"storage", "waste", "scale",
		"upset", "safeguards", "construction", "pairs", "emergency", "local", "actions", "values", "signoff", "fields",
		"door", "bench", "label", "sheets"}
	for name, d := range map[string]document.Document{"empty": Build(emptyReview(), draft.Options{}),
		"fixture": Build(fixture.Review(), fixtureOptions)} {
		if len(d.Sections) != len(want) {
			t.Fatalf("%s: %d sections", name, len(d.Sections))
		}
		for i, s := range d.Sections {
			if s.Key != want[i] {
				t.Errorf("%s: section %d is %s, want %s", name, i, s.Key, want[i])
			}
			if len(s.Blocks)+len(s.Subs) == 0 {
				t.Errorf("%s: section %s is empty", name, s.Key)
			}
		}
		htmlOf(t, d)
	}
}

func TestPageOneOrder(t *testing.T) {
	d := Build(fixture.Review(), fixtureOptions)
	var got []string
	for _, s := range d.Sections[0].Subs {
		got = append(got, s.Key)
	}
	if strings.Join(got, " ") != "decision questions worst holds not-known contacts" {
		t.Errorf("page 1 is %v", got)
	}
}
