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

// Written is what a person wrote otherwise in two cases, without an assessment of either;
// numbers of steps are those of the second.
func Written(reviewed, proposed route.Case) []InputDiff {
	reviewed, told := renamed(reviewed, proposed)
	d := differences(&reviewed, &proposed)
	return append(d.inputs(), told...)
}

// Moved is a figure whose central value is another.
type Moved struct {
	ID      figure.ID
	Was, Is figure.Figure
	Share   float64 // (is - was)/was; infinite from zero, not a number where one is unknown
}

// VerdictChange is a finding that says something else. Within stands for a finding
// that is not there.
type VerdictChange struct {
	ID        figure.FindingID // as in the proposed route
	Was, Is   figure.Finding
	Elsewhere bool // it is new here, and the reviewed route has it as bad in another place
}

// Worse reports whether it got worse.
func (v *VerdictChange) Worse() bool {
	return !v.Elsewhere && v.Is.Verdict.Rank() > v.Was.Verdict.Rank()
}

// Compare reviews two cases and lists what differs. It fails where one cannot be
// assessed.
func (t Triggers) Compare(reviewed, proposed route.Case) (Change, error) {
	out := Change{}
	reviewed, told := renamed(reviewed, proposed)
	reviews, errs := [2]hazards.Review{}, [2]error{}
	hazards.Each(2, func(i int) { reviews[i], errs[i] = hazards.Make([]route.Case{reviewed, proposed}[i]) })
	for _, err := range errs {
		if err != nil {
			return out, err
		}
	}
	out.Reviewed, out.Proposed = reviews[0], reviews[1]
	d := differences(&reviewed, &proposed)
	out.Inputs = append(d.inputs(), told...)
	b := beside{&out.Reviewed, &out.Proposed, route.Numbers(reviewed.Route, proposed.Route)}
	out.Moved, out.Verdicts = b.moved(), b.turned()
	out.Fired = t.fire(&out, &d, &b)
	return out, nil
}

// least is the share from which on a figure has moved.
const least = 0.01

// moved lists the figures whose central value moved.
func (b *beside) moved() []Moved {
	was := b.figures()
	var out []Moved
	for _, f := range b.is.Figures {
		w := was[f.ID]
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
