package change_test

import (
	"encoding/csv"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/reports/change"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// A rule that fires for want of something names what is missing and no place.
func TestARuleSaysWhatItLacks(t *testing.T) {
	lacks := working.Lacks("vapour_warm", "")
	text, _ := words.Ask(lacks)
	for _, c := range []struct {
		met  scaling.Met
		want string
	}{{scaling.Met{Where: "step 2"}, "step 2"}, {scaling.Met{Where: "step 2", Lacks: lacks}, text}} {
		if got := change.MetAt(&c.met); got != c.want || got == "" {
			t.Errorf("%+v: %q, want %q", c.met, got, c.want)
		}
	}
}

// In the rows a figure that is not known is empty and never a number, a finding that
// was not there has no verdict, and no cell begins a formula of a spreadsheet.
func TestRowsOfAChange(t *testing.T) {
	id := figure.ID{Quantity: "heat.etch.total"}
	was := figure.Figure{ID: id, Value: working.Absent("Q", "kJ", working.Lacks("vapour_warm", ""))}
	is := figure.Figure{ID: id, Value: working.Exact("Q", "kJ", 2.5, "tried")}
	c := scaling.Change{Inputs: []scaling.InputDiff{{Where: "title", What: "title", Was: "a", Is: "=1+1"}},
		Moved: []scaling.Moved{{ID: id, Was: was, Is: is}},
		Verdicts: []scaling.VerdictChange{{ID: figure.FindingID{Figure: id},
			Is: figure.Finding{Figure: id, Verdict: figure.Exceeds}}}}
	var b strings.Builder
	if err := change.CSV(&b, c); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(b.String())).ReadAll()
	if err != nil || len(rows) != 4 {
		t.Fatal(rows, err)
	}
	if x := rows[1]; x[0] != "input" || strings.HasPrefix(x[4], "=") || !strings.Contains(x[4], "1+1") {
		t.Errorf("input %q", x)
	}
	if x := rows[2]; x[3] != "" || x[4] != "2.5" || x[5] != "kJ" {
		t.Errorf("figure %q", x)
	}
	if x := rows[3]; x[3] != "" || x[4] != figure.Exceeds.String() {
		t.Errorf("finding %q", x)
	}
}
