package scaling

import (
	"math"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/schemas/quantity"
)

// Outgrown is the first limit that a larger batch is seen to outgrow.
type Outgrown struct {
	Finding *figure.Finding // at the batch Over; nil where none is outgrown up to To
	Holds   float64         // g, a batch at which it holds
	Over    float64         // g, the next batch looked at, at which it is exceeded
	To      float64         // g, the largest batch looked at
	Unknown int             // quantities with a finding that is not known at the batch of the review
	Rungs   []Taken         // the batches looked at, that of the review first
}

// Taken is what the safeguards that hold at the batch of a review take of their limits
// at a batch: 1 is all of it. Temperatures have no share and are left out.
type Taken struct {
	Grams  float64
	Shares map[figure.FindingID]float64
}

// sharesAt are the shares of the findings that are held.
func sharesAt(grams float64, held map[figure.FindingID]*figure.Finding, at []figure.Finding) Taken {
	out := Taken{grams, map[figure.FindingID]float64{}}
	for i := range at {
		f := &at[i]
		if held[f.ID()] == nil || f.Limit.Unit == "degC" || !(f.Limit.Value > 0) || math.IsNaN(f.Margin) {
			continue
		}
		share := 1 - f.Margin
		if q, _ := figure.Lookup(f.Figure.Quantity); q.Danger == figure.Low {
			share = 1 / (1 + f.Margin)
		}
		if share > 0 && !math.IsInf(share, 0) {
			out.Shares[f.ID()] = share
		}
	}
	return out
}

// few are the batches that First looks at, in batches of the review.
var few = [...]float64{2, 5}

// First looks at a few batches larger than that of a review, which has to have powder,
// for the first limit that holds at it and is exceeded there: a bracket, for a page with
// no room for a ladder. Amounts and containers grow with the batch, nothing else does.
func First(r *hazards.Review) (Outgrown, error) {
	from := r.Case.Route.Precursor.Mass.In("g")
	out := Outgrown{Holds: from, To: from}
	held, unknown := map[figure.FindingID]*figure.Finding{}, map[string]bool{}
	for i := range r.Findings {
		f := &r.Findings[i]
		if f.Verdict == figure.Within || f.Verdict == figure.Near {
			held[f.ID()] = f
		} else if f.Verdict == figure.UnknownVerdict {
			unknown[f.Figure.Quantity] = true
		}
	}
	out.Unknown = len(unknown)
	out.Rungs = append(out.Rungs, sharesAt(from, held, r.Findings))
	for _, times := range few {
		out.To = times * from
		c, err := Follow{}.sized(r.Case, quantity.Of(out.To, "g", quantity.Mass))
		if err != nil {
			return out, err
		}
		s, err := hazards.Size(c, hazards.Wanted)
		if err != nil {
			return out, err
		}
		found := s.Findings()
		out.Rungs = append(out.Rungs, sharesAt(out.To, held, found))
		if out.Finding = soonest(held, found); out.Finding != nil {
			out.Over = out.To
			return out, nil
		}
		out.Holds = out.To
	}
	return out, nil
}

// soonest is the finding that is exceeded at a batch and held at a smaller one, of
// several the one that used up most of its limit on the way.
func soonest(held map[figure.FindingID]*figure.Finding, at []figure.Finding) *figure.Finding {
	var out *figure.Finding
	least := math.Inf(1)
	for i := range at {
		f := &at[i]
		was, there := held[f.ID()]
		if !there || f.Verdict != figure.Exceeds {
			continue
		}
		if turn := was.Margin / (was.Margin - f.Margin); out == nil || turn < least {
			out, least = f, turn
		}
	}
	return out
}
