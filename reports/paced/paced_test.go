package paced_test

import (
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/paced"
	"etchbound/scaling/pacing"
)

// What is missing by two laws is asked for once.
func TestWhatIsMissingIsAskedOnce(t *testing.T) {
	r := fixture.Review()
	odd, boils := working.Lacks("run", ""), working.Lacks("boiling_point", "")
	s := paced.Sections(draft.New(&r, draft.Options{}), []pacing.Addition{{Step: 2,
		Missing: []working.Missing{odd, boils, odd, boils}}})
	if l, ok := s[0].Blocks[1].(document.List); !ok || len(l.Items) != 2 {
		t.Errorf("asked for: %v", s[0].Blocks)
	}
}

// An open liquor gets no hotter than it boils: by hand, 20 wt% HF near 104 degC.
func TestAnOpenLiquorBoils(t *testing.T) {
	r := fixture.Review()
	hot := pacing.Hot{Best: 480, Most: 700}
	s := paced.Sections(draft.New(&r, draft.Options{}), []pacing.Addition{{Step: 3, Limit: 60, Of: pacing.Stated,
		Whole: []course.Dose{{Share: 0, Hottest: 20}, {Share: 1, Hottest: 480}},
		Ways:  []pacing.Way{{Kind: pacing.Written, Takes: 600, In: 1, Stays: hot, Could: hot}}}})
	row := s[0].Blocks[1].(document.Table).Rows[0]
	for _, i := range []int{2, 3} {
		if got := row[i].Text; !strings.HasPrefix(got, "boiling (10") || strings.Contains(got, "480") {
			t.Errorf("column %d reads %q", i, got)
		}
	}
}

// Below a stated temperature is no more than that where nobody knows at what a liquor boils.
func TestBelowAStatedTemperatureItMayBoil(t *testing.T) {
	r := fixture.Review()
	cool := pacing.Hot{Best: 40, Most: 50}
	for open, want := range map[bool]string{false: "40 °C, up to 50 °C: below",
		true: "40 °C, up to 50 °C: below it, boiling not known"} {
		s := paced.Sections(draft.New(&r, draft.Options{}), []pacing.Addition{{Step: 3,
			Limit: 60, Of: pacing.Stated, Open: open,
			Ways: []pacing.Way{{Kind: pacing.Written, Takes: 600, In: 1, Stays: cool, Could: cool}}}})
		table := 1
		if open {
			table = 2
			if p, ok := s[0].Blocks[0].(document.Paragraph); !ok || p.Tone != document.Warning {
				t.Errorf("no warning: %v", s[0].Blocks[0])
			}
		}
		if got := s[0].Blocks[table].(document.Table).Rows[0][2].Text; got != want {
			t.Errorf("%v: %q, want %q", open, got, want)
		}
	}
}

// A temperature that holds in a minute is no leave to be that quick: the time that the
// review asks for stands first, and what it cannot tell is said.
func TestTheTimeOfTheReviewComesFirst(t *testing.T) {
	r := fixture.Review()
	s := paced.Sections(draft.New(&r, draft.Options{}), []pacing.Addition{{Step: 3, Limit: 90, Of: pacing.Boiling,
		Ways: []pacing.Way{{Kind: pacing.Constant, Takes: 60, In: 1, Stays: pacing.Hot{Best: 40, Most: 50}}}}})
	text := s[0].Blocks[0].(document.Paragraph).Text
	if !strings.HasPrefix(text, "The review asks for") && !strings.HasPrefix(text, "Not known, and it may be longer") {
		t.Errorf("it reads %q", text)
	}
}
