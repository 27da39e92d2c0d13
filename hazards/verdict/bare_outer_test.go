package verdict_test

import (
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards/figure"
	"etchbound/hazards/verdict"
)

// An outer bound that nobody expects stands for no quantity: the worst of what is estimated does.
func TestAnOuterBoundIsNoWorst(t *testing.T) {
	of := func(branch string, v float64) figure.Figure {
		f := figure.Figure{ID: figure.ID{Quantity: "store.pressure", Place: figure.At("pot"), Case: figure.By(branch)},
			Value: working.Exact("p", "kPa gauge", v, "of the test")}
		f.SetRange(v, 2*v)
		return f
	}
	all := []figure.Figure{of(figure.OuterBound, 1600), of("methane", 420), of("carbon_kept", 780)}
	set := figure.NewSet(verdict.Bare(all))
	f := set.Get(figure.ID{Quantity: "store.pressure", Place: figure.At("pot")})
	if f == nil || f.Of().Case.Branch != "carbon_kept" {
		t.Errorf("the worst is %v", f)
	}
}
