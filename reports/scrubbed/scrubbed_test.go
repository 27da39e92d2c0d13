package scrubbed_test

import (
	"math"
	"strings"
	"testing"

	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/scrubbed"
	"etchbound/scaling/ends"
	"etchbound/scaling/scrubbing"
)

// A place that is shut or stands open says so, hydrogen goes past whatever takes acid up, and
// what is not known is written so and never as nothing.
func TestWhatIsSaidOfAPlace(t *testing.T) {
	nan := ends.Two{Best: math.NaN(), Most: math.NaN()}
	for closure, says := range map[route.Closure]string{route.Closed: "is shut", route.Open: "stands open"} {
		x := scrubbing.Train{Place: &route.Place{Key: "pot", Closure: closure}, Hydrogen: nan}
		x.Scrubber.Taken, x.Line.Velocity = nan, nan
		var b strings.Builder
		if err := document.Markdown(&b, document.Document{Sections: scrubbed.Sections([]scrubbing.Train{x},
			scrubbing.Outdoors{Air: math.NaN()})}); err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{says, "Hydrogen goes past", "not known", "counts as if it did"} {
			if !strings.Contains(b.String(), want) {
				t.Errorf("%d: %q is not said", closure, want)
			}
		}
		if strings.Contains(b.String(), "NaN") || strings.Contains(b.String(), "%!") {
			t.Errorf("%d: %s", closure, b.String())
		}
	}
}
