package scaling

import (
	"slices"
	"testing"

	"etchbound/hazards/figure"
)

// What turns unknown below the first limit withholds it, wherever between two rungs
// it does; what turns so above it, or back to known, does not.
func TestWhatWithholdsTheFirstLimit(t *testing.T) {
	turn := func(id string, to figure.Verdict, grams float64, back bool) Crossing {
		return Crossing{Figure: figure.ID{Quantity: id}, Turns: to, Grams: grams, Back: back}
	}
	g := Growth{Crossings: []Crossing{turn("back", figure.UnknownVerdict, 4, true),
		turn("below", figure.UnknownVerdict, 5, false),
		turn("first", figure.Exceeds, 6, false), turn("above", figure.UnknownVerdict, 7, false)}}
	g.withhold()
	if want := []figure.FindingID{{Figure: figure.ID{Quantity: "below"}}}; !slices.Equal(g.Withheld, want) {
		t.Errorf("withheld by %v, want %v", g.Withheld, want)
	}
}
