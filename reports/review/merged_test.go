package review

import (
	"testing"

	"etchbound/reports/document"
)

// Rows that differ in one column alone are one row with all that column says, once each.
func TestRowsThatDifferInOneColumnAreOne(t *testing.T) {
	got := sameBut([][]document.Cell{document.Row("lid", "not stated", "acid"), document.Row("lid", "not stated", "base"),
		document.Row("lid", "not stated", "acid"), document.Row("drum", "not stated", "acid")}, 2)
	if len(got) != 2 || got[0][2].Text != "acid; base" || got[1][2].Text != "acid" {
		t.Errorf("%v", got)
	}
	if joined("", "a") != "a" || joined("a", "") != "a" || joined("a; b", "b") != "a; b" {
		t.Error("an empty text, or one that is there already, is joined")
	}
}
