package reports

import (
	"strconv"
	"strings"
	"testing"

	"etchbound/reports/document"
	"etchbound/reports/fixture"
	"etchbound/reports/review"
	"etchbound/schemas/long"
)

// Each of the questions a committee asks is computed, filled in or a line to write on, at
// the place the index names.
func TestEveryQuestionIsAnsweredWhereTheIndexSays(t *testing.T) {
	long.Only(t)
	if n := len(review.Fields()); n != 74 {
		t.Fatalf("%d fields", n)
	}
	const name = "demo-lif-hcl-2g.yaml"
	d := Build(fixture.AtSite(t, name, "site-demo.yaml"), fixtureOptions)
	at := map[string]string{}
	for i := range d.Sections {
		at[d.Sections[i].Key] = allOf(d.Sections[i])
	}
	for i, f := range review.Fields() {
		if want := "F" + twoDigits(i+1); f.Code != want {
			t.Errorf("%s stands where %s does", f.Code, want)
		}
		text, ok := at[f.Section]
		if !ok {
			t.Errorf("%s: there is no section %s", f.Code, f.Section)
		}
		if _, ok := at[f.Also]; !ok && f.Also != "" {
			t.Errorf("%s: there is no section %s", f.Code, f.Also)
		}
		if !strings.Contains(text, f.Find) {
			t.Errorf("%s %s: section %s does not hold %q", f.Code, f.Name, f.Section, f.Find)
		}
	}
}

// What people answer is a line to write on in the review of every route, by its code.
func TestBlanksStandInEveryReview(t *testing.T) {
	long.Only(t)
	for name, r := range fixture.Some(t, 3, 1) {
		d := Build(r, fixtureOptions)
		blanks := map[string]bool{}
		for i := range d.Sections {
			labelsOf(d.Sections[i], blanks)
		}
		for _, f := range review.Fields() {
			if (f.Kind == "blank" || f.Section == review.OwnSection) && !blanks[f.Code] {
				t.Errorf("%s: no line to write on for %s", name, f.Code)
			}
		}
	}
}

func twoDigits(n int) string {
	if n < 10 {
		return "0" + strconv.Itoa(n)
	}
	return strconv.Itoa(n)
}

// labelsOf notes the codes of the lines to write on of a section.
func labelsOf(s document.Section, out map[string]bool) {
	note := func(l string) {
		if i := strings.LastIndex(l, "[F"); i >= 0 && strings.HasSuffix(l, "]") {
			out[l[i+1:len(l)-1]] = true
		}
	}
	for _, b := range s.Blocks {
		switch x := b.(type) {
		case document.Blanks:
			for _, l := range x.Labels {
				note(l)
			}
		case document.Table: // a row with cells to sign in
			for _, r := range x.Rows {
				if len(r) > 1 && r[1].Blank {
					note(r[0].Text)
				}
			}
		}
	}
	for _, sub := range s.Subs {
		labelsOf(sub, out)
	}
}

// allOf is every text of a section, heads of columns and labels among them.
func allOf(s document.Section) string {
	out := textsOf([]document.Section{s})
	for _, b := range s.Blocks {
		switch x := b.(type) {
		case document.Table:
			for _, c := range x.Columns {
				out = append(out, c.Text)
			}
		case document.FormLine:
			out = append(append(out, x.Label), x.Boxes...)
		case document.Fold:
			out = append(out, x.Summary)
		}
	}
	for _, sub := range s.Subs {
		out = append(out, allOf(sub))
	}
	return strings.Join(out, "\n")
}
