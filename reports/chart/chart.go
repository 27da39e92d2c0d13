package chart

import "strings"

// Chart is one picture: at least one curve over a common pair of axes.
type Chart struct {
	// ID tells this chart from the others of a page. Any text but the empty
	// one will do; two charts of a page must differ in it.
	ID string
	// Title is its accessible name; who shows the picture writes it beside.
	Title string
	// Alt is what the caller wants said first of what is to be seen. It may be
	// empty: the sentences made from the data follow in any case.
	Alt    string
	X, Y   Axis
	Curves []Curve
	Bands  []Curve // the far edge of what a curve may be, of the curve of the same place in Curves; drawn as haze
	Lines  []Line
	Marks  []Mark
}

// Axis is the naming and the scale of one direction. Log asks for a decadic
// logarithmic scale, on which no value may be below 1e-300. Break is a value at which an
// X axis is broken: what lies before it takes two fifths of the width, however short.
type Axis struct {
	Label, Unit string
	Log         bool
	Break       float64
}

// Curve is a run of points, joined by straight lines on the axes as drawn.
// X and Y have the same length, at least one, in the units of the axes; X rises
// from point to point. Every number is finite and within 1e300 of zero.
type Curve struct {
	Label string
	X, Y  []float64
}

// Line is a horizontal line across the whole width, at Y in the unit of the Y
// axis. The axis is widened to hold it, wherever it lies.
type Line struct {
	Y     float64
	Label string
}

// Mark is an event: a vertical line at X in the unit of the X axis. The axis is
// widened to hold it.
type Mark struct {
	X     float64
	Label string
}

// SVG is the chart as one svg element, complete as a file of its own and inside
// an HTML page. The same chart gives the same bytes. It is as wide as what holds
// it; at half the width of an A4 page its letters are 6.5 points high.
//
// Text that has no room is cut and ends in an ellipsis; the desc holds it whole.
// The error says what cannot be drawn: no ID, no curve, a curve without points,
// X and Y of unequal length, a number that is not finite or beyond 1e300, X that
// does not rise, or a number below 1e-300 on a logarithmic axis.
func (c Chart) SVG() (string, error) {
	if err := c.check(); err != nil {
		return "", err
	}
	c = c.cleaned()
	var b strings.Builder
	draw(&b, c, arrange(c))
	return b.String(), nil
}

// Text is the chart in plain sentences without markup: Alt, the axes, one for
// each curve with its first, greatest and last value, one for each line with
// how each curve stands to it, one for each mark. The numbers of curves are
// rounded to four digits. It is empty for a chart that SVG refuses.
func (c Chart) Text() string {
	if c.check() != nil {
		return ""
	}
	return c.cleaned().told()
}

// cleaned is the chart with texts that can be drawn and no empty name where a
// name is needed.
func (c Chart) cleaned() Chart {
	c.Title, c.Alt = clean(c.Title), clean(c.Alt)
	c.X, c.Y = c.X.cleaned(), c.Y.cleaned()
	curves := make([]Curve, len(c.Curves))
	for i, v := range c.Curves {
		v.Label = clean(v.Label)
		curves[i] = v
	}
	lines := make([]Line, len(c.Lines))
	for i, l := range c.Lines {
		l.Label = or(clean(l.Label), with(exact(l.Y), c.Y.Unit))
		lines[i] = l
	}
	marks := make([]Mark, len(c.Marks))
	for i, m := range c.Marks {
		m.Label = or(clean(m.Label), with(exact(m.X), c.X.Unit))
		marks[i] = m
	}
	c.Curves, c.Lines, c.Marks = curves, lines, marks
	return c
}

func (a Axis) cleaned() Axis {
	a.Label, a.Unit = clean(a.Label), clean(a.Unit)
	return a
}

// suffix is what stands after the label of an axis.
func (a Axis) suffix() string {
	inside := a.Unit
	if a.Log {
		inside = strings.TrimPrefix(inside+", log scale", ", ")
	}
	if inside == "" {
		return ""
	}
	return " (" + inside + ")"
}

// name is what the label of an axis says in full.
func (a Axis) name() string { return strings.TrimSpace(a.Label + a.suffix()) }

func or(s, other string) string {
	if s == "" {
		return other
	}
	return s
}
