package campaigns

import (
	"math"
	"testing"

	"etchbound/scaling/ends"
)

// What is not known of a campaign is said, beside the best estimate as well, and the
// dangerous end is rounded up (definition).
func TestBothEndsAreTold(t *testing.T) {
	for _, row := range []struct {
		x    ends.Two
		unit string
		want string
	}{
		{ends.Two{Best: 2, Most: 2}, "g", "2 g"},
		{ends.Two{Best: 2, Most: 2.3411}, "g", "2 g, up to 2.35 g"},
		{ends.Two{Best: 2, Most: math.NaN()}, "g", "2 g, up to not known"},
		{ends.Two{Best: math.NaN(), Most: math.NaN()}, "g", "not known"},
	} {
		if got := both(row.x, row.unit); got != row.want {
			t.Errorf("%v: %q, want %q", row.x, got, row.want)
		}
	}
	if got := atMost(math.NaN()); got != "bounds nothing: no time is known" {
		t.Errorf("%q", got)
	}
}
