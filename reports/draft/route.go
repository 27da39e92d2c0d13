package draft

import (
	"math"
	"strconv"
	"strings"

	"etchbound/hazards/route"
	"etchbound/reports/number"
	"etchbound/reports/plain"
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

// HighestSet is the highest temperature any step is set to, and where.
func (b *Draft) HighestSet() string {
	best, at := math.Inf(-1), ""
	for i := range b.Route().Steps {
		s := &b.Route().Steps[i]
		if s.Temperature.Set && s.Temperature.SI > best {
			best, at = s.Temperature.SI, words.Of("envelope.at_step", Amount(s.Temperature), s.Number)
		}
	}
	if at == "" {
		return words.Of("value.none_given")
	}
	return at
}

// Attendance is the time with and without somebody there, in hours, and the
// steps for which nobody said.
func (b *Draft) Attendance() string {
	var with, without float64
	var silent []string
	for i := range b.Route().Steps {
		s := &b.Route().Steps[i]
		hours := stepHours(s)
		switch {
		case s.Attended == nil && hours > 0: // not said counts as nobody there
			silent, without = append(silent, strconv.Itoa(s.Number)), without+hours
		case s.Attended != nil && *s.Attended:
			with += hours
		case s.Attended != nil:
			without += hours
		}
	}
	out := words.Of("envelope.hours", hoursText(with), hoursText(without))
	switch len(silent) {
	case 0:
	case 1:
		out += words.Of("envelope.not_said_one", silent[0])
	default:
		out += words.Of("envelope.not_said", plain.Clip(strings.Join(silent, ", "), 24))
	}
	return out
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

// Closures is how each place is shut; what was not stated counts as closed.
func (b *Draft) Closures() string {
	var s []string
	for i := range b.Route().Places {
		p := &b.Route().Places[i]
		s = append(s, p.Key+" "+ClosureText(p))
	}
	if len(s) == 0 {
		return words.Of("value.none_given")
	}
	return strings.Join(s, "; ")
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

func (b *Draft) Capacities() string {
	var s []string
	for i := range b.Route().Places {
		p := &b.Route().Places[i]
		size := words.Of("value.not_stated")
		if p.Capacity.Set {
			size = Amount(p.Capacity)
		}
		if p.Count > 1 {
			size = words.Of("place.count", p.Count, size)
		}
		s = append(s, p.Key+" "+size)
	}
	if len(s) == 0 {
		return words.Of("value.none_given")
	}
	return strings.Join(s, "; ")
}

// materialText is one thing put into a place, with its amount.
func (b *Draft) materialText(m *route.Material) string {
	name := b.MaterialName(m)
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
	if len(s) == 0 {
		return name
	}
	return name + " " + strings.Join(s, ", ")
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
