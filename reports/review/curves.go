package review

import (
	"strconv"

	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/reports/chart"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// curves draws what a section shows against time, one picture for each course
// and quantity with a curve for each law.
func (b *builder) curves(place string) []document.Block {
	var out []document.Block
	for i := range b.Review.Courses {
		n := &b.Review.Courses[i]
		for j := range draft.Tracks {
			if t := &draft.Tracks[j]; t.Place == place {
				out = append(out, b.curve(n, t)...)
			}
		}
	}
	if out != nil {
		out = append(out, document.Paragraph{Text: words.Of("curve.note"), Tone: document.Note})
	}
	return out
}

func (b *builder) curve(n *course.Course, t *draft.Track) []document.Block {
	if t.OverGas() && n.Space.Unknown() {
		return nil
	}
	step := strconv.Itoa(n.Stages[0].Step.Number)
	c := chart.Chart{ID: t.Quantity + "-" + step, Title: words.Of(t.Title, step), Alt: words.Of(t.Title, step),
		X: chart.Axis{Label: words.Of("curve.time"), Unit: "h"},
		Y: chart.Axis{Label: words.Of(t.Axis), Unit: number.UnitText(t.Unit)}}
	for k := range n.Runs {
		x := &n.Runs[k]
		v := chart.Curve{Label: words.Of("case." + string(x.Law))}
		last := -1.0
		for _, p := range x.Vessel.Points() {
			if p.Time > last {
				v.X, v.Y, last = append(v.X, p.Time/3600), append(v.Y, t.Of(n, p)), p.Time
			}
		}
		if len(v.X) > 1 {
			c.Curves = append(c.Curves, v)
		}
	}
	if f, ok := b.At("heat.boiling_point", figure.Step(n.Stages[0].Step.Number)); ok && t.Unit == "degC" &&
		!f.Low().Unknown() {
		c.Lines = append(c.Lines, chart.Line{Y: f.Low().V, Label: number.LabelOf("heat.boiling_point")})
	}
	if t.Unit == "vol%" {
		for _, id := range []string{"hydrogen.flammable", "hydrogen.upper"} {
			d, _ := b.Review.Case.Store.Row(id)
			c.Lines = append(c.Lines, chart.Line{Y: d.Value, Label: d.Valid})
		}
	}
	svg, err := c.SVG()
	if err != nil { // nothing was run: the figures say what is missing
		return nil
	}
	return []document.Block{document.Picture{SVG: svg, Text: c.Text()}}
}
