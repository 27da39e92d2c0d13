package document

import (
	"html/template"
	"strings"
	"testing"
)

// The title of a window has at most the 70 characters that validators accept, markup
// counted, and the page begins as they ask. An empty cell heads no row, and the head of
// another does.
func TestPageIsAsValidatorsAsk(t *testing.T) {
	for _, c := range []struct{ title, want string }{
		{"Two grams", "Two grams"},
		{"Two grams of Ti3C2 by lithium fluoride and hydrochloric acid (invented numbers), again",
			"Two grams of Ti3C2 by lithium fluoride and hydrochloric acid…"},
		{strings.Repeat("x", 200), strings.Repeat("x", 69) + "…"},
		{"'" + strings.Repeat(" it's", 20), "' it's it's it's it's it's it's it's…"},
		{strings.Repeat("ä'", 60), strings.Repeat("ä'", 11) + "ä…"},
		{"a\x1b[31m\n b", "a[31m b"},
		{"", ""},
	} {
		got := tab(c.title)
		if n := len([]rune(template.HTMLEscapeString(got))); n > longestTab {
			t.Errorf("%q has %d characters on the page", got, n)
		}
		if got != c.want {
			t.Errorf("%q becomes %q, want %q", c.title, got, c.want)
		}
	}
	d := Document{Title: "t", Lang: "en", Sections: []Section{{Key: "one", Blocks: []Block{
		Table{Columns: []Column{{Text: "a", RowHead: true}, {Text: "b"}},
			Rows: [][]Cell{{{Blank: true}, {Blank: true}}, {Text("x"), {Blank: true}},
				{{Text: "y", Span: 2}, Text("-")}, {Text(""), Text("z")}}}}}}}
	var b strings.Builder
	if err := HTML(&b, d); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"<!DOCTYPE html>\n", `<tr><td class="fill"></td><td class="fill"></td></tr>`,
		`<tr><th scope="row">x</th><td class="fill"></td></tr>`, `<tr><th scope="row" colspan="2">y</th></tr>`,
		`<tr><td></td><td>z</td></tr>`} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("the page lacks %s", want)
		}
	}
}
