package draft

import (
	"cmp"
	"slices"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/upset"
)

// WorstFindings is at most so many findings, worst first, one a quantity: the same
// excess at three steps, or over three limits, is one line for the committee.
func (b *Draft) WorstFindings(most int) []*figure.Finding {
	var all []*figure.Finding
	for i := range b.Review.Findings {
		if f := &b.Review.Findings[i]; f.Verdict == figure.Within && f.Figure.Quantity == "account.error" {
			continue // a check of the calculation is news only when it fails
		}
		if f := &b.Review.Findings[i]; f.Limit.Key != upsetLimit || f == b.failing() {
			all = append(all, f)
		}
	}
	slices.SortStableFunc(all, worseFirst)
	seen := map[string]bool{}
	var out []*figure.Finding
	for _, f := range all {
		key := f.Figure.Quantity
		if f.Limit.Key == upsetLimit {
			key += "+" + upsetLimit.ID
		}
		if seen[key] || len(out) == most {
			continue
		}
		seen[key] = true
		out = append(out, f)
	}
	return out
}

// worseFirst orders findings by verdict and then by what is left of the limit.
// A known excess stands before an unknown of the same rank, and an excess over
// a limit of zero, which has no share left to compare, before the others.
func worseFirst(a, b *figure.Finding) int {
	if c := cmp.Compare(b.Verdict, a.Verdict); c != 0 {
		return c
	}
	if sa, sb := supposed(a), supposed(b); sa != sb {
		if sb {
			return -1
		}
		return 1
	}
	if za, zb := a.Limit.Value == 0, b.Limit.Value == 0; za != zb {
		if za {
			return -1
		}
		return 1
	}
	return cmp.Compare(a.Margin, b.Margin)
}

// failing is the finding that stands for all failures: of the worst verdict the
// first in their order, nil where nothing can fail.
func (b *Draft) failing() *figure.Finding {
	var out *figure.Finding
	for i := range b.Review.Findings {
		f := &b.Review.Findings[i]
		if f.Limit.Key != upsetLimit {
			continue
		}
		if out == nil || f.Verdict > out.Verdict || f.Verdict == out.Verdict &&
			failureRank(f.Figure) < failureRank(out.Figure) {
			out = f
		}
	}
	return out
}

// failureRank is the place of a finding's failure in their order.
func failureRank(id figure.ID) int { return slices.Index(upset.Keys(), id.Case.Failure) }

// upsetLimit is what the temperature of a failure is held against.
var upsetLimit = limit.Named(limit.Review, "boiling_if_it_fails")

// supposed reports whether a finding is of something that is no step of the route:
// an agent it does not use, a bottle on its way.
func supposed(f *figure.Finding) bool {
	switch f.Figure.Place {
	case figure.Waste, figure.Delivery, figure.Yard:
		return f.Figure.Agent != ""
	}
	return false
}
