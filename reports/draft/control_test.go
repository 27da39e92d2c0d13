package draft_test

import (
	"strings"
	"testing"

	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/reports/draft"
)

// What was asked for and what a route was reviewed with stand on the paper; the same files say
// nothing twice.
func TestControlSaysWhatWasAskedAndReviewedWith(t *testing.T) {
	site := func(digest string) route.Case {
		return route.Case{Site: &route.Site{Digest: strings.Repeat(digest, 32)}}
	}
	was, to := site("ab"), site("cd")
	if got := draft.ReviewedWith(&was, &to); !strings.Contains(got, "abababab") {
		t.Errorf("another site: %q", got)
	}
	held := site("ab")
	held.Limits = &limit.Set{Digest: strings.Repeat("12", 32)}
	if got := draft.ReviewedWith(&held, &was); !strings.Contains(got, "limits 12121212") {
		t.Errorf("other limits: %q", got)
	}
	if got := draft.ReviewedWith(&was, &was); got != "" {
		t.Errorf("the same files: %q", got)
	}
	o := draft.Options{Asked: "scale, to 20 g"}
	if got := draft.ControlOf(o, was.Site, nil, "x"); !strings.HasSuffix(got, ", scale, to 20 g") {
		t.Errorf("%q does not say what was asked", got)
	}
}
