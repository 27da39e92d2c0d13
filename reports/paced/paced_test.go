package paced_test

import (
	"testing"

	"etchbound/chemicals/working"
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
