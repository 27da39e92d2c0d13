package draft

import (
	"strings"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/reports/words"
)

func (b *Draft) MovesText(moves []hazards.Move, n int) string {
	var s []string
	for _, m := range moves[:min(n, len(moves))] {
		name := m.Figure.String()
		if f, ok := b.ByID[m.Figure]; ok {
			name = b.FigureName(f)
		}
		s = append(s, words.Of("move", name, b.ending(m.Figure, m.From), b.ending(m.Figure, m.To)))
	}
	if more := len(moves) - n; more > 0 {
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
