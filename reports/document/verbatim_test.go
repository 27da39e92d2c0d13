package document

import (
	"strings"
	"testing"
)

// The blanks and ends of lines of a file stay, and nothing in it ends what stands
// around it.
func TestAFileStaysAFile(t *testing.T) {
	d := Document{Title: "t", Lang: "en", Sections: []Section{{Key: "one", Blocks: []Block{
		Verbatim{Lines: []string{"places:", "  pot: {closure: open}", "```", "</pre><b>\x1b[31m"}}}}}}
	var m, h strings.Builder
	if err := Markdown(&m, d); err != nil {
		t.Fatal(err)
	}
	if err := HTML(&h, d); err != nil {
		t.Fatal(err)
	}
	want := "````\nplaces:\n  pot: {closure: open}\n```\n</pre><b>[31m\n````\n"
	if !strings.Contains(m.String(), want) {
		t.Errorf("Markdown: %s", m.String())
	}
	want = "places:\n  pot: {closure: open}\n```\n&lt;/pre&gt;&lt;b&gt;[31m\n</pre>"
	if !strings.Contains(h.String(), want) {
		t.Errorf("HTML: %s", h.String())
	}
}
