package draft

import (
	"etchbound/hazards/treating"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// Dissolved is the pH of a container of waste and the fluoride that is dissolved in it, mg/L,
// over fresh and over aged hydroxide of aluminium. Without an equilibrium it is all of it, and
// beyond what equilibria are held for no pH is told.
func Dissolved(m *treating.Moment) string {
	low, high := min(m.Left[0], m.Left[1]), max(m.Left[0], m.Left[1])
	s := number.Said(high, 2, "mg/L")
	if number.Said(low, 2, "mg/L") != s {
		s = words.Of("treated.between", number.Significant(low, 2, -1), s)
	}
	switch {
	case m.Litres != m.Litres:
		return words.Of("value.unknown")
	case m.PH != m.PH:
		return words.Of("contained.not_held", s)
	case m.Outside:
		return words.Of("contained.beyond", s)
	}
	return words.Of("contained.at_ph", number.Nearest(m.PH, 2), s)
}
