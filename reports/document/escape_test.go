package document

import (
	"bytes"
	"html"
	"strings"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"pgregory.net/rapid"

	"etchbound/reports/plain"
)

// shownAs is Markdown as a common reader shows it, with tables, strikethrough,
// task lists and automatic links.
func shownAs(t interface{ Fatal(...any) }, md string) string {
	var b bytes.Buffer
	if err := goldmark.New(goldmark.WithExtensions(extension.GFM)).Convert([]byte(md), &b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

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
		want := plain.Fold(plain.Printable(s))
		if want == "" {
			t.Skip("empty")
		}
		d := Document{Sections: []Section{{Key: "page-1", Title: "T"}, {Key: "x", Title: "X", Blocks: []Block{
			Paragraph{Text: s}, List{Items: []string{s}},
			Table{Caption: "C", Columns: []Column{{Text: "A"}, {Text: "B"}}, Rows: [][]Cell{{Text(s), Text("end")}}},
		}}}}
		var b bytes.Buffer
		if err := Markdown(&b, d); err != nil {
			t.Fatal(err)
		}
		page := shownAs(t, b.String())
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
