package hazards_test

import (
	"math"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/schemas/long"
	"etchbound/schemas/nearly"
)

// A figure of a failure without a law has the worst centre, the worst dangerous end and
// the whole range of its laws; what one law does not know, it does not know.
func TestAFailureWithoutLawStandsForAllOfThem(t *testing.T) {
	long.Only(t)
	apart := 0
	for name, rv := range bundledReviews(t) {
		for i := range rv.Figures {
			f := &rv.Figures[i]
			if f.Case.Failure == "" || f.Of().IsZero() || f.Place.IsZero() || f.Case != figure.If(f.Case.Failure) {
				continue
			}
			centre, low, high := laws(&rv, f)
			if !nearly.Share(f.Value.V, centre, 1e-12) && !(f.Value.Unknown() && math.IsNaN(centre)) {
				t.Errorf("%s: %s is %v, the worst of its laws %v", name, f.ID.String(), f.Value.V, centre)
			}
			if f.Value.Unknown() {
				continue
			}
			for _, x := range [][2]float64{{f.Low().V, low}, {f.High().V, high}} {
				if !nearly.Share(x[0], x[1], 1e-12) && !(math.IsNaN(x[0]) && math.IsNaN(x[1])) {
					t.Errorf("%s: an end of %s is %v, of its laws %v", name, f.ID.String(), x[0], x[1])
				}
			}
			if of := figureOf(&rv, f.Of().String()); of.Value.V != f.Value.V {
				apart++
			}
		}
	}
	if apart == 0 {
		t.Error("in no bundled route is the worst centre of another law than the worst end")
	}
}

// laws are the worst centre and the ends of the range of the members of a sum.
func laws(rv *hazards.Review, f *figure.Figure) (centre, low, high float64) {
	q, _ := figure.Lookup(f.Quantity)
	worse, low, high := math.Max, math.Inf(1), math.Inf(-1)
	if centre = math.Inf(-1); q.Danger == figure.Low {
		worse, centre = math.Min, math.Inf(1)
	}
	for i := range rv.Figures {
		m := &rv.Figures[i]
		if m.Quantity == f.Quantity && m.Place == f.Place && m.Case.Failure == f.Case.Failure &&
			m.Case.State != figure.Closed && m.Of().IsZero() {
			centre = worse(centre, m.Value.V)
			low, high = math.Min(low, m.Low().V), math.Max(high, m.High().V)
		}
	}
	return centre, low, high
}
