package draft

import (
	"strings"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/reports/words"
)

// MovesText names the first n figures that an assumption moves so far that their numbers
// read otherwise, and counts the others.
func (b *Draft) MovesText(moves []hazards.Move, n int) string {
	var s []string
	for _, m := range moves {
		from, to := b.ending(m.Figure, m.From), b.ending(m.Figure, m.To)
		if len(s) == n {
			break
		}
		if from != to {
			s = append(s, words.Of("move", b.NameOf(m.Figure), from, to))
		}
	}
	if more := len(moves) - len(s); more > 0 {
		s = append(s, words.Of("moves.more", more))
	}
	return strings.Join(s, "; ")
}

// ending is an end of what an assumption moves a figure to, with its unit; of an open
// liquor at most that it boils.
func (b *Draft) ending(id figure.ID, v float64) string {
	if f, ok := b.ByID[id]; ok {
		if t, ok := b.BoilsAt(f); ok && v >= t {
			return words.Of("temperature.boiling")
		}
	}
	return b.Options.Units.Amount(id.Quantity, id.Agent, v, 0)
}
