package hazards

import (
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
)

// Milder is a verdict that is milder with the data a writer put in the place of ours
// than it is without them.
type Milder struct {
	ID      figure.FindingID
	Was, Is figure.Verdict // without what the writer replaced, and with it
	Gone    bool           // with it there is no such finding
}

// milder makes the review again without what the writer replaced, the same call on
// another case, and lists what was judged harder there.
func milder(c route.Case, findings []figure.Finding) ([]Milder, error) {
	if len(c.Applied) == 0 {
		return nil, nil
	}
	plain, err := c.WithoutOverrides()
	if err != nil {
		return nil, err
	}
	rv, err := Make(plain)
	if err != nil {
		return nil, err
	}
	now := map[figure.FindingID]figure.Verdict{}
	for i := range findings {
		now[findings[i].ID()] = findings[i].Verdict
	}
	var out []Milder
	for i := range rv.Findings {
		f := &rv.Findings[i]
		is, there := now[f.ID()]
		switch {
		case there && is.Rank() < f.Verdict.Rank():
			out = append(out, Milder{ID: f.ID(), Was: f.Verdict, Is: is})
		case !there && f.Verdict != figure.Within:
			out = append(out, Milder{ID: f.ID(), Was: f.Verdict, Gone: true})
		}
	}
	return out, nil
}
