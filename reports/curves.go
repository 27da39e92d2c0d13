package reports

import (
	"strconv"

	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/vessel"
	"etchbound/reports/chart"
)

// Picture is a drawing with the sentences that stand for it where none can be
// shown. SVG is our own and written as it is.
type Picture struct{ SVG, Text string }

func (Picture) block() {}

// track is one curve of a run in time: what it is of, and how it is read.
type track struct {
	quantity, title, axis, unit, place string
	of                                 func(vessel.Point) float64
}

const zeroCelsius, litresPerMinute = 273.15, 24.4654 * 60

var tracks = [...]track{
	{"heat.temperature_peak", "curve.temperature", "curve.temperature_axis", "degC", "heat", func(p vessel.Point) float64 { return p.Temperature - zeroCelsius }},
	{"heat.peak_power.after_addition", "curve.heat", "curve.heat_axis", "W", "heat", func(p vessel.Point) float64 { return p.Heat }},
	{"heat.mtsr", "curve.mtsr", "curve.temperature_axis", "degC", "heat", func(p vessel.Point) float64 { return p.MTSR - zeroCelsius }},
	{"gas.hydrogen.peak_rate.after_addition", "curve.hydrogen", "curve.hydrogen_axis", "L/min", "gas", func(p vessel.Point) float64 { return p.Gas * litresPerMinute }},
}

// curves draws what a section shows against time, one picture for each course
// and quantity with a curve for each law.
func (b *builder) curves(place string) []Block {
	var out []Block
	for i := range b.r.Courses {
		n := &b.r.Courses[i]
		for j := range tracks {
			if t := &tracks[j]; t.place == place {
				out = append(out, b.curve(n, t)...)
			}
		}
	}
	if out != nil {
		out = append(out, Paragraph{Text: say("curve.note"), Tone: Note})
	}
	return out
}

func (b *builder) curve(n *course.Course, t *track) []Block {
	step := strconv.Itoa(n.Stages[0].Step.Number)
	c := chart.Chart{ID: t.quantity + "-" + step, Title: say(t.title, step), Alt: say(t.title, step),
		X: chart.Axis{Label: say("curve.time"), Unit: "h"}, Y: chart.Axis{Label: say(t.axis), Unit: t.unit}}
	for k := range n.Runs {
		x := &n.Runs[k]
		v := chart.Curve{Label: say("case." + string(x.Law))}
		last := -1.0
		for _, p := range x.Vessel.Points() {
			if p.Time > last {
				v.X, v.Y, last = append(v.X, p.Time/3600), append(v.Y, t.of(p)), p.Time
			}
		}
		if len(v.X) > 1 {
			c.Curves = append(c.Curves, v)
		}
	}
	if f, ok := b.byID[figure.ID("heat.boiling_point", step, "", "")]; ok && t.unit == "degC" && !f.Low.Unknown() {
		c.Lines = append(c.Lines, chart.Line{Y: f.Low.V, Label: labelOf("heat.boiling_point")})
	}
	svg, err := c.SVG()
	if err != nil { // nothing was run: the figures say what is missing
		return nil
	}
	return []Block{Picture{SVG: svg, Text: c.Text()}}
}
