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
	var c document.Cell
	c.Add("a", "")
	c.Add("b; c", "a") // what a writer writes may hold the sign that parts
	c.Add("b")
	if c.Text != "a; b; c; b" || len(c.Items()) != 3 {
		t.Errorf("%q of %q", c.Text, c.Items())
	}
}
