package hazards_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/schemas/long"
)

// levels are the rooms of the reports, the lowest first: a room imports those below it
// and none beside it.
var levels = [][]string{
	{"plain", "digits", "paper"}, {"chart"}, {"words"}, {"number"}, {"document"}, {"draft"}, {"selection"},
	{"aid", "record"}, pages, {"."},
}

// pages are the rooms of the reports that are one page, or the pages of one command,
// each.
var pages = []string{"firstpage", "review", "cards", "book", "growth", "comparison", "change", "holdings", "failures",
	"proposed", "paced", "measures", "scrubbed", "campaigns"}

// levelOf is the level of a room of the reports; -1 for what is none.
func levelOf(pkg string) int {
	room, ok := strings.CutPrefix(pkg, "reports")
	room = strings.TrimPrefix(room, "/")
	if room == "" {
		room = "."
	}
	if !ok {
		return -1
	}
	return slices.IndexFunc(levels, func(l []string) bool { return slices.Contains(l, room) })
}

// In the reports imports run down: pages, what they share, the document, words. No page
// imports another, and what only tests use nothing else does.
func TestRoomsOfTheReportsRunOneWay(t *testing.T) {
	long.NotShort(t)
	const forTests = "reports/fixture"
	seen := 0
	for _, s := range sources(t) {
		if floor(s.pkg) != floor("reports") || s.pkg == forTests {
			continue
		}
		from := levelOf(s.pkg)
		if from < 0 {
			t.Errorf("%s is in no room of the reports that has a level", s.name)
			continue
		}
		seen++
		for _, i := range s.imports {
			to, ours := strings.CutPrefix(i, "etchbound/")
			if ours && floor(to) == floor("reports") && levelOf(to) >= from {
				t.Errorf("%s imports %s, which is not below it", s.name, to)
			}
		}
	}
	if seen < 40 {
		t.Fatalf("only %d files", seen)
	}
}
