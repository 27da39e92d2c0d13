package scaling

import (
	"slices"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
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

// A figure that exceeds a limit at every batch withholds nothing by another limit of its own
// that is not known; one that exceeds only above some batch does.
func TestWhatIsExceededAnywayWithholdsNothing(t *testing.T) {
	of := func(quantity, id string, to figure.Verdict, grams float64, already bool) Crossing {
		return Crossing{Figure: figure.ID{Quantity: quantity}, Limit: limit.Limit{Key: limit.Key{ID: id}}, Turns: to,
			Grams:   grams,
			Already: already}
	}
	g := Growth{Crossings: []Crossing{of("peak", "boils", figure.Exceeds, 1, true),
		of("peak", "hood", figure.UnknownVerdict, 1, true),
		of("flow", "hood", figure.UnknownVerdict, 1, true), of("flow", "vent", figure.Exceeds, 5, false)}}
	g.withhold()
	if len(g.Withheld) != 1 || g.Withheld[0].Figure.Quantity != "flow" || len(g.NotKnownBelow(5)) != 1 ||
		len(g.NotKnownBelow(0.5)) != 0 {
		t.Errorf("withheld by %v", g.Withheld)
	}
}
