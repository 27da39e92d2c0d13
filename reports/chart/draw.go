package chart

import (
	"math"
	"sort"
	"strings"
)

// draw writes the picture: paper, grid, lines, curves, then what names them.
func draw(b *strings.Builder, c Chart, p plan) {
	open(b, c.ID, c.Title, c.told(), p.height)
	drawBands(b, c, p)
	drawAxes(b, c, p)
	drawBreak(b, p)
	drawFlags(b, p)
	for _, l := range c.Lines {
		stroke(b, []point{{p.left, p.placeY(l.Y)}, {p.right, p.placeY(l.Y)}}, ink, "1.2", "")
	}
	for i := range c.Curves {
		drawCurve(b, c, p, i)
	}
	for i := range c.Curves {
		drawMarkers(b, c, p, i)
	}
	for _, e := range p.ends {
		drawEnd(b, c, p, e)
	}
	b.WriteString("</svg>\n")
}

func drawAxes(b *strings.Builder, c Chart, p plan) {
	for _, t := range p.y.ticks {
		y := p.placeY(t.v)
		stroke(b, []point{{p.left, y}, {p.right, y}}, hair, "0.7", "")
		write(b, t.label, point{p.left - 8, y + 4.7}, "end")
	}
	for _, t := range p.ticksX() {
		x := p.placeX(t.v)
		stroke(b, []point{{x, p.top}, {x, p.bottom}}, hair, "0.7", "")
		stroke(b, []point{{x, p.bottom}, {x, p.bottom + 5}}, ink, "1", "")
		write(b, t.label, point{x, p.bottom + 21}, "middle")
	}
	stroke(b, []point{{p.left, p.top}, {p.left, p.bottom}, {p.right, p.bottom}}, ink, "1", "")
	drawNameX(b, c, p)
}

// drawNameX names the X axis under its middle, or as near to it as it fits.
func drawNameX(b *strings.Builder, c Chart, p plan) {
	name := c.X.fitted()
	half := width(name, letters) / 2
	x := max(min((p.left+p.right)/2, pictureWidth-pad-half), pad+half)
	write(b, name, point{x, p.bottom + 41}, "middle")
}

// drawFlags sets the name of the Y axis and the events with their lines.
func drawFlags(b *strings.Builder, p plan) {
	for i, f := range p.flags {
		y := p.baseline(f.row)
		if i > 0 {
			stroke(b, []point{{f.at, y - 9}, {f.at, p.bottom}}, soft, "1", "3 3")
		}
		write(b, f.text, point{f.from, y}, "start")
	}
}

func drawCurve(b *strings.Builder, c Chart, p plan, i int) {
	v := c.Curves[i]
	points := make([]point, len(v.X))
	for k := range v.X {
		points[k] = point{p.placeX(v.X[k]), p.placeY(v.Y[k])}
	}
	if len(points) > 1 {
		stroke(b, thin(points), tintOf(i), "2.2", dashOf(i))
	}
}

// marks reports whether a curve has markers. A curve alone needs none, but one
// that is hardly more than a point would not be seen without.
func (c Chart) marks(p plan, i int) bool {
	x := c.Curves[i].X
	return len(c.Curves) > 1 || p.placeX(x[len(x)-1])-p.placeX(x[0]) < 2
}

// drawMarkers sets markers on points of the data, staggered from curve to curve
// so that they do not cover one another.
func drawMarkers(b *strings.Builder, c Chart, p plan, i int) {
	if !c.marks(p, i) {
		return
	}
	v := c.Curves[i]
	for _, k := range marked(p.x, v.X, i, len(c.Curves)) {
		stamp(b, i, point{p.placeX(v.X[k]), p.placeY(v.Y[k])})
	}
}

// marked are the points of a curve that get a marker: all of a few, else five
// spaced as evenly on paper as the points allow, and the last.
func marked(s scale, x []float64, curve, curves int) []int {
	const few, some = 8, 5
	var out []int
	if len(x) <= few {
		for k := range x {
			out = append(out, k)
		}
		return out
	}
	from, to := s.part(x[0]), s.part(x[len(x)-1])
	for n := range some {
		part := (float64(n) + (float64(curve)+0.5)/float64(curves)) / some
		goal := from + float64(part*(to-from))
		k := min(sort.Search(len(x), func(k int) bool { return s.part(x[k]) >= goal }), len(x)-1)
		if len(out) == 0 || out[len(out)-1] != k {
			out = append(out, k)
		}
	}
	return out
}

// drawEnd names a curve or a line beside the plot, with a sample of it. A curve
// that ends before the plot does is joined to its name by the sample alone.
func drawEnd(b *strings.Builder, c Chart, p plan, e end) {
	x := p.right + leader
	if c.reaches(p, e) {
		tint, thick := soft, "0.8"
		if e.curve < 0 && math.Abs(e.want-e.at) < 1 {
			tint, thick = ink, "1.2" // the line itself, going on
		}
		stroke(b, []point{{p.right, e.want}, {x, e.at}}, tint, thick, "")
	}
	drawSample(b, c, p, e)
	first := e.at - lineStep*float64(len(e.lines)-1)/2 + 4.7
	for i, l := range e.lines {
		write(b, l, point{x + sample + sampleGap, first + lineStep*float64(i)}, "start")
	}
}

// reaches reports whether what is named goes to the right end of the plot.
func (c Chart) reaches(p plan, e end) bool {
	if e.curve < 0 {
		return true
	}
	x := c.Curves[e.curve].X
	return p.right-p.placeX(x[len(x)-1]) < 2
}

// drawSample draws a piece of what is named.
func drawSample(b *strings.Builder, c Chart, p plan, e end) {
	x := p.right + leader
	line := []point{{x, e.at}, {x + sample, e.at}}
	if e.curve < 0 {
		stroke(b, line, ink, "1.2", "")
		return
	}
	if len(c.Curves[e.curve].X) > 1 {
		stroke(b, line, tintOf(e.curve), "2.2", dashOf(e.curve))
	}
	if c.marks(p, e.curve) {
		stamp(b, e.curve, point{x + sample/2, e.at})
	}
}
