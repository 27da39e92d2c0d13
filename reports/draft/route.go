package draft

import (
	"strings"

	"etchbound/hazards/route"
	"etchbound/reports/number"
	"etchbound/reports/words"
	"etchbound/schemas/quantity"
)

// Route is what was reviewed; an empty one where a review has none.
func (b *Draft) Route() *route.Route {
	if b.Review.Case.Route == nil {
		return &route.Route{}
	}
	return b.Review.Case.Route
}

// Amount is a stated quantity in the unit it was written in.
func Amount(v quantity.Value) string {
	if !v.Set {
		return ""
	}
	unit := v.Unit()
	s := number.Nearest(v.In(unit), 6)
	if low, high := v.Range(unit); v.HasRange() {
		s = words.Of("amount.range", s, number.Nearest(low, 6), number.Nearest(high, 6))
	}
	return number.With(s, unit)
}

func (b *Draft) BatchText() string {
	if p := b.Route().Precursor; p != nil && p.Mass.Set {
		return words.Of("batch.of", Amount(p.Mass), p.Phase.Text)
	}
	if t := b.Route().BatchText; t != "" {
		return t
	}
	return words.Of("batch.none")
}

// long is from how many hours on a step is named to those who come by.
const long = 2

// Alone is the long steps in which nobody need be there, each with how long it lasts; one of
// which nobody says it counts as such.
func (b *Draft) Alone() string {
	var out []string
	for i := range b.Route().Steps {
		s := &b.Route().Steps[i]
		if h := stepHours(s); h >= long && (s.Attended == nil || !*s.Attended) {
			out = append(out, words.Of("door.alone_step", s.Number, hoursText(h)))
		}
	}
	if len(out) == 0 {
		return words.Of("door.alone_none")
	}
	return strings.Join(out, "; ")
}

// hoursText is a time in hours as it is read.
func hoursText(hours float64) string { return number.Thing{Unit: "min"}.Bound(60*hours, 1) }

func stepHours(s *route.Step) float64 {
	h := 0.0
	for _, v := range []quantity.Value{s.Over, s.Time} {
		if v.Set {
			h += v.SI / 3600
		}
	}
	return h
}

func ClosureText(p *route.Place) string {
	switch {
	case !p.ClosureStated:
		return words.Of("closure.unstated")
	case p.Closure == route.Open:
		return words.Of("closure.open")
	case p.Closure == route.Vented:
		return words.Of("closure.vented")
	}
	return words.Of("closure.closed")
}

// materialText is one thing put into a place, with its amount.
func (b *Draft) materialText(m *route.Material) string {
	return strings.TrimSpace(b.MaterialName(m) + " " + b.howMuch(m))
}

// howMuch is how much of a material is taken, and how strong; empty where neither is said.
func (b *Draft) howMuch(m *route.Material) string {
	var s []string
	for _, v := range []quantity.Value{m.Mass, m.Volume, m.Amount, m.Ratio} {
		if v.Set {
			s = append(s, Amount(v))
		}
	}
	if p := b.Route().Precursor; m.Precursor && len(s) == 0 && p != nil {
		s = append(s, Amount(p.Mass))
	}
	if m.Strength.Set {
		s = append(s, words.Of("material.strength", Amount(m.Strength)))
	}
	return strings.Join(s, ", ")
}

// MaterialName is a material in words.
func (b *Draft) MaterialName(m *route.Material) string {
	switch {
	case m.Precursor && b.Route().Precursor != nil:
		return words.Of("material.powder", b.Route().Precursor.Phase.Text)
	case m.Substance != nil:
		return m.Substance.Name
	}
	return words.Of("value.not_stated")
}

// StepWhere is the place, or both places, of a step.
func StepWhere(s *route.Step) string {
	if s.Into == "" {
		return s.In
	}
	return words.Of("step.into", s.In, s.Into)
}

// StepTime is the times of a step in words.
func StepTime(s *route.Step) string {
	var t []string
	if s.Over.Set {
		t = append(t, words.Of("step.over", Amount(s.Over)))
	}
	if s.Portions > 1 {
		t = append(t, words.Of("step.portions", s.Portions))
	}
	if s.Time.Set {
		t = append(t, Amount(s.Time))
	}
	return strings.Join(t, ", ")
}

func Attended(s *route.Step) string {
	switch {
	case s.Attended == nil:
		return words.Of("value.not_stated")
	case *s.Attended:
		return words.Of("yes")
	}
	return words.Of("no")
}
