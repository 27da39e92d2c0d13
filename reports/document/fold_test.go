package document

import (
	"strings"
	"testing"
)

// What is folded is on the page without a script, and in Markdown unless it is away.
func TestFold(t *testing.T) {
	folded := Fold{Summary: "two lines", Blocks: []Block{Paragraph{Text: "the lines"}}}
	away := folded
	away.Away = true
	tests := []struct {
		name           string
		fold           Fold
		page, markdown bool // whether the lines are there
	}{
		{"folded", folded, true, true},
		{"away", away, true, false},
	}
	for _, x := range tests {
		d := Document{Title: "t", Lang: "en", Sections: []Section{{Key: "one"}, {Key: "two", Title: "two",
			Blocks: []Block{x.fold}}}}
		var page, text strings.Builder
		if err := HTML(&page, d); err != nil {
			t.Fatal(err)
		}
		if err := Markdown(&text, d); err != nil {
			t.Fatal(err)
		}
		if has := strings.Contains(page.String(), "<details><summary>two lines</summary>\n<p>the lines</p>"); has != x.page {
			t.Errorf("%s: on the page %v, want %v", x.name, has, x.page)
		}
		if has := strings.Contains(text.String(), "the lines"); has != x.markdown {
			t.Errorf("%s: in Markdown %v, want %v", x.name, has, x.markdown)
		}
		if !strings.Contains(text.String(), "two lines") {
			t.Errorf("%s: Markdown does not say what is folded", x.name)
		}
	}
}
