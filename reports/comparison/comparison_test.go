package comparison_test

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/reports/comparison"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/scaling"
)

// three routes: one has 2.5 L, of one nobody knows, one has none.
func three() scaling.Comparison {
	r := fixture.Review()
	id := figure.ID{Quantity: "gas.hydrogen.total"}
	unknown := math.NaN()
	return scaling.Comparison{Reviews: []hazards.Review{r, r, r}, Product: []float64{1, unknown, 0},
		Rows: []scaling.Row{{Quantity: id.Quantity, Told: scaling.Unknown, Least: []int{2, 0},
			Cells: []scaling.RowCell{{There: true, Value: 2.5, Low: 2, High: 3, Figure: id, P05: unknown, P95: unknown},
				{There: true, Value: unknown, Low: unknown, High: unknown, Figure: id, P05: unknown, P95: unknown}, {}}}}}
}

// What is not known and what a route has none of are empty, and never zero.
func TestRowsOfAComparison(t *testing.T) {
	var b strings.Builder
	if err := comparison.CSV(&b, three()); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(b.String())).ReadAll()
	if err != nil || len(rows) != 4 {
		t.Fatal(rows, err)
	}
	for i, want := range [][3]string{{"2.5", "2", "3"}, {}, {}} {
		x := rows[i+1]
		if x[0] != string(rune('A'+i)) || [3]string(x[6:9]) != want || x[10] != "not known" {
			t.Errorf("row %d: %q, want %q", i, x, want)
		}
	}
}

// For programs a value that is not known is null, and so is one that is not there.
func TestAComparisonForPrograms(t *testing.T) {
	var b strings.Builder
	if err := comparison.JSON(&b, three(), draft.Options{}); err != nil {
		t.Fatal(err)
	}
	var got struct {
		Rows []struct {
			Told  string
			Cells []struct{ Value *float64 }
		}
	}
	if err := json.Unmarshal([]byte(b.String()), &got); err != nil || len(got.Rows) != 1 || len(got.Rows[0].Cells) != 3 {
		t.Fatal(err, b.String())
	}
	cells := got.Rows[0].Cells
	if cells[0].Value == nil || !(*cells[0].Value == 2.5) || cells[1].Value != nil || cells[2].Value != nil ||
		got.Rows[0].Told != "not known" {
		t.Errorf("%s", b.String())
	}
}
