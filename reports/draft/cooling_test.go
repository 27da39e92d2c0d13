package draft_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/words"
)

// What the table of lost cooling says of steps whose figures are taken away is not known,
// and no step leaves it as long as it has a highest temperature.
func TestCoolingLostSaysWhatIsNotKnown(t *testing.T) {
	r := fixture.Review()
	rows := func() ([][]document.Cell, string) {
		blocks := draft.New(&r, draft.Options{}).CoolingLost()
		if len(blocks) != 3 {
			t.Fatalf("%d blocks", len(blocks))
		}
		return blocks[0].(document.Table).Rows, strings.Join(blocks[2].(document.List).Items, "\n")
	}
	before, _ := rows()
	given := r.Figures
	none := figure.Figure{ID: figure.ID{Quantity: "heat.quench_water", Place: figure.Step(3)},
		Value: working.Exact("m", "kg", 0, "of the test")}
	none.SetRange(0, 0) // as where the liquor stays below what it would be brought to
	r.Figures = append(slices.Clone(given), none)
	if _, stop := rows(); !strings.Contains(stop, words.Of("temperatures.stopped_cold")) ||
		strings.Contains(stop, " 0 g") {
		t.Errorf("what needs no water: %s", stop)
	}
	r.Figures = given
	r.Figures = slices.DeleteFunc(slices.Clone(r.Figures), func(f figure.Figure) bool {
		return f.Quantity == "heat.quench_water" || f.Quantity == "heat.time_to_boil" ||
			f.Quantity == "heat.time_to_maximum_rate" || f.Quantity == "heat.criticality_class"
	})
	after, stop := rows()
	if len(after) > len(before) || len(after) == 0 {
		t.Fatalf("%d rows, %d before", len(after), len(before))
	}
	if !strings.Contains(stop, words.Of("temperatures.stopped_unknown")) {
		t.Errorf("what would stop it: %s", stop)
	}
	for _, row := range after {
		for _, i := range []int{5, 6} {
			if s := row[i].Text; s != words.Of("value.unknown") && s != words.Of("value.not_assessed") {
				t.Errorf("a time that nobody worked out is %q", s)
			}
		}
		if s := row[7].Text; !strings.HasPrefix(s, "none") {
			t.Errorf("a class that nobody worked out is %q", s)
		}
	}
}
