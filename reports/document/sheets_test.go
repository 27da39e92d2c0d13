package document

import (
	"bytes"
	"strings"
	"testing"
)

// The printed contents have the sheet of each section, and nothing else of the page moves.
func TestContentsHaveTheirSheets(t *testing.T) {
	d := Document{Title: "t", Lang: "en", Sections: []Section{{Key: "page-1", Title: "t"},
		{Key: "heat", Number: "1", Title: "Heat"}, {Key: "gas", Number: "2", Title: "Gas"}}}
	var page bytes.Buffer
	if err := HTML(&page, d); err != nil {
		t.Fatal(err)
	}
	got := string(Numbered(page.Bytes(), map[string]int{"heat": 7}))
	if !strings.Contains(got, `data-of="heat">7</i>`) || !strings.Contains(got, `data-of="gas"></i>`) {
		t.Error("a sheet is missing, or made up")
	}
	if strings.Replace(got, `data-of="heat">7<`, `data-of="heat"><`, 1) != page.String() {
		t.Error("more than the slot was changed")
	}
	if again := string(Numbered([]byte(got), map[string]int{"heat": 8})); !strings.Contains(again, `"heat">8</i>`) {
		t.Error("a number is not written anew")
	}
}
