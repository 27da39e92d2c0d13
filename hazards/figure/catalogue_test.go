package figure_test

import (
	"slices"
	"testing"

	"etchbound/hazards/figure"
)

// What a row names is catalogued, what has a limit beside another stands beside one,
// and headlines are counted from 1 without a gap.
func TestColumnsOfTheCatalogueAgree(t *testing.T) {
	known := figure.Units{}.Names()
	var places []int
	for _, q := range figure.Catalogue() {
		for _, name := range append(slices.Clone(q.StandsOn), q.DrivenBy) {
			if name != "" && !slices.Contains(known, name) {
				t.Errorf("%s names %s, which is not catalogued", q.Name, name)
			}
		}
		if q.DrivenBy == q.Name || q.HasLimit && !q.Beside {
			t.Errorf("%s: driven by %q, beside %v, has a limit %v", q.Name, q.DrivenBy, q.Beside, q.HasLimit)
		}
		if q.Headline > 0 {
			places = append(places, q.Headline)
		}
	}
	slices.Sort(places)
	for i, n := range places {
		if n != i+1 {
			t.Errorf("headlines stand at %v", places)
			break
		}
	}
	if len(figure.Headlines()) != len(places) || figure.Row(figure.Headlines()[0]).Headline != 1 {
		t.Errorf("headlines: %v", figure.Headlines())
	}
	if figure.Row("no.such").Beside || figure.Row("no.such").Name != "" {
		t.Error("what is not catalogued has a row")
	}
}
