package reports

import (
	"bytes"
	"html"
	"regexp"
	"strings"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"

	"etchbound/reports/document"
	"etchbound/reports/fixture"
	"etchbound/reports/plain"
)

// rendered is Markdown as a common reader shows it, with tables, strikethrough,
// task lists and automatic links.
func rendered(t interface{ Fatal(...any) }, md string) string {
	var b bytes.Buffer
	if err := goldmark.New(goldmark.WithExtensions(extension.GFM)).Convert([]byte(md), &b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

var tag = regexp.MustCompile(`<[^>]*>`)

func textOf(page string) string {
	return plain.Fold(html.UnescapeString(tag.ReplaceAllString(page, " ")))
}

// The Markdown of a document reads as the document: every text of the model is
// in the rendered page, hostile title and notes included.
func TestMarkdownRoundTrip(t *testing.T) {
	d := Build(fixture.Review(), fixtureOptions)
	var b bytes.Buffer
	if err := document.Markdown(&b, d); err != nil {
		t.Fatal(err)
	}
	page := rendered(t, b.String())
	shown := strings.ReplaceAll(textOf(page), " ", "")
	for _, s := range textsOf(d.Sections) {
		if !strings.Contains(shown, strings.ReplaceAll(plain.Fold(plain.Printable(s)), " ", "")) {
			t.Errorf("lost: %q", s)
		}
	}
	if !strings.Contains(shown, "<script>alert(1)</script>|**x**#notaheading") {
		t.Error("the title did not survive")
	}
	if n := strings.Count(page, "<h1>"); n != 1 {
		t.Errorf("%d headings of the first level", n)
	}
	if strings.Contains(page, "<img") || strings.Contains(page, "<!-- raw HTML omitted -->") {
		t.Error("prose opened HTML or an image")
	}
}

// textsOf is every plain text of the sections; code and prose are left out,
// since their markup is their own.
func textsOf(sections []document.Section) []string {
	var out []string
	for _, s := range sections {
		out = append(out, s.Title)
		for _, b := range s.Blocks {
			switch b := b.(type) {
			case document.Paragraph:
				if b.Tone != document.OnPaper {
					out = append(out, b.Text)
				}
			case document.List:
				out = append(out, b.Items...)
			case document.Table:
				out = append(out, b.Caption)
				for _, r := range b.Rows {
					for _, c := range r {
						out = append(out, c.Text)
					}
				}
			case document.Facts:
				for _, p := range b.Pairs {
					out = append(out, p.Name, p.Value)
				}
			case document.Blanks:
				out = append(out, b.Labels...)
			case document.Label:
				out = append(out, b.Lines...)
			case document.Unprinted: // without a title, which is not there
				out = append(out, textsOf([]document.Section{{Blocks: b.Blocks}})[1:]...)
			}
		}
		out = append(out, textsOf(s.Subs)...)
	}
	return out
}
