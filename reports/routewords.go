package reports

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

// route is what was reviewed; an empty one where a review has none.
func (b *builder) route() *route.Route {
	if b.r.Case.Route == nil {
		return &route.Route{}
	}
	return b.r.Case.Route
}

// amount is a stated quantity in the unit it was written in.
func amount(v quantity.Value) string {
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

func (b *builder) batchText() string {
	if p := b.route().Precursor; p != nil && p.Mass.Set {
		return words.Of("batch.of", amount(p.Mass), p.Phase.Text)
	}
	if t := b.route().BatchText; t != "" {
		return t
	}
	return words.Of("batch.none")
}

// highestSet is the highest temperature any step is set to, and where.
func (b *builder) highestSet() string {
	best, at := math.Inf(-1), ""
	for i := range b.route().Steps {
		s := &b.route().Steps[i]
		if s.Temperature.Set && s.Temperature.SI > best {
			best, at = s.Temperature.SI, words.Of("envelope.at_step", amount(s.Temperature), s.Number)
		}
	}
	if at == "" {
		return words.Of("value.none_given")
	}
	return at
}

// attendance is the time with and without somebody there, in hours, and the
// steps for which nobody said.
func (b *builder) attendance() string {
	var with, without float64
	var silent []string
	for i := range b.route().Steps {
		s := &b.route().Steps[i]
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
	out := words.Of("envelope.hours", number.Nearest(with, 3), number.Nearest(without, 3))
	switch len(silent) {
	case 0:
	case 1:
		out += words.Of("envelope.not_said_one", silent[0])
	default:
		out += words.Of("envelope.not_said", plain.Clip(strings.Join(silent, ", "), 24))
	}
	return out
}

func stepHours(s *route.Step) float64 {
	h := 0.0
	for _, v := range []quantity.Value{s.Over, s.Time} {
		if v.Set {
			h += v.SI / 3600
		}
	}
	return h
}

// closures is how each place is shut; what was not stated counts as closed.
func (b *builder) closures() string {
	var s []string
	for i := range b.route().Places {
		p := &b.route().Places[i]
		s = append(s, p.Key+" "+closureText(p))
	}
	if len(s) == 0 {
		return words.Of("value.none_given")
	}
	return strings.Join(s, "; ")
}

func closureText(p *route.Place) string {
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

func (b *builder) capacities() string {
	var s []string
	for i := range b.route().Places {
		p := &b.route().Places[i]
		size := words.Of("value.not_stated")
		if p.Capacity.Set {
			size = amount(p.Capacity)
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
func (b *builder) materialText(m *route.Material) string {
	name := b.materialName(m)
	var s []string
	for _, v := range []quantity.Value{m.Mass, m.Volume, m.Amount, m.Ratio} {
		if v.Set {
			s = append(s, amount(v))
		}
	}
	if p := b.route().Precursor; m.Precursor && len(s) == 0 && p != nil {
		s = append(s, amount(p.Mass))
	}
	if m.Strength.Set {
		s = append(s, words.Of("material.strength", amount(m.Strength)))
	}
	if len(s) == 0 {
		return name
	}
	return name + " " + strings.Join(s, ", ")
}

func (b *builder) materialName(m *route.Material) string {
	switch {
	case m.Precursor && b.route().Precursor != nil:
		return words.Of("material.powder", b.route().Precursor.Phase.Text)
	case m.Substance != nil:
		return m.Substance.Name
	}
	return words.Of("value.not_stated")
}

// stepWhere is the place, or both places, of a step.
func stepWhere(s *route.Step) string {
	if s.Into == "" {
		return s.In
	}
	return words.Of("step.into", s.In, s.Into)
}

// stepTime is the times of a step in words.
func stepTime(s *route.Step) string {
	var t []string
	if s.Over.Set {
		t = append(t, words.Of("step.over", amount(s.Over)))
	}
	if s.Time.Set {
		t = append(t, amount(s.Time))
	}
	return strings.Join(t, ", ")
}

func attended(s *route.Step) string {
	switch {
	case s.Attended == nil:
		return words.Of("value.not_stated")
	case *s.Attended:
		return words.Of("yes")
	}
	return words.Of("no")
}
