package review

import (
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/reports/chart"
	"etchbound/reports/draft"
)

// A peak whose dangerous end no curve comes to, since what bounds it is no run, stands in its
// picture as a line, rounded toward danger; one that a curve comes to does not.
func TestADangerousEndThatNoCurveComesToIsALine(t *testing.T) {
	b := &builder{Draft: draft.New(&hazards.Review{}, draft.Options{})}
	f := figure.Figure{ID: figure.ID{Quantity: "heat.temperature_peak", Place: figure.Step(3)},
		Value: working.Exact("T", "degC", 96, "a test")}
	f.SetRange(92, 173.391)
	for top, want := range map[float64]int{96: 1, 160: 1, 172: 0, 180: 0} {
		got := b.undrawn(&f, []chart.Curve{{Y: []float64{20, top}}})
		if len(got) != want || want > 0 && (got[0].Y != 174 || !strings.HasPrefix(got[0].Label, "174 °C, ")) {
			t.Errorf("beside a curve up to %g: %+v", top, got)
		}
	}
	if b.undrawn(nil, nil) != nil {
		t.Error("a track without a peak has a line")
	}
}
