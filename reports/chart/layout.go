package chart

import (
	"math"
	"strings"
)

// Sizes in units of the picture. It is as wide as half a printed page, where letters of
// 13 are 6.5 points high, or a telephone held upright, where they are 10 pixels.
const (
	pictureWidth = 480.0
	pad          = 6.0
	letters      = 13.0
	rowStep      = 17.0 // from row to row above the plot
	lineStep     = 15.0 // from line to line in one label
	plotHeight   = 210.0
	below        = 50.0 // tick labels and the name of the X axis
	leader       = 10.0 // from the plot to the sample of a label
	sample       = 26.0
	sampleGap    = 5.0
	sideRoom     = 118.0 // the widest text beside the plot
	eventRoom    = 175.0 // what the name of an event has right of the plot
	leastSide    = 34.0  // half a tick label goes beyond the plot
)

// plan is where everything of a chart goes.
type plan struct {
	left, right, top, bottom float64 // the plot
	height                   float64 // the picture
	x, y                     scale
	flags                    []flag // above the plot; the first names the Y axis
	ends                     []end  // beside the plot
}

// flag is a label in the rows above the plot.
type flag struct {
	text     string
	at, from float64 // x of the line and of the text
	row      int     // 0 is the lowest
}

// end is a label beside the plot.
type end struct {
	lines    []string
	at, want float64 // y of its middle as placed, and of what it names
	curve    int     // -1 for a horizontal line
}

func (p plan) placeX(v float64) float64 { return p.left + float64(p.x.part(v)*(p.right-p.left)) }
func (p plan) placeY(v float64) float64 { return p.bottom - float64(p.y.part(v)*(p.bottom-p.top)) }

// baseline of a row above the plot: the lowest stands clear of the tick labels.
func (p plan) baseline(row int) float64 { return p.top - 12 - rowStep*float64(row) }

// arrange finds the place of everything. The widths come first, from left to
// right, then the heights, which grow with what must stand above and beside.
func arrange(c Chart) plan {
	p := plan{y: c.scaleY()}
	p.left = pad + widestTick(p.y.ticks) + 8
	lo, hi := span(c.valuesX(), c.X.Log)
	p.x = scale{lo: lo, hi: hi, log: c.X.Log}
	if c.X.breaks(lo, hi) {
		p.x.brk = c.X.Break
	}
	p.ends = c.ends()
	p.right = pictureWidth - max(sideWidth(p.ends), c.overhang(p), leastSide)
	p.x = c.scaleX(lo, hi, p.right-p.left)
	p.flags = c.flags(p)
	rows := 0
	for _, f := range p.flags {
		rows = max(rows, f.row)
	}
	p.top = pad + rowStep*float64(rows+1) + 12
	p.bottom = p.top + max(plotHeight, stacked(p.ends))
	p.height = p.bottom + below
	p.placeEnds(c)
	return p
}

func (c Chart) valuesX() [][]float64 {
	var out [][]float64
	for _, v := range c.Curves {
		out = append(out, []float64{v.X[0], v.X[len(v.X)-1]})
	}
	for _, m := range c.Marks {
		out = append(out, []float64{m.X})
	}
	return out
}

func (c Chart) scaleY() scale {
	var values [][]float64
	for _, v := range c.Curves {
		values = append(values, v.Y)
	}
	for _, v := range c.Bands {
		values = append(values, v.Y)
	}
	for _, l := range c.Lines {
		values = append(values, []float64{l.Y})
	}
	lo, hi := span(values, c.Y.Log)
	if c.Y.Log {
		return logarithmic(lo, hi, 6, true)
	}
	lo, hi = withZero(lo, hi)
	return linear(lo, hi, 6, true)
}

// scaleX has as many ticks as have room for their labels. Its ends are those of
// the data, so that a curve reaches its label.
func (c Chart) scaleX(lo, hi, room float64) scale {
	var s scale
	if c.X.breaks(lo, hi) {
		return brokenAt(c.X.Break, lo, hi, room)
	}
	for n := 8; n >= 3; n-- {
		if s = linear(lo, hi, n, false); c.X.Log {
			s = logarithmic(lo, hi, n, false)
		}
		if float64(len(s.ticks))*(widestTick(s.ticks)+14) <= room {
			break
		}
	}
	return s
}

func widestTick(ticks []tick) float64 {
	w := 0.0
	for _, t := range ticks {
		w = max(w, width(t.label, letters))
	}
	return w
}

// overhang is the room right of the plot that the flags ask for. Moving the
// right end moves the flags too, by their part of the width.
func (c Chart) overhang(p plan) float64 {
	room := 0.0
	for _, m := range c.Marks {
		part := p.x.part(m.X)
		need := min(width(m.Label, letters), eventRoom) + flagGap + pad + 1
		if over := need - float64((1-part)*(pictureWidth-p.left)); part > 0 && over > 0 {
			room = max(room, over/part)
		}
	}
	return min(room, eventRoom+flagGap+pad)
}

// flagGap is from the line of an event to its text.
const flagGap = 4.0

// flags names the Y axis and the events. Texts run to the right of their line.
// One that would run over the line of a later event goes above that event's
// text: so no line crosses a text.
func (c Chart) flags(p plan) []flag {
	out := []flag{{text: c.Y.fitted(), at: pad, from: pad}}
	for _, i := range byPlace(c.Marks) {
		at := p.placeX(c.Marks[i].X)
		text := clip(c.Marks[i].Label, letters, pictureWidth-pad-at-flagGap)
		out = append(out, flag{text: text, at: at, from: at + flagGap})
	}
	for i := len(out) - 2; i >= 0; i-- {
		right := out[i].from + width(out[i].text, letters) + flagGap
		for _, later := range out[i+1:] {
			if later.at < right {
				out[i].row = max(out[i].row, later.row+1)
			}
		}
	}
	return out
}

// fitted is the name of an axis in the width of the picture. The label is cut
// before the unit is.
func (a Axis) fitted() string {
	const room = pictureWidth - 2*pad
	label := clip(a.Label, letters, max(room-width(a.suffix(), letters), 40))
	return clip(strings.TrimSpace(label+a.suffix()), letters, room)
}

// mostLines is in how many lines what stands beside the plot is told.
const mostLines = 6

// stacked is the height of the plot in which all labels beside it fit.
func stacked(ends []end) float64 {
	h := 0.0
	for _, e := range ends {
		h += e.height()
	}
	return h
}

func (e end) height() float64 { return lineStep*float64(len(e.lines)) + 3 }

// ends are the labels of curves and lines, without their places.
func (c Chart) ends() []end {
	var out []end
	for i := range c.Curves {
		if len(c.Curves) > 1 || c.Curves[i].Label != "" {
			out = append(out, end{lines: wrap(c.called(i), letters, sideRoom, mostLines), curve: i})
		}
	}
	for _, l := range c.Lines {
		out = append(out, end{lines: wrap(l.Label, letters, sideRoom, mostLines), curve: -1})
	}
	return out
}

// sideWidth is the room beside the plot.
func sideWidth(ends []end) float64 {
	if len(ends) == 0 {
		return 0
	}
	w := 0.0
	for _, e := range ends {
		w = max(w, widest(e.lines, letters))
	}
	return leader + sample + sampleGap + w + pad
}

// tips are the heights at which curves end and lines lie, in the order of ends.
func (c Chart) tips(p plan) []float64 {
	var out []float64
	for i, v := range c.Curves {
		if len(c.Curves) > 1 || c.Curves[i].Label != "" {
			out = append(out, p.placeY(v.Y[len(v.Y)-1]))
		}
	}
	for _, l := range c.Lines {
		out = append(out, p.placeY(l.Y))
	}
	return out
}

// placeEnds sets every label beside the plot as near to what it names as the
// others allow, in the order of height.
func (p *plan) placeEnds(c Chart) {
	for i, y := range c.tips(*p) {
		p.ends[i].want = y
	}
	sortEnds(p.ends)
	spread(p.ends, p.top, p.bottom)
}

// ticksX are the ticks of the X axis whose labels have room, from the left.
func (p plan) ticksX() []tick {
	var out []tick
	free := math.Inf(-1)
	for _, t := range p.x.ticks {
		half := width(t.label, letters) / 2
		at := p.placeX(t.v)
		if at-half < free || at+half > pictureWidth {
			t.label = ""
		} else {
			free = at + half + 8
		}
		out = append(out, t)
	}
	return out
}
