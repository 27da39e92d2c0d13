package chart

import (
	"math"
	"slices"
	"strings"
	"testing"

	"etchbound/schemas/nearly"
)

func TestIsAPictureOfItsOwn(t *testing.T) {
	seen := map[string]string{}
	allowed := []string{"svg", "title", "desc", "rect", "path", "text"}
	for name, c := range hard() {
		s := svg(t, c)
		p := read(t, s)
		for e := range p.names {
			if !slices.Contains(allowed, e) {
				t.Errorf("%s: element %s", name, e)
			}
		}
		for _, a := range p.attrs {
			if n := a.Name.Local; n == "style" || n == "class" || n == "href" || strings.HasPrefix(n, "on") ||
				strings.Contains(a.Value, "url(") {
				t.Errorf("%s: attribute %s=%q", name, n, a.Value)
			}
		}
		if strings.Count(s, "://") != 1 || strings.Contains(s, "NaN") || strings.Contains(s, "Inf") {
			t.Errorf("%s: a reference or a number that is none", name)
		}
		if len(p.ids) != 2 || p.labelled != strings.Join(p.ids, " ") || p.title != clean(c.Title) || p.desc != c.Text() ||
			p.desc == "" {
			t.Errorf("%s: ids %q, labelled by %q, title %q, desc %q", name, p.ids, p.labelled, p.title, p.desc)
		}
		for _, id := range p.ids {
			if other, ok := seen[id]; ok {
				t.Errorf("%s and %s share the id %s", name, other, id)
			}
			seen[id] = name
		}
	}
}

func TestSameChartSameBytes(t *testing.T) {
	for name, c := range hard() {
		first := svg(t, c)
		for range 5 {
			if svg(t, hard()[name]) != first {
				t.Fatalf("%s differs", name)
			}
		}
	}
}

// The caller's chart is only read.
func TestLeavesTheDataAlone(t *testing.T) {
	c := hard()["escape"]
	svg(t, c)
	if want := hard()["escape"]; c.Curves[0].Label != want.Curves[0].Label || c.Lines[0] != want.Lines[0] ||
		c.Marks[0] != want.Marks[0] {
		t.Error("a label of the caller was changed")
	}
}

// What is drawn is compared with the data by the numbers printed at the ticks:
// one unit is a quarter of a millimetre on paper.
func TestCurvesLieWhereTheTicksSay(t *testing.T) {
	for _, name := range []string{"plain", "large", "small", "offset", "extreme", "log", "log both", "log narrow",
		"log wide", "dense", "crowd", "many marks", "short curves", "constant", "two points"} {
		c := hard()[name]
		p := read(t, svg(t, c))
		x, y := p.rulers(t, c)
		if !nearly.To(y.at0, p.axis[1].y, 0.1) || !nearly.To(y.at1, p.axis[0].y, 0.1) {
			t.Errorf("%s: the Y axis from %v to %v is labelled from %v to %v", name, p.axis[1].y, p.axis[0].y, y.at0, y.at1)
		}
		if len(p.curves) != len(c.Curves) {
			t.Fatalf("%s: %d curves drawn of %d", name, len(p.curves), len(c.Curves))
		}
		for i, v := range c.Curves {
			var data []point
			for k := range v.X {
				data = append(data, point{x.at(v.X[k]), y.at(v.Y[k])})
			}
			rising := slices.IsSortedFunc(p.curves[i], func(a, b point) int { return int(math.Copysign(1, a.x-b.x)) })
			if a, b := stray(data, p.curves[i]), stray(p.curves[i], data); a > 1 || b > 1 || !rising && name != "dense" {
				t.Errorf("%s, curve %d: data off the curve by %.2f, curve off the data by %.2f, rising %v", name, i, a, b, rising)
			}
		}
		for i, l := range c.Lines {
			if got := p.lines[i][0].y; !nearly.To(got, y.at(l.Y), 0.1) || got != p.lines[i][1].y {
				t.Errorf("%s, line %d at %v instead of %v", name, i, got, y.at(l.Y))
			}
		}
		if len(p.marks) != len(c.Marks) {
			t.Errorf("%s: %d marks of %d", name, len(p.marks), len(c.Marks))
		}
		for _, m := range c.Marks {
			if !slices.ContainsFunc(p.marks, func(v []point) bool { return math.Abs(v[0].x-x.at(m.X)) < 0.1 }) {
				t.Errorf("%s: no mark at %v", name, m.X)
			}
		}
	}
}

// stray is how far the worst of some points lies from a run of lines.
func stray(points, run []point) float64 {
	worst := 0.0
	step := max(len(points)/300, 1)
	for i := 0; i < len(points); i += step {
		worst = max(worst, far(points[i], run))
	}
	return worst
}

func TestExtremesSurviveThinning(t *testing.T) {
	c := hard()["dense"]
	s := svg(t, c)
	p := read(t, s)
	x, y := p.rulers(t, c)
	top, low := extremes(c.Curves[0].Y)
	if c.Curves[0].Y[top] != 4 {
		t.Fatal("the test has lost its peak")
	}
	for _, k := range []int{0, top, low, len(c.Curves[0].X) - 1} {
		want := point{x.at(c.Curves[0].X[k]), y.at(c.Curves[0].Y[k])}
		// Places are printed to a hundredth; a tenth is left for the ticks.
		if !slices.ContainsFunc(p.curves[0], func(q point) bool { return math.Hypot(q.x-want.x, q.y-want.y) < 0.1 }) {
			t.Errorf("point %d is lost", k)
		}
	}
	if n := len(p.curves[0]); n > 4*(pictureWidth+1) || len(s) > 60000 {
		t.Errorf("%d points, %d bytes", n, len(s))
	}
}

// One column of 101 points keeps its first, highest, lowest and last, and a
// level run its ends.
func TestThin(t *testing.T) {
	var column []point
	for i := range 101 {
		column = append(column, point{3 + float64(i)/200, 50})
	}
	column[40].y, column[70].y = 10, 90
	if got := thin(column); !slices.Equal(got, []point{column[0], column[40], column[70], column[100]}) {
		t.Error(got)
	}
	if got := thin([]point{{0, 1}, {5, 1}, {9, 1}, {12, 1}, {20, 2}}); !slices.Equal(got,
		[]point{{0, 1}, {12, 1}, {20, 2}}) {
		t.Error(got)
	}
}

func TestNoTextCoversAnother(t *testing.T) {
	for name, c := range hard() {
		p := read(t, svg(t, c))
		for i, a := range p.texts {
			b := a.box()
			if b.left < 0 || b.top < 0 || b.right > p.wide || b.bottom > p.high {
				t.Errorf("%s: %q leaves the picture: %v", name, a.s, b)
			}
			if a.size < letters {
				t.Errorf("%s: %q is too small", name, a.s)
			}
			for _, other := range p.texts[i+1:] {
				if b.overlaps(other.box()) {
					t.Errorf("%s: %q covers %q", name, a.s, other.s)
				}
			}
			for _, m := range p.marks {
				if b.overlaps(box{m[0].x, m[0].y, m[1].x, m[1].y}) {
					t.Errorf("%s: the line of an event crosses %q", name, a.s)
				}
			}
		}
	}
}

// Names beside the plot stand in the order of what they name, so that nothing
// that joins them crosses, and no lower than the plot.
func TestNamesBesideThePlot(t *testing.T) {
	for name, c := range hard() {
		c = c.cleaned()
		p := arrange(c)
		for i, e := range p.ends {
			if e.at+e.height()/2 > p.bottom+0.01 || i > 0 && (e.want < p.ends[i-1].want || e.at <= p.ends[i-1].at) {
				t.Errorf("%s: %q at %v for %v", name, e.lines, e.at, e.want)
			}
			if e.curve < 0 {
				continue
			}
			if y := c.Curves[e.curve].Y; e.want != p.placeY(y[len(y)-1]) ||
				strings.Join(e.lines, " ")[:1] != c.called(e.curve)[:1] {
				t.Errorf("%s: %q stands for the end of another curve", name, e.lines)
			}
		}
	}
}

// A short label of an event is never cut, even at the right end.
func TestEventsKeepTheirNames(t *testing.T) {
	c := hard()["many marks"]
	p := read(t, svg(t, c))
	for _, m := range c.Marks {
		if !slices.ContainsFunc(p.texts, func(w words) bool { return w.s == m.Label }) {
			t.Errorf("%q is cut", m.Label)
		}
	}
}

// Markers stand on points of the data, each on its own.
func TestMarked(t *testing.T) {
	gap := []float64{0, 1, 2, 3, 4, 5, 6, 7, 8, 100}
	for curve := range 3 {
		got := marked(scale{lo: 0, hi: 100}, gap, curve, 3)
		if !slices.Equal(got, slices.Compact(slices.Clone(got))) || !slices.Contains(got, 9) {
			t.Error(got)
		}
	}
	if got := marked(scale{lo: 0, hi: 9}, []float64{0, 4, 9}, 1, 2); !slices.Equal(got, []int{0, 1, 2}) {
		t.Error(got)
	}
}

// The check of overlaps finds one where there is one.
func TestOverlapIsSeen(t *testing.T) {
	a := words{s: "abc", x: 10, y: 10, size: 13}
	if !a.box().overlaps(words{s: "d", x: 25, y: 16, size: 13}.box()) ||
		a.box().overlaps(words{s: "d", x: 10, y: 30, size: 13}.box()) {
		t.Error("overlaps are not told from gaps")
	}
}

func TestTextIsEscaped(t *testing.T) {
	c := hard()["escape"]
	s := svg(t, c)
	p := read(t, s)
	for _, want := range []string{`<x> ("&")`, "</svg><script> (&amp;)", "<A&B>", `"C"`, "a<b",
		"a & b > c\ufffd"} {
		if !slices.ContainsFunc(p.texts, func(w words) bool { return w.s == want }) {
			t.Errorf("%q is not in the picture", want)
		}
	}
	if strings.Contains(s, "<script") || strings.Count(s, "</svg>") != 1 || strings.ContainsAny(s, "\x00\x1b\ufffe") {
		t.Error("markup or a control character got through")
	}
	if !strings.Contains(p.desc, "a < b & c > d.") {
		t.Error(p.desc)
	}
}

func TestIdsDiffer(t *testing.T) {
	ids := []string{"a", "a b", "a_20b", "a.b", "a/b", "a@2", "a_402", "ä", "a-title", `"><x`, "A"}
	seen := map[string]string{}
	for _, id := range ids {
		for _, part := range []string{"title", "desc"} {
			got := idOf(id, part)
			if other, ok := seen[got]; ok || strings.ContainsAny(got, " \"<>&'\t\n") {
				t.Errorf("%q gives %q, as %q does", id, got, other)
			}
			seen[got] = id
		}
	}
}

// Curves have no colour and no two of the first 42 look the same.
func TestCurvesDifferWithoutColour(t *testing.T) {
	seen := map[string]bool{}
	for i := range len(dashes) * len(shapes) {
		seen[dashOf(i)+"|"+shapeOf(i)] = true
	}
	if len(seen) != 42 {
		t.Errorf("%d looks", len(seen))
	}
	for name, c := range hard() {
		p := read(t, svg(t, c))
		for _, a := range p.attrs {
			if v := a.Value; len(v) == 4 && v[0] == '#' && (v[1] != v[2] || v[2] != v[3]) || len(v) == 7 && v[0] == '#' &&
				(v[1:3] != v[3:5] || v[3:5] != v[5:7]) {
				t.Errorf("%s: %s is no grey", name, v)
			}
		}
	}
}

func TestAPointIsSeen(t *testing.T) {
	for _, name := range []string{"point", "nought", "tiny"} {
		if p := read(t, svg(t, hard()[name])); p.stamps == 0 {
			t.Errorf("%s: no marker", name)
		}
	}
	if p := read(t, svg(t, hard()["plain"])); p.stamps != 0 {
		t.Error("a curve alone has markers")
	}
}

func TestErrors(t *testing.T) {
	good := func() Chart {
		return Chart{ID: "a", Curves: []Curve{{"v", []float64{1, 2}, []float64{3, 4}}}, Lines: []Line{{5, ""}},
			Marks: []Mark{{6, ""}}}
	}
	svg(t, good())
	for _, c := range []struct {
		want  string
		spoil func(*Chart)
	}{
		{"no ID", func(c *Chart) { c.ID = "" }},
		{"no curve", func(c *Chart) { c.Curves = nil }},
		{`curve 1 "v": no points`, func(c *Chart) { c.Curves[0] = Curve{Label: "v"} }},
		{"2 values of X and 1 of Y", func(c *Chart) { c.Curves[0].Y = []float64{3} }},
		{"point 2: Y is NaN", func(c *Chart) { c.Curves[0].Y[1] = math.NaN() }},
		{"point 1: Y is +Inf", func(c *Chart) { c.Curves[0].Y[0] = math.Inf(1) }},
		{"point 1: X is -Inf", func(c *Chart) { c.Curves[0].X[0] = math.Inf(-1) }},
		{"point 1: X is NaN", func(c *Chart) { c.Curves[0].X[0] = math.NaN() }},
		{"point 2: Y is 1e+301", func(c *Chart) { c.Curves[0].Y[1] = 1e301 }},
		{"point 2: X does not rise, 1 after 1", func(c *Chart) { c.Curves[0].X[1] = 1 }},
		{"point 2: X does not rise, 0 after 1", func(c *Chart) { c.Curves[0].X[1] = 0 }},
		{"point 1: Y is 0, and a logarithmic axis", func(c *Chart) { c.Y.Log, c.Curves[0].Y[0] = true, 0 }},
		{"point 1: X is -1, and a logarithmic axis", func(c *Chart) { c.X.Log, c.Curves[0].X[0] = true, -1 }},
		{`line 1 "": Y is NaN`, func(c *Chart) { c.Lines[0].Y = math.NaN() }},
		{`line 1 "": Y is -5, and a logarithmic`, func(c *Chart) { c.Y.Log, c.Lines[0].Y = true, -5 }},
		{`mark 1 "": X is +Inf`, func(c *Chart) { c.Marks[0].X = math.Inf(1) }},
	} {
		bad := good()
		c.spoil(&bad)
		s, err := bad.SVG()
		if err == nil || !strings.Contains(err.Error(), c.want) || s != "" || bad.Text() != "" {
			t.Errorf("want %q, got %v", c.want, err)
		}
	}
}
