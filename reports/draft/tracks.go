package draft

import (
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/vessel"
	"etchbound/reports/words"
)

// Track is one curve of a run in time: what it is of, and how it is read.
type Track struct {
	Quantity, Title, Axis, Unit, Place string
	Of                                 func(*course.Course, vessel.Point) float64
}

// The tracks that need the gas space of the vessel.
const flammableTime, timeToPressure = "gas.headspace.flammable_time", "gas.closed.time_to_10_kpa"

// The track of the liquid in a jacket.
const jacketWarms = "heat.jacket.warmest"

const zeroCelsius, litresPerMinute = 273.15, molarVolume * 60

var Tracks = [...]Track{
	{"heat.temperature_peak", "curve.temperature", "curve.temperature_axis", "degC", "heat",
		func(_ *course.Course, p vessel.Point) float64 { return p.Temperature - zeroCelsius }},
	{jacketWarms, "curve.jacket", "curve.temperature_axis", "degC", "heat",
		func(_ *course.Course, p vessel.Point) float64 { return p.Jacket - zeroCelsius }},
	{"heat.peak_power.after_addition", "curve.heat", "curve.heat_axis", "W", "heat",
		func(_ *course.Course, p vessel.Point) float64 { return p.Heat }},
	{"heat.mtsr", "curve.mtsr", "curve.temperature_axis", "degC", "heat",
		func(_ *course.Course, p vessel.Point) float64 { return p.MTSR - zeroCelsius }},
	{"gas.hydrogen.peak_rate.after_addition", "curve.hydrogen", "curve.hydrogen_axis", "L/min", "gas",
		func(_ *course.Course, p vessel.Point) float64 { return p.Gas * litresPerMinute }},
	{flammableTime, "curve.headspace", "curve.headspace_axis", "vol%", "gas",
		func(n *course.Course, p vessel.Point) float64 {
			return 100 * vessel.Share(p.Released*molarVolume, n.Space.V/1000)
		}},
	{timeToPressure, "curve.shut", "curve.shut_axis", "kPa gauge", "gas",
		func(n *course.Course, p vessel.Point) float64 {
			return p.Released * vessel.R * filled / (n.Space.V / 1000)
		}},
}

// molarVolume of a gas in L/mol, and the temperature in K at which a container
// counts as filled: 25 degC and 101.325 kPa.
const molarVolume, filled = 24.4654, 298.15

// OverGas reports whether a track needs the gas space of the vessel.
func (t *Track) OverGas() bool {
	return t.Quantity == flammableTime || t.Quantity == timeToPressure
}

// id is the figure that a track of a course shows over time, by one law.
func (b *Draft) TrackID(t *Track, n *course.Course, law vessel.Law) figure.ID {
	if t.Quantity != timeToPressure {
		return figure.ID{Quantity: t.Quantity, Place: figure.Step(n.Stages[0].Step.Number), Case: figure.By(string(law))}
	}
	id := figure.ID{Quantity: t.Quantity, Place: figure.At(n.Stages[0].Done.Place), Case: figure.By(string(law))}
	shut := id
	if shut.Case.State = figure.Closed; b.ByID[shut] != nil {
		return shut
	}
	return id
}

// Event is something that happens in a course, s from its start.
type Event struct {
	At   float64
	Says string
}

// Events are when what reacts is all in, and when each later step of a course begins.
func Events(n *course.Course) []Event {
	var out []Event
	t := 0.0
	for i := range n.Stages {
		s := &n.Stages[i]
		if i > 0 {
			out = append(out, Event{t, words.Of("event.step", s.Step.Number)})
		}
		if s.Etches != nil && !s.Over.Unknown() {
			t += s.Over.V
			out = append(out, Event{t, words.Of("event.in", s.Step.Number)})
		}
		if s.Hold.Unknown() {
			break
		}
		t += s.Hold.V
	}
	return out
}

// InBy is when the first powder of a course is in, s.
func InBy(n *course.Course) float64 {
	for i := range n.Stages {
		if s := &n.Stages[i]; s.Etches != nil && !s.Over.Unknown() {
			return s.Over.V
		}
	}
	return 0
}

// In reports whether a course has what a track is of: only one in a jacket has its liquid.
func (t *Track) In(n *course.Course) bool {
	return !t.OfJacket() || n.Stages[0].Jacket != nil
}

// OfJacket reports whether a track is of the liquid in a jacket, and not of the batch.
func (t *Track) OfJacket() bool { return t.Quantity == jacketWarms }

// Ranged reports whether a track goes to the peak of a figure that has a range.
func (t *Track) Ranged() bool {
	return t.Quantity == "heat.temperature_peak" || t.Quantity == jacketWarms ||
		t.Quantity == "gas.hydrogen.peak_rate.after_addition"
}
