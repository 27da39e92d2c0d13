package review

import (
	"slices"
	"strconv"

	"etchbound/chemicals/datum"
	"etchbound/hazards"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/vessel"
	"etchbound/reports/chart"
	"etchbound/reports/digits"
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
				out = append(out, b.curve(i, n, t)...)
			}
		}
	}
	note := document.Paragraph{Text: words.Of("curve.note"), Tone: document.Note}
	switch {
	case out == nil:
	case place == draft.Tracks[0].Place:
		out = append(out, note)
	default: // on paper it is said with the first
		out = append(out, document.Unprinted{Blocks: []document.Block{note}})
	}
	return out
}

func (b *builder) curve(at int, n *course.Course, t *draft.Track) []document.Block {
	if t.OverGas() && n.Space.Unknown() || !t.In(n) {
		return nil
	}
	step := strconv.Itoa(n.Stages[0].Step.Number)
	c := chart.Chart{ID: t.Quantity + "-" + step, Title: words.Of(t.Title, step), Alt: words.Of(t.Title, step),
		X: chart.Axis{Label: words.Of("curve.time"), Unit: "h", Break: draft.InBy(n) / 3600},
		Y: chart.Axis{Label: words.Of(t.Axis), Unit: number.UnitText(t.Unit)}}
	var worst *figure.Figure
	for k := range n.Runs {
		x := &n.Runs[k]
		v := overTime(n, x, t)
		if len(v.X) < 2 {
			continue
		}
		v.Label = words.Of("case." + string(x.Law))
		f := b.peak(n, x, t)
		if c.Curves, c.Bands = append(c.Curves, v), append(c.Bands, b.band(at, f, x, t)); further(f, worst) {
			worst = f
		}
	}
	if !slices.ContainsFunc(c.Bands, func(v chart.Curve) bool { return len(v.X) > 1 }) {
		c.Bands = nil
	}
	c.Lines = append(b.held(n, t), b.undrawn(worst, append(slices.Clone(c.Curves), c.Bands...))...)
	if t.Unit == "vol%" {
		for _, id := range []datum.ID{"hydrogen.flammable", "hydrogen.upper"} {
			d, _ := b.Review.Case.Store.Row(id)
			c.Lines = append(c.Lines, chart.Line{Y: d.Value, Label: d.Valid})
		}
	}
	last := 0.0
	for _, v := range c.Curves {
		last = max(last, v.X[len(v.X)-1])
	}
	for _, e := range draft.Events(n) {
		if x := e.At / 3600; x <= last && len(c.Marks) < mostMarks {
			c.Marks = append(c.Marks, chart.Mark{X: x, Label: e.Says})
		}
	}
	return drawn(c)
}

// mostMarks is how many events a picture names.
const mostMarks = 3

// overTime is a track of a run, h.
func overTime(n *course.Course, x *course.Run, t *draft.Track) chart.Curve {
	var v chart.Curve
	last := -1.0
	for _, p := range x.Vessel.Points() {
		if p.Time > last {
			v.X, v.Y, last = append(v.X, p.Time/3600), append(v.Y, t.Of(n, p)), p.Time
		}
	}
	return v
}

// peak is what a run peaks at in the worst of its steps; nil of tracks that no range is told of.
func (b *builder) peak(n *course.Course, x *course.Run, t *draft.Track) *figure.Figure {
	var worst *figure.Figure
	for i := range n.Stages {
		f, there := b.ByID[figure.ID{Quantity: t.Quantity, Place: figure.Step(n.Stages[i].Step.Number),
			Case: figure.By(string(x.Law))}]
		if there && t.Ranged() && further(f, worst) {
			worst = f
		}
	}
	return worst
}

// further reports whether a figure goes further toward danger than another, if there is one.
func further(f, than *figure.Figure) bool {
	return f != nil && !f.Danger().Unknown() && (than == nil || f.Danger().V > than.Danger().V)
}

// band is how far the same run goes at the dangerous end of what it peaks at; nothing where
// that end is the best estimate.
func (b *builder) band(at int, worst *figure.Figure, x *course.Run, t *draft.Track) chart.Curve {
	if worst == nil {
		return chart.Curve{}
	}
	all := hazards.CoursesAt(b.Review, worst.ID)
	if at >= len(all) {
		return chart.Curve{}
	}
	for k := range all[at].Runs {
		if r := &all[at].Runs[k]; r.Law == vessel.Law(x.Law) {
			return overTime(&all[at], r, t)
		}
	}
	return chart.Curve{}
}

// undrawn is the dangerous end of a peak as a line, where no curve comes to it: what bounds
// it is no run that could be drawn.
func (b *builder) undrawn(f *figure.Figure, drawn []chart.Curve) []chart.Line {
	if f == nil || goesTo(drawn, f.Danger().V) {
		return nil
	}
	if t, ok := b.BoilsAt(f); ok && f.Danger().V >= t {
		return nil // the line of the boiling point is drawn
	}
	y := f.Danger().V
	return []chart.Line{{Y: digits.Rounded(y, digits.StepOf(y, 3), 1),
		Label: words.Of("curve.undrawn", b.Options.Units.Danger(f))}}
}

// goesTo reports whether one of some curves comes within a fiftieth of a number.
func goesTo(curves []chart.Curve, y float64) bool {
	return slices.ContainsFunc(curves, func(v chart.Curve) bool { return len(v.Y) > 0 && slices.Max(v.Y) >= 0.98*y })
}

// held are the limits that a track is held against as it is meant, the lowest three, and
// the boiling point of a temperature.
func (b *builder) held(n *course.Course, t *draft.Track) []chart.Line {
	var out []chart.Line
	add := func(y float64, label string) {
		if y == y && !slices.ContainsFunc(out, func(l chart.Line) bool { return l.Y == y || l.Label == label }) {
			out = append(out, chart.Line{Y: y, Label: label})
		}
	}
	for i := range n.Stages {
		place := figure.Step(n.Stages[i].Step.Number)
		for k := range b.Review.Findings {
			if f := &b.Review.Findings[k]; f.Figure.Quantity == t.Quantity && f.Figure.Place == place &&
				f.Figure.Case.Failure == "" && t.Unit == f.Limit.Unit {
				add(f.Limit.Value, b.LimitText(&f.Limit, f.Figure))
			}
		}
	}
	slices.SortStableFunc(out, func(x, y chart.Line) int { return int(1e6 * (x.Y - y.Y)) })
	out = out[:min(len(out), 3)]
	boils, ok := b.At("heat.boiling_point", figure.Step(n.Stages[0].Step.Number))
	if ok && t.Unit == "degC" && !t.OfJacket() && !boils.Low().Unknown() {
		add(boils.Low().V, b.Options.Units.Amount(boils.Quantity, "", boils.Low().V, 0)+", "+
			number.LabelOf("heat.boiling_point"))
	}
	return out
}

// boiledOff ends temperatures of a stage where its open liquor boils, and reports whether
// any went beyond.
func (b *builder) boiledOff(s *course.Stage, hot []float64) bool {
	f, ok := b.At("heat.mtsr", figure.Step(s.Step.Number))
	if !ok {
		return false
	}
	t, ok := b.BoilsAt(f)
	over := false
	for i := range hot {
		if ok && hot[i] > t {
			hot[i], over = t, true
		}
	}
	return over
}

// dosedCurves draw how hot each step gets if cooling fails with a share of what it doses
// in it.
func (b *builder) dosedCurves() []document.Block {
	var out []document.Block
	mtsr := &draft.Track{Quantity: "heat.mtsr", Unit: "degC"}
	for i := range b.Review.Courses {
		n := &b.Review.Courses[i]
		for j := range n.Stages {
			s := &n.Stages[j]
			v := chart.Curve{}
			for _, d := range s.Dosed() {
				v.X, v.Y = append(v.X, 100*d.Share), append(v.Y, d.Hottest)
			}
			if v.X == nil {
				continue
			}
			one := course.Course{Stages: n.Stages[j : j+1]}
			title := words.Of("curve.dosed", strconv.Itoa(s.Step.Number))
			if b.boiledOff(s, v.Y) {
				title += words.Of("curve.dosed_boils")
			}
			out = append(out, drawn(chart.Chart{ID: "dosed-" + strconv.Itoa(s.Step.Number), Title: title, Alt: title,
				X: chart.Axis{Label: words.Of("curve.dosed_axis"), Unit: "%"},
				Y: chart.Axis{Label: number.LabelOf("heat.mtsr"), Unit: "°C"}, Curves: []chart.Curve{v},
				Lines: b.held(&one, mtsr)})...)
		}
	}
	return out
}
