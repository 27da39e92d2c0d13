package draft

import (
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
)

// What an assumption moves is named in words, even where the review has no such figure,
// and only where the move can be read in its digits; the others are counted.
func TestMovesAreReadable(t *testing.T) {
	b := New(&hazards.Review{}, Options{})
	at := figure.ID{Quantity: "fluoride.free_hf", Place: figure.Step(5)}
	got := b.MovesText([]hazards.Move{{Figure: at, From: 1.00001, To: 1.00002}, {Figure: at, From: 1, To: 2}}, 6)
	for _, bad := range []string{"fluoride.free_hf", "from 1 g as HF to 1 g as HF"} {
		if strings.Contains(got, bad) {
			t.Errorf("%q says %q", got, bad)
		}
	}
	if !strings.Contains(got, "Free HF remaining, step 5 from ") || !strings.Contains(got, "1 more") {
		t.Errorf("the move is not named, or the other not counted: %q", got)
	}
}
