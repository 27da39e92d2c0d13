package cards

import (
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/reports/draft"
)

// The label of a container of product says when it was made and by when it is opened: after
// the earliest time to 10 kPa, and at once where powder that the etch left makes it.
func TestLabelOfProductSaysOpenBy(t *testing.T) {
	for earliest, want := range map[float64]string{3: "(3 d after", 0: "do not shut it"} {
		of := figure.Figure{ID: figure.ID{Quantity: "store.time_to_10_kpa", Place: figure.At("product"),
			Case: figure.By("methane")}, Value: working.Exact("t", "d", 9, "of the test")}
		of.SetRange(earliest, 20)
		b := &builder{Draft: &draft.Draft{Set: figure.NewSet([]figure.Figure{of})}}
		lines := strings.Join(b.stored("product"), "\n")
		if !strings.Contains(lines, want) || !strings.Contains(lines, "Made on") {
			t.Errorf("%g d: %q, want %q", earliest, lines, want)
		}
	}
	if b := (&builder{Draft: &draft.Draft{Set: figure.NewSet(nil)}}); b.stored("etch") != nil {
		t.Error("a container without product says when to open it")
	}
}
