package reports

import (
	"strconv"

	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/vessel"
	"etchbound/reports/chart"
	"etchbound/reports/document"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// track is one curve of a run in time: what it is of, and how it is read.
type track struct {
	quantity, title, axis, unit, place string
	of                                 func(*course.Course, vessel.Point) float64
}

// The tracks that need the gas space of the vessel.
const flammableTime, timeToPressure = "gas.headspace.flammable_time", "gas.closed.time_to_10_kpa"

const zeroCelsius, litresPerMinute = 273.15, molarVolume * 60

var tracks = [...]track{
	{"heat.temperature_peak", "curve.temperature", "curve.temperature_axis", "degC", "heat",
		func(_ *course.Course, p vessel.Point) float64 { return p.Temperature - zeroCelsius }},
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

// overGas reports whether a track needs the gas space of the vessel.
func (t *track) overGas() bool {
	return t.quantity == flammableTime || t.quantity == timeToPressure
}

// id is the figure that a track of a course shows over time, by one law.
func (b *builder) trackID(t *track, n *course.Course, law vessel.Law) figure.ID {
	if t.quantity != timeToPressure {
		return figure.ID{Quantity: t.quantity, Place: figure.Step(n.Stages[0].Step.Number), Case: figure.By(string(law))}
	}
	id := figure.ID{Quantity: t.quantity, Place: figure.At(n.Stages[0].Done.Place), Case: figure.By(string(law))}
	shut := id
	if shut.Case.State = figure.Closed; b.byID[shut] != nil {
		return shut
	}
	return id
}

// curves draws what a section shows against time, one picture for each course
// and quantity with a curve for each law.
func (b *builder) curves(place string) []document.Block {
	var out []document.Block
	for i := range b.r.Courses {
		n := &b.r.Courses[i]
		for j := range tracks {
			if t := &tracks[j]; t.place == place {
				out = append(out, b.curve(n, t)...)
			}
		}
	}
	if out != nil {
		out = append(out, document.Paragraph{Text: words.Of("curve.note"), Tone: document.Note})
	}
	return out
}

func (b *builder) curve(n *course.Course, t *track) []document.Block {
	if t.overGas() && n.Space.Unknown() {
		return nil
	}
	step := strconv.Itoa(n.Stages[0].Step.Number)
	c := chart.Chart{ID: t.quantity + "-" + step, Title: words.Of(t.title, step), Alt: words.Of(t.title, step),
		X: chart.Axis{Label: words.Of("curve.time"), Unit: "h"}, Y: chart.Axis{Label: words.Of(t.axis), Unit: t.unit}}
	for k := range n.Runs {
		x := &n.Runs[k]
		v := chart.Curve{Label: words.Of("case." + string(x.Law))}
		last := -1.0
		for _, p := range x.Vessel.Points() {
			if p.Time > last {
				v.X, v.Y, last = append(v.X, p.Time/3600), append(v.Y, t.of(n, p)), p.Time
			}
		}
		if len(v.X) > 1 {
			c.Curves = append(c.Curves, v)
		}
	}
	if f, ok := b.at("heat.boiling_point", figure.Step(n.Stages[0].Step.Number)); ok && t.unit == "degC" &&
		!f.Low().Unknown() {
		c.Lines = append(c.Lines, chart.Line{Y: f.Low().V, Label: number.LabelOf("heat.boiling_point")})
	}
	if t.unit == "vol%" {
		for _, id := range []string{"hydrogen.flammable", "hydrogen.upper"} {
			d, _ := b.r.Case.Store.Row(id)
			c.Lines = append(c.Lines, chart.Line{Y: d.Value, Label: d.Valid})
		}
	}
	svg, err := c.SVG()
	if err != nil { // nothing was run: the figures say what is missing
		return nil
	}
	return []document.Block{document.Picture{SVG: svg, Text: c.Text()}}
}
