package review

import (
	"testing"

	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
)

// Committees leave 27 questions to people, of which four are signed for in the sign-off (how
// long it is valid, supervisor, committee, users), and seven that this review answers in part have a
// local side: strength allowed, how often, used gloves, hours, neutralising, drain, flakes. Each
// is a blank, none is filled.
func TestLocalBlanks(t *testing.T) {
	r := fixture.Review()
	b := from(draft.New(&r, draft.Options{}))
	n := 0
	for _, s := range b.local().Subs {
		for _, block := range s.Blocks {
			if l, ok := block.(document.Blanks); ok {
				n += len(l.Labels)
			}
		}
	}
	if n != 27-4+7 {
		t.Errorf("%d blanks, want 30", n)
	}
}
