package reports

import (
	"bytes"
	"strings"
	"testing"

	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/schemas/long"
)

// What a place reaches as planned and what it reaches if the batch comes to it unfinished
// stand in columns of their own: the tubes of the demonstration are harmless as planned.
func TestStorageTellsPlannedFromUnfinished(t *testing.T) {
	long.NotShort(t)
	r, there := fixture.Bundled(t)["demo-lif-hcl-2g.yaml"]
	if !there {
		return // the short form takes fewer routes
	}
	var b bytes.Buffer
	if err := document.Markdown(&b, Build(r, draft.Options{})); err != nil {
		t.Fatal(err)
	}
	_, table, _ := strings.Cut(b.String(), "what they would reach if closed")
	var rows [][]string
	for _, line := range strings.Split(table, "\n") {
		if cells := strings.Split(line, "|"); len(cells) > 2 {
			rows = append(rows, cells)
		} else if len(rows) > 0 {
			break
		}
	}
	if len(rows) < 3 || !strings.Contains(rows[0][len(rows[0])-3], "as planned") ||
		!strings.Contains(rows[0][len(rows[0])-2], "if moved unfinished") {
		t.Fatalf("no column as planned and none if moved unfinished: %q", rows)
	}
	for _, cells := range rows {
		planned, moved := cells[len(cells)-3], cells[len(cells)-2]
		if strings.TrimSpace(cells[1]) == "tubes" &&
			!(strings.Contains(planned, "150 kPa") && strings.Contains(moved, "2600 kPa")) {
			t.Errorf("tubes: %q as planned, %q if moved unfinished", planned, moved)
		}
	}
}
