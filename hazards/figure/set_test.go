package figure_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"etchbound/hazards/figure"
)

// The index finds what a look through the whole list finds, in the same order, for
// any list.
func TestSetFindsWhatTheListHolds(t *testing.T) {
	quantities := []string{"heat.mtsr", "heat.boiling_point", "gas.hydrogen.total", "no.such.quantity", "another"}
	places := []figure.Place{{}, figure.Step(1), figure.Step(2), figure.Waste}
	rapid.Check(t, func(t *rapid.T) {
		list := make([]figure.Figure, rapid.IntRange(0, 30).Draw(t, "figures"))
		for i := range list {
			list[i].Quantity = rapid.SampledFrom(quantities).Draw(t, "quantity")
			list[i].Place = rapid.SampledFrom(places).Draw(t, "place")
			list[i].Case = figure.By(rapid.SampledFrom([]string{"", "early_peak"}).Draw(t, "case"))
		}
		set := figure.NewSet(list)
		for _, q := range quantities {
			found(t, slices.Collect(set.Of(q)), list, func(f *figure.Figure) bool { return f.Quantity == q })
			for _, p := range places {
				found(t, slices.Collect(set.At(q, p)), list, func(f *figure.Figure) bool { return f.Quantity == q && f.Place == p })
				got, want := set.One(q, p), slices.IndexFunc(list, func(f figure.Figure) bool {
					return f.ID == figure.ID{Quantity: q, Place: p}
				})
				if want < 0 && got != nil || want >= 0 && got != &list[want] {
					t.Fatalf("%s at %v: %v, want number %d", q, p, got, want)
				}
			}
		}
	})
}

func found(t *rapid.T, got []*figure.Figure, list []figure.Figure, in func(*figure.Figure) bool) {
	var want []*figure.Figure
	for i := range list {
		if in(&list[i]) {
			want = append(want, &list[i])
		}
	}
	if !slices.Equal(got, want) {
		t.Fatalf("%d figures, want %d", len(got), len(want))
	}
}
