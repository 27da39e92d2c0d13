package scaling

import (
	"cmp"
	"math"
	"slices"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

// Change is a reviewed route beside a proposed one.
type Change struct {
	Reviewed, Proposed hazards.Review
	Inputs             []InputDiff
	Moved              []Moved         // largest share first
	Verdicts           []VerdictChange // worse first
	Fired              []Fired         // in the order of the table of triggers
}

// InputDiff is one thing that a person wrote otherwise. Was or Is is empty where it
// was not there.
type InputDiff struct{ Where, What, Was, Is string }

// Moved is a figure whose central value is another.
type Moved struct {
	ID      figure.ID
	Was, Is figure.Figure
	Share   float64 // (is - was)/was; infinite from zero, not a number where one is unknown
}

// VerdictChange is a finding that says something else. Within stands for a finding
// that is not there.
type VerdictChange struct {
	ID      figure.FindingID
	Was, Is figure.Finding
}

// Worse reports whether it got worse.
func (v *VerdictChange) Worse() bool { return v.Is.Verdict.Rank() > v.Was.Verdict.Rank() }

// Compare reviews two cases and lists what differs. It fails where one cannot be
// assessed.
func (t Triggers) Compare(reviewed, proposed route.Case) (Change, error) {
	out := Change{}
	reviews, errs := [2]hazards.Review{}, [2]error{}
	hazards.Each(2, func(i int) { reviews[i], errs[i] = hazards.Make([]route.Case{reviewed, proposed}[i]) })
	for _, err := range errs {
		if err != nil {
			return out, err
		}
	}
	out.Reviewed, out.Proposed = reviews[0], reviews[1]
	d := differences(&reviewed, &proposed)
	out.Inputs = d.inputs()
	out.Moved, out.Verdicts = moved(&reviews[0], &reviews[1]), turned(&reviews[0], &reviews[1])
	out.Fired = t.fire(&out, &d)
	return out, nil
}

// least is the share from which on a figure has moved.
const least = 0.01

// moved lists the figures whose central value moved.
func moved(a, b *hazards.Review) []Moved {
	was := figure.NewSet(a.Figures)
	var out []Moved
	for _, f := range b.Figures {
		w := was.Get(f.ID)
		if w == nil || !f.Of().IsZero() || f.Quantity == "account.error" {
			continue
		}
		x, y := w.Value.V, f.Value.V
		share := (y - x) / math.Abs(x)
		if x == y || math.IsNaN(x) && math.IsNaN(y) || math.Abs(share) <= least {
			continue
		}
		out = append(out, Moved{f.ID, *w, f, share})
	}
	slices.SortStableFunc(out, func(a, b Moved) int { // what happens before what would if something failed
		return cmp.Or(cmp.Compare(fails(&a), fails(&b)), cmp.Compare(size(b.Share), size(a.Share)))
	})
	return out
}

func fails(m *Moved) int {
	if m.Is.Case.Failure != "" {
		return 1
	}
	return 0
}

// size of a change; one to or from unknown is the largest.
func size(share float64) float64 {
	if math.IsNaN(share) {
		return math.Inf(1)
	}
	return math.Abs(share)
}

func turned(a, b *hazards.Review) []VerdictChange {
	was, is := map[figure.FindingID]figure.Finding{}, map[figure.FindingID]figure.Finding{}
	var ids []figure.FindingID
	for _, f := range a.Findings {
		was[f.ID()] = f
		ids = append(ids, f.ID())
	}
	for _, f := range b.Findings {
		is[f.ID()] = f
		if _, there := was[f.ID()]; !there {
			ids = append(ids, f.ID())
		}
	}
	var out []VerdictChange
	for _, id := range ids {
		if x, y := was[id], is[id]; x.Verdict != y.Verdict {
			out = append(out, VerdictChange{id, x, y})
		}
	}
	slices.SortStableFunc(out, func(a, b VerdictChange) int {
		return (b.Is.Verdict.Rank() - b.Was.Verdict.Rank()) - (a.Is.Verdict.Rank() - a.Was.Verdict.Rank())
	})
	return out
}
