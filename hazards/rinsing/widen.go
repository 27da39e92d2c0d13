package rinsing

import (
	"math"

	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Widen takes the cycles that undissolved lithium fluoride asks for into the range of
// wash.cycles, and says of both figures of such a wash that its pH does not see it. It
// returns what to warn of.
func Widen(c route.Case, k *process.Walk, figures []figure.Figure) []phrase.Phrase {
	if k.Open != nil {
		return nil
	}
	var out []phrase.Phrase
	for i := range k.Washes {
		x := &k.Washes[i]
		cycles, left := Undissolved(c, x)
		if cycles == 0 {
			continue
		}
		for j := range figures {
			f := &figures[j]
			if f.Place != figure.Step(x.Step) || f.Quantity != "wash.cycles" && f.Quantity != "wash.ph" {
				continue
			}
			most := math.Max(f.Value.V, float64(cycles))
			if cycles == NotKnown {
				f.Conditions, most = f.Conditions.And(phrase.Of("wash.undissolved_open")), math.NaN()
			} else {
				f.Conditions = f.Conditions.And(phrase.Of("wash.undissolved", left))
			}
			if f.Quantity == "wash.cycles" && !f.Value.Unknown() {
				f.SetRange(f.Value.V, most)
			}
		}
		switch {
		case cycles == NotKnown:
			out = append(out, phrase.Of("warn.undissolved_open", x.Step))
		case left > 0:
			out = append(out, phrase.Of("warn.undissolved", x.Step, left))
		}
	}
	return out
}
