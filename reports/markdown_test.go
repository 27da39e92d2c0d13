package reports

import (
	"bytes"
	"html"
	"regexp"
	"strings"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"pgregory.net/rapid"
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

func textOf(page string) string { return fold(html.UnescapeString(tag.ReplaceAllString(page, " "))) }

// Whatever a person wrote comes out of a Markdown reader as it was written, in
// a paragraph, in a list and in a table, and nothing else comes with it.
func TestEscapedTextSurvives(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.OneOf(
			rapid.StringOfN(rapid.RuneFrom([]rune("\\`*_{}[]<>()#+-.!|~&:=@\"'/ 0123456789abzÄ\n\t")), 1, 12, -1),
			rapid.SampledFrom([]string{"<script>", "http://a.example", "www.a.example", "a@b.example", "1. ", "- ", "&amp;",
				"[x](y)", "![x](y)", "~~x~~", "|---|", "```", "[ ] x", "<!-- x -->", "\\|"}),
		), 1, 6).Draw(t, "words")
		s := strings.Join(words, "")
		want := fold(printable(s))
		if want == "" {
			t.Skip("empty")
		}
		d := Document{Sections: []Section{{Key: "page-1", Title: "T"}, {Key: "x", Title: "X", Blocks: []Block{
			Paragraph{Text: s}, List{Items: []string{s}},
			Table{Caption: "C", Columns: []Column{{Text: "A"}, {Text: "B"}}, Rows: [][]Cell{{text(s), text("end")}}},
		}}}}
		var b bytes.Buffer
		if err := Markdown(&b, d); err != nil {
			t.Fatal(err)
		}
		page := rendered(t, b.String())
		if strings.Contains(page, "<a ") || strings.Contains(page, "<script") || strings.Contains(page, "<img") ||
			strings.Contains(page, "raw HTML omitted") {
			t.Fatalf("%q opened markup:\n%s", s, page)
		}
		if n := strings.Count(page, "<td"); n != 2 {
			t.Fatalf("%q broke the table into %d cells", s, n)
		}
		for _, e := range []string{"<p>", "<li>", "<td>"} {
			if !strings.Contains(page, e+html.EscapeString(want)) && !strings.Contains(html.UnescapeString(page), e+want) {
				t.Fatalf("%q is not in a %s of\n%s", want, e, page)
			}
		}
	})
}

// The Markdown of a document reads as the document: every text of the model is
// in the rendered page, hostile title and notes included.
func TestMarkdownRoundTrip(t *testing.T) {
	d := Build(fixture(), fixtureOptions)
	var b bytes.Buffer
	if err := Markdown(&b, d); err != nil {
		t.Fatal(err)
	}
	page := rendered(t, b.String())
	shown := strings.ReplaceAll(textOf(page), " ", "")
	for _, s := range textsOf(d.Sections) {
		if !strings.Contains(shown, strings.ReplaceAll(fold(printable(s)), " ", "")) {
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
func textsOf(sections []Section) []string {
	var out []string
	for _, s := range sections {
		out = append(out, s.Title)
		for _, b := range s.Blocks {
			switch b := b.(type) {
			case Paragraph:
				out = append(out, b.Text)
			case List:
				out = append(out, b.Items...)
			case Table:
				out = append(out, b.Caption)
				for _, r := range b.Rows {
					for _, c := range r {
						out = append(out, c.Text)
					}
				}
			case Facts:
				for _, p := range b.Pairs {
					out = append(out, p.Name, p.Value)
				}
			case Blanks:
				out = append(out, b.Labels...)
			case Label:
				out = append(out, b.Lines...)
			}
		}
		out = append(out, textsOf(s.Subs)...)
	}
	return out
}
