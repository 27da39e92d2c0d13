package doubt_test

import (
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards/doubt"
)

// Each number counts once, under what it is: of these, two are recalled, one is assumed,
// two are estimated, and a titanium weight, read twice, is none of them.
func TestCount(t *testing.T) {
	st, w := chemicals.Base(), working.NewSheet()
	var used []chemicals.Datum
	for _, id := range []datum.ID{"weight.Ti", "electrons.In", "impurity.unstated", "etch_heat.Ti3AlC2"} {
		d, ok := st.Row(id)
		if !ok {
			t.Fatal(id)
		}
		used = append(used, d)
	}
	x := working.Given("x", "wt%", 20, "here")
	for _, id := range []string{"density.koh", "density.koh", "density.hf", "vapour_salting.hf"} {
		w.Table("y", "", id, 1, x)
	}
	want := doubt.Counts{Memory: 2, Assumed: 1, Estimated: 2}
	if got := doubt.Count(used, doubt.Tables(st, w)); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
}
