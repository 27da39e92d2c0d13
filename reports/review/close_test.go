package review

import (
	"testing"

	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
)

// A.2 of the committee's list leaves 27 questions to people; each is a blank,
// none is filled.
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
	if n != 27 {
		t.Errorf("%d blanks, want 27", n)
	}
}
