package chart

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
)

// Bars is a picture of level bars, one row under the other along a common axis.
type Bars struct {
	ID, Title, Alt string
	X              Axis
	Kinds          []string // what the parts of bars are of, told by their shade in the order of Shades
	Rows           []Row
	Lines          []Line // upright here, at Y on the axis
}

// Row is one bar, or several parts of it. Names are at its left, Text behind its end.
type Row struct {
	Label, Text string
	Parts       []Part
}

// Part is a piece of a bar from one value to another, in the unit of the axis. Mark is a
// value within it that counts most; NaN for none.
type Part struct {
	From, To, Mark float64
	Kind           int
}

// Shades is how many kinds of parts can be told apart.
const Shades = 6

const (
	rowHeight = 19.0
	barHeight = 11.0
	leastPart = 1.5 // width at which a part is still seen
)

func (c Bars) check() error {
	if c.ID == "" || len(c.Rows) == 0 {
		return errors.New("chart: bars without an ID or a row")
	}
	for _, r := range c.Rows {
		for _, p := range r.Parts {
			for _, v := range []float64{p.From, p.To} {
				if err := drawable(v, c.X.Log); err != nil {
					return fmt.Errorf("chart %q: bar %q: %w", c.ID, r.Label, err)
				}
			}
			if p.Kind < 0 || p.Kind >= Shades || p.To < p.From || p.Mark < p.From || p.Mark > p.To {
				return fmt.Errorf("chart %q: bar %q: a part that cannot be drawn", c.ID, r.Label)
			}
		}
	}
	for _, l := range c.Lines {
		if err := drawable(l.Y, c.X.Log); err != nil {
			return fmt.Errorf("chart %q: line %q: %w", c.ID, l.Label, err)
		}
	}
	return nil
}

// bed is where the bars lie.
type bed struct {
	left, right, top, bottom, height float64
	x                                scale
	names                            [][]string
	flags                            []flag
	keys                             []flag
}

func (p *bed) at(v float64) float64 { return p.left + float64(p.x.part(v)*(p.right-p.left)) }

// arrange finds the place of everything: names at the left, the limits named in rows
// above the bars, and what the shades are of above those.
func (c Bars) arrange() bed {
	var p bed
	values := [][]float64{}
	for _, r := range c.Rows {
		p.names = append(p.names, wrap(clean(r.Label), letters, nameRoom, 2))
		p.left = max(p.left, widest(p.names[len(p.names)-1], letters))
		for _, x := range r.Parts {
			values = append(values, []float64{x.From, x.To})
		}
	}
	for _, l := range c.Lines {
		values = append(values, []float64{l.Y})
	}
	text := 0.0
	for _, r := range c.Rows {
		text = max(text, width(clean(r.Text), letters))
	}
	p.left += pad + 8
	p.right = pictureWidth - max(leastSide, text+pad+6)
	lo, hi := span(values, c.X.Log)
	if !c.X.Log {
		lo, hi = withZero(lo, hi)
		lo = min(lo, max(0, lo))
	}
	lines := Chart{X: c.X}
	p.x = lines.scaleX(lo, hi, p.right-p.left)
	p.keys = c.keys()
	p.place(c)
	p.bottom = p.top + p.rowsHigh()
	p.height = p.bottom + below
	return p
}

// nameRoom is the widest name of a bar.
const nameRoom = 120.0

func (p *bed) rowsHigh() float64 {
	h := 0.0
	for _, n := range p.names {
		h += max(rowHeight, lineStep*float64(len(n))+4)
	}
	return h
}

// keys are the names of the shades, in as many rows as they need.
func (c Bars) keys() []flag {
	var out []flag
	x, row := pad, 0
	for i, k := range c.Kinds {
		text := clip(clean(k), letters, pictureWidth-2*pad-20)
		wide := 18 + width(text, letters) + 14
		if x > pad && x+wide > pictureWidth {
			x, row = pad, row+1
		}
		out = append(out, flag{text: text, at: float64(i), from: x, row: row})
		x += wide
	}
	return out
}

// place sets the names of the limits in rows above the bars so that no line crosses a text:
// from the lowest row up, each time one that no line of those above it passes through, at the
// left of its line before the right. The lines of those that have a row pass below it.
func (p *bed) place(c Bars) {
	marks := make([]Mark, len(c.Lines))
	for i, l := range c.Lines {
		marks[i] = Mark{l.Y, clip(clean(l.Label), letters, pictureWidth-2*pad)}
	}
	left := byPlace(marks)
	for row := 0; len(left) > 0; row++ {
		n, from := p.clear(marks, left)
		i := left[n]
		p.flags = append(p.flags, flag{text: marks[i].Label, at: p.at(marks[i].X), from: from, row: row})
		left = slices.Delete(left, n, n+1)
	}
	rows := 0
	for _, k := range p.keys {
		rows = max(rows, k.row+1)
	}
	p.top = pad + rowStep*float64(rows) + rowStep*float64(len(marks)) + 8
}

// clear is the first of some marks whose name has room in the picture beside its line and
// between the lines of the others, and where the name begins; the last, as far right as it
// goes, where there is none.
func (p *bed) clear(marks []Mark, left []int) (n int, from float64) {
	free := func(n int, from float64) bool {
		to := from + width(marks[left[n]].Label, letters)
		return from >= pad && to <= pictureWidth-pad && !slices.ContainsFunc(left, func(i int) bool {
			return p.at(marks[i].X) > from-flagGap/2 && p.at(marks[i].X) < to+flagGap/2
		})
	}
	for n, i := range left {
		if from := p.at(marks[i].X) - flagGap - width(marks[i].Label, letters); free(n, from) {
			return n, from
		}
	}
	for n := len(left) - 1; n >= 0; n-- {
		if from := p.at(marks[left[n]].X) + flagGap; free(n, from) {
			return n, from
		}
	}
	n = len(left) - 1
	return n, min(p.at(marks[left[n]].X)+flagGap, pictureWidth-pad-width(marks[left[n]].Label, letters))
}

// SVG is the picture as one svg element; see Chart.SVG.
func (c Bars) SVG() (string, error) {
	if err := c.check(); err != nil {
		return "", err
	}
	p := c.arrange()
	var b strings.Builder
	open(&b, c.ID, clean(c.Title), c.Text(), p.height)
	for _, k := range p.keys {
		y := pad + rowStep*float64(k.row) + 12
		shade(&b, int(k.at), k.from, y-10, 13)
		write(&b, k.text, point{k.from + 18, y}, "start")
	}
	for _, t := range p.x.ticks {
		x := p.at(t.v)
		stroke(&b, []point{{x, p.top}, {x, p.bottom}}, hair, "0.7", "")
	}
	base := p.top - 10
	for _, f := range p.flags {
		y := base - rowStep*float64(f.row)
		stroke(&b, []point{{f.at, y + 4}, {f.at, p.bottom}}, ink, "1.2", "5 3")
		write(&b, f.text, point{f.from, y}, "start")
	}
	c.drawRows(&b, &p)
	stroke(&b, []point{{p.left, p.top}, {p.left, p.bottom}, {p.right, p.bottom}}, ink, "1", "")
	c.drawAxis(&b, &p)
	b.WriteString("</svg>\n")
	return b.String(), nil
}

func (c Bars) drawRows(b *strings.Builder, p *bed) {
	y := p.top
	for i, r := range c.Rows {
		high := max(rowHeight, lineStep*float64(len(p.names[i]))+4)
		mid := y + high/2
		for k, n := range p.names[i] {
			write(b, n, point{p.left - 8, mid + 4.7 + lineStep*(float64(k)-float64(len(p.names[i])-1)/2)}, "end")
		}
		end := p.left
		for _, x := range r.Parts {
			from, to := p.at(x.From), max(p.at(x.To), p.at(x.From)+leastPart)
			shade(b, x.Kind, from, mid-barHeight/2, to-from)
			if !math.IsNaN(x.Mark) {
				stroke(b, []point{{p.at(x.Mark), mid - barHeight/2 - 2}, {p.at(x.Mark), mid + barHeight/2 + 2}}, ink, "2.2", "")
			}
			end = max(end, to)
		}
		write(b, clean(r.Text), point{end + 5, mid + 4.7}, "start")
		y += high
	}
}

func (c Bars) drawAxis(b *strings.Builder, p *bed) {
	free := math.Inf(-1)
	for _, t := range p.x.ticks {
		x, half := p.at(t.v), width(t.label, letters)/2
		stroke(b, []point{{x, p.bottom}, {x, p.bottom + 5}}, ink, "1", "")
		if x-half >= free && x+half <= pictureWidth {
			write(b, t.label, point{x, p.bottom + 21}, "middle")
			free = x + half + 8
		}
	}
	name := c.X.cleaned().fitted()
	half := width(name, letters) / 2
	write(b, name, point{max(min((p.left+p.right)/2, pictureWidth-pad-half), pad+half), p.bottom + 41}, "middle")
}

// shade fills a piece of a bar: each kind in a lightness of its own, with a rim.
func shade(b *strings.Builder, kind int, x, y, wide float64) {
	b.WriteString(`<rect x="` + coordinate(x) + `" y="` + coordinate(y) + `" width="` + coordinate(wide) + `" height="` +
		coordinate(barHeight) + `" fill="` + shades[kind%Shades] + `" stroke="` + ink + `" stroke-width="0.8"/>` + "\n")
}

// Text is the picture in plain sentences: each bar with its parts, each line.
func (c Bars) Text() string {
	var out []string
	if alt := clean(c.Alt); alt != "" {
		out = append(out, sentence(alt))
	}
	for _, r := range c.Rows {
		var parts []string
		for _, x := range r.Parts {
			s := with(rounded(x.From, x.From)+" to "+rounded(x.To, x.To), c.X.Unit)
			if x.From == 0 {
				s = with(rounded(x.To, x.To), c.X.Unit)
			}
			if x.Kind < len(c.Kinds) {
				s = clean(c.Kinds[x.Kind]) + " " + s
			}
			parts = append(parts, s)
		}
		if len(parts) > 0 {
			out = append(out, sentence(clean(r.Label)+": "+strings.Join(parts, ", ")))
		}
	}
	for _, l := range c.Lines {
		out = append(out, sentence("Line at "+with(rounded(l.Y, l.Y), c.X.Unit)+", "+clean(l.Label)))
	}
	return strings.Join(out, " ")
}
