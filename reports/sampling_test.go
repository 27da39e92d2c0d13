package reports

import (
	"math"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/scaling"
)

// A finding that nobody knows has no chance, rather than a chance of zero.
func TestAnUnknownFindingHasNoChance(t *testing.T) {
	r := fixture.Review()
	f := &r.Findings[0]
	for _, row := range []struct {
		chance *scaling.Chance
		want   float64
	}{
		{nil, math.NaN()},
		{&scaling.Chance{}, 0},
		{&scaling.Chance{Exceeds: 0.3, Unknown: 0.05}, 0.3},
		{&scaling.Chance{Exceeds: 0.3, Unknown: 0.06}, math.NaN()},
		{&scaling.Chance{Unknown: 1}, math.NaN()},
	} {
		s := &scaling.Sample{N: 100, Chance: map[figure.FindingID]scaling.Chance{}}
		if row.chance != nil {
			s.Chance[f.ID()] = *row.chance
		}
		got := newBuilder(&r, draft.Options{Sample: s}).ChanceOf(f)
		if math.IsNaN(got) != math.IsNaN(row.want) || got == got && got != row.want {
			t.Errorf("%+v: %g, want %g", row.chance, got, row.want)
		}
	}
	if got := newBuilder(&r, draft.Options{}).ChanceOf(f); !math.IsNaN(got) {
		t.Errorf("without draws: %g", got)
	}
}
