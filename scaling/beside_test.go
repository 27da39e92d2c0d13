package scaling

import (
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
)

// A finding that is new is no worse where the reviewed route has its matter as bad in another
// place, by the same verdict: what was not known there does not excuse what exceeds here.
func TestWhatIsNewIsHeldAgainstWhatWasAsBad(t *testing.T) {
	of := func(step int, v figure.Verdict) hazards.Review {
		id := figure.ID{Quantity: "heat.mtsr", Place: figure.Step(step)}
		return hazards.Review{Findings: []figure.Finding{{Figure: id, Limit: limit.Limit{Key: limit.Key{ID: "boils"}},
			Verdict: v}}}
	}
	for _, row := range []struct {
		was, is figure.Verdict
		worse   bool
	}{
		{figure.Exceeds, figure.Exceeds, false}, {figure.UnknownVerdict, figure.Exceeds, true},
		{figure.Exceeds, figure.UnknownVerdict, false}, {figure.UnknownVerdict, figure.UnknownVerdict, false},
		{figure.Near, figure.UnknownVerdict, true}, {figure.Within, figure.Near, true}, {figure.Near, figure.Near, false},
	} {
		was, is := of(2, row.was), of(3, row.is)
		b := beside{&was, &is, map[int]int{2: 2}}
		worse := false
		for _, v := range b.turned() {
			worse = worse || v.ID.Figure.Place == figure.Step(3) && v.Worse()
		}
		if worse != row.worse {
			t.Errorf("%s in a new step beside %s in another: worse %v", row.is, row.was, worse)
		}
	}
}
