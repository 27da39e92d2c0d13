package review

import (
	"slices"

	"etchbound/hazards/limit"
	"etchbound/reports/chart"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/words"
)

// airCurves draws the room over an hour after the spill of each vapour, and what
// is breathed near the source in the worst step, with the concentrations that
// count as labelled lines. Nothing is drawn where the room is not known.
func (b *builder) airCurves() []document.Block {
	var out []document.Block
	for _, t := range b.AirTracks() {
		if t.Near {
			out = append(out, b.airCurve(&t, "curve.near", b.breathed(t.Of.Agent))...)
		} else {
			out = append(out, b.airCurve(&t, "curve."+t.Of.Place.String(), leaving(t.Of.Agent))...)
		}
	}
	return out
}

// leaving are the lines at which a room is left.
func leaving(agent string) []chart.Line {
	var out []chart.Line
	for _, e := range limit.ExposureAt(agent, "") {
		if e.Leave() {
			out = append(out, chart.Line{Y: e.Value, Label: e.Label})
		}
	}
	return out
}

// breathed are the lowest limits of an agent at the site as lines.
func (b *builder) breathed(agent string) []chart.Line {
	var out []chart.Line
	for _, e := range b.lowest(agent) {
		out = append(out, chart.Line{Y: e.Value, Label: e.Label})
	}
	return out
}

// lowest are the lowest limits of an agent at the site: for a working day, for a quarter
// of an hour or less, and what is immediately dangerous.
func (b *builder) lowest(agent string) []*limit.Exposure {
	jurisdiction := ""
	if s := b.Review.Case.Site; s != nil {
		jurisdiction = s.Jurisdiction
	}
	var day, short, escape *limit.Exposure
	lower := func(into **limit.Exposure, e *limit.Exposure) {
		if *into == nil || e.Value < (*into).Value {
			*into = e
		}
	}
	for _, e := range limit.ExposureAt(agent, jurisdiction) {
		switch {
		case e.Kind == limit.Emergency:
		case e.Kind == limit.Escape:
			lower(&escape, &e)
		case e.Average <= 15:
			lower(&short, &e)
		default:
			lower(&day, &e)
		}
	}
	return slices.DeleteFunc([]*limit.Exposure{day, short, escape}, func(e *limit.Exposure) bool { return e == nil })
}

// airCurve is one figure of the air over time, in the middle of its range and
// where danger lies.
func (b *builder) airCurve(t *draft.AirTrack, title string, lines []chart.Line) []document.Block {
	f := t.Of
	name := draft.AgentName(f.Quantity, f.Agent)
	caption := words.Of(title, name)
	if t.Near {
		caption = words.Of(title, name, b.PlaceName(f.Place))
	}
	c := chart.Chart{ID: f.Place.String() + "-" + f.Agent, Title: caption, Alt: caption,
		X:     chart.Axis{Label: words.Of(title + "_time"), Unit: "min"},
		Y:     chart.Axis{Label: words.Of(title + "_axis"), Unit: "ppm", Log: true},
		Lines: lines}
	for _, x := range []struct {
		label  string
		points [][2]float64
	}{{"curve.spill_mean", t.Middle}, {"curve.spill_worst", t.Worst}} {
		v := chart.Curve{Label: words.Of(x.label)}
		for _, p := range x.points {
			v.X, v.Y = append(v.X, p[0]), append(v.Y, p[1])
		}
		c.Curves = append(c.Curves, v)
	}
	return drawn(c)
}
