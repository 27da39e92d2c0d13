package chart

import (
	"cmp"
	"encoding/xml"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// picture is what the tests read back from a drawn chart.
type picture struct {
	names         map[string]int // elements by name
	ids           []string
	attrs         []xml.Attr
	labelled      string
	title, desc   string
	wide, high    float64
	texts         []words
	axis          []point
	curves, marks [][]point // curves are wide lines inside the plot
	lines         [][]point // level lines inside the plot
	stamps        int
}

// words are one text of the picture.
type words struct {
	s, anchor string
	x, y      float64
	size      float64
	heavy     bool
}

// box is the paper a text covers.
type box struct{ left, top, right, bottom float64 }

func (w words) box() box {
	wide := width(w.s, w.size)
	if w.heavy {
		wide *= bold
	}
	left := w.x
	switch w.anchor {
	case "end":
		left -= wide
	case "middle":
		left -= wide / 2
	}
	return box{left, w.y - 0.78*w.size, left + wide, w.y + 0.24*w.size}
}

func (a box) overlaps(b box) bool {
	return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

var (
	raised  = regexp.MustCompile(`^(-?)(?:([0-9.]+)·)?10([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)$`)
	lowered = strings.NewReplacer("⁻", "-", "⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6",
		"⁷", "7", "⁸", "8", "⁹", "9")
)

func number(t *testing.T, s string) float64 {
	t.Helper()
	if raised.MatchString(s) { // 1.2·10⁻⁵ and 10⁷
		m := raised.FindStringSubmatch(s)
		s = m[1] + cmp.Or(m[2], "1") + "e" + lowered.Replace(m[3])
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatalf("%q is no number", s)
	}
	return v
}

// vertices are the points of a path of straight lines.
func vertices(t *testing.T, d string) []point {
	t.Helper()
	var out []point
	for _, p := range strings.FieldsFunc(d, func(r rune) bool { return r == 'M' || r == 'L' }) {
		x, y, _ := strings.Cut(p, " ")
		out = append(out, point{number(t, x), number(t, y)})
	}
	return out
}

func svg(t *testing.T, c Chart) string {
	t.Helper()
	s, err := c.SVG()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// read parses a picture with the strict reader of XML.
func read(t *testing.T, s string) picture {
	t.Helper()
	p := picture{names: map[string]int{}}
	d := xml.NewDecoder(strings.NewReader(s))
	for {
		token, err := d.Token()
		if token == nil {
			if err.Error() != "EOF" {
				t.Fatal(err)
			}
			return p
		}
		if e, ok := token.(xml.StartElement); ok {
			p.element(t, d, e)
		}
	}
}

func (p *picture) element(t *testing.T, d *xml.Decoder, e xml.StartElement) {
	t.Helper()
	p.names[e.Name.Local]++
	p.attrs = append(p.attrs, e.Attr...)
	a := map[string]string{}
	for _, v := range e.Attr {
		a[v.Name.Local] = v.Value
	}
	if id, ok := a["id"]; ok {
		p.ids = append(p.ids, id)
	}
	switch e.Name.Local {
	case "svg":
		p.labelled = a["aria-labelledby"]
		f := strings.Fields(a["viewBox"])
		p.wide, p.high = number(t, f[2]), number(t, f[3])
	case "title":
		p.title = content(t, d)
	case "desc":
		p.desc = content(t, d)
	case "text":
		p.texts = append(p.texts, words{s: content(t, d), anchor: a["text-anchor"], x: number(t, a["x"]),
			y: number(t, a["y"]), size: number(t, a["font-size"]), heavy: a["font-weight"] == "700"})
	case "path":
		p.path(t, a)
	}
}

func (p *picture) path(t *testing.T, a map[string]string) {
	t.Helper()
	if a["transform"] != "" {
		p.stamps++
		return
	}
	v := vertices(t, a["d"])
	inPlot := len(p.axis) == 0 || v[0].x < p.axis[2].x
	switch {
	case len(v) == 3 && len(p.axis) == 0:
		p.axis = v
	case a["stroke-width"] == "2.2" && inPlot:
		p.curves = append(p.curves, v)
	case a["stroke-dasharray"] == "3 3":
		p.marks = append(p.marks, v)
	case a["stroke-width"] == "1.2" && inPlot:
		p.lines = append(p.lines, v)
	}
}

func content(t *testing.T, d *xml.Decoder) string {
	t.Helper()
	token, err := d.Token()
	if err != nil {
		t.Fatal(err)
	}
	s, _ := token.(xml.CharData)
	return string(s)
}

// ruler turns a value into a place by what is printed at two ticks.
type ruler struct {
	v0, at0, v1, at1 float64
	log              bool
}

func (r ruler) at(v float64) float64 {
	f := func(v float64) float64 { return v }
	if r.log {
		f = math.Log10
	}
	return r.at0 + (r.at1-r.at0)*(f(v)-f(r.v0))/(f(r.v1)-f(r.v0))
}

// rulers reads the two axes off the printed tick labels.
func (p picture) rulers(t *testing.T, c Chart) (x, y ruler) {
	t.Helper()
	var alongX, alongY []words
	for _, w := range p.texts {
		switch {
		case w.anchor == "end":
			alongY = append(alongY, w)
		case w.anchor == "middle" && w.y < p.axis[1].y+30:
			alongX = append(alongX, w)
		}
	}
	if len(alongX) < 2 || len(alongY) < 2 {
		t.Fatalf("%d tick labels on X and %d on Y", len(alongX), len(alongY))
	}
	a, b := alongX[0], alongX[len(alongX)-1]
	x = ruler{number(t, a.s), a.x, number(t, b.s), b.x, c.X.Log}
	a, b = alongY[0], alongY[len(alongY)-1]
	// 4.7 is the way from the tick down to the foot of its letters.
	y = ruler{number(t, a.s), a.y - 4.7, number(t, b.s), b.y - 4.7, c.Y.Log}
	return x, y
}

// far is the distance of a point from a run of straight lines.
func far(q point, run []point) float64 {
	best := math.Hypot(q.x-run[0].x, q.y-run[0].y)
	for i := 1; i < len(run); i++ {
		a, b := run[i-1], run[i]
		dx, dy := b.x-a.x, b.y-a.y
		part := 0.0
		if n := dx*dx + dy*dy; n > 0 {
			part = max(0, min(1, ((q.x-a.x)*dx+(q.y-a.y)*dy)/n))
		}
		best = min(best, math.Hypot(q.x-a.x-part*dx, q.y-a.y-part*dy))
	}
	return best
}
