package firstpage_test

import (
	"testing"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/firstpage"
	"etchbound/reports/selection"
	"etchbound/reports/words"
)

// lines of page 1, each in another state.
var lines = []selection.Line{
	{Asks: "a", State: selection.Judged, Verdict: figure.Exceeds, Against: "a limit", Surely: "at one end",
		Section: "heat"},
	{Asks: "b", State: selection.NotYet, Verdict: figure.Within, Section: "gas"},
	{Asks: "c", State: selection.Unjudged, Verdict: figure.Within, Section: "air"},
	{Asks: "d", State: selection.Told, Verdict: figure.Within, Section: "nowhere"},
}

// What is not known yet is unknown and never the verdict that stands behind it, and
// what has no limit has no verdict.
func TestALineSaysNoMoreThanIsKnown(t *testing.T) {
	s := firstpage.Lay(selection.Page{Questions: lines}, "t", document.Paragraph{}, nil, true)
	rows := s.Subs[1].Blocks[0].(document.Table).Rows
	for i, want := range []struct {
		against, verdict, section string
		span                      int // an answer that nothing is held against has their room
	}{
		{"a limit; at one end", words.Of("verdict.exceeds"), "5", 0},
		{words.Of("value.dash"), words.Of("verdict.unknown"), "6", 0},
		{words.Of("value.dash"), words.Of("verdict.none"), "7", 0},
		{words.Of("value.dash"), words.Of("value.dash"), words.Of("value.dash"), 3},
	} {
		r := rows[i]
		if r[1].Span != want.span || r[2].Text != want.against || r[3].Text != want.verdict || r[4].Text != want.section {
			t.Errorf("line %d: %q, %q, %q; want %+v", i, r[2].Text, r[3].Text, r[4].Text, want)
		}
	}
}

// A page with nothing on it says so, and a brief one says what it leaves out.
func TestAnEmptyPageIsNotSilent(t *testing.T) {
	s := firstpage.Lay(selection.Page{Brief: true}, "t", document.Paragraph{}, nil, false)
	for i, none := range map[int]string{1: "questions.none", 2: "worst.none", 3: "holds.none", 4: "upset.brief"} {
		blocks := s.Subs[i].Blocks
		if last, ok := blocks[len(blocks)-1].(document.Paragraph); !ok || last.Text != words.Of(none) {
			t.Errorf("part %d ends with %v, want %s", i, blocks[len(blocks)-1], none)
		}
	}
}

// What is missing is told with where it is missing and what settles it.
func TestAGapIsToldWhole(t *testing.T) {
	p := selection.Page{Gaps: []selection.Gap{{What: "the wall", Where: "pot", Settles: "state it"}, {What: "alone"}}}
	items := firstpage.Lay(p, "t", document.Paragraph{}, nil, false).Subs[4].Blocks[0].(document.List).Items
	want := words.FirstPage("gap.settled", words.FirstPage("gap.at", "the wall", "pot"), "state it")
	if items[0] != want || items[1] != "alone" {
		t.Errorf("%q, want %q and one alone", items, want)
	}
}
