package chart

import (
	"math"
	"strings"
	"testing"

	"etchbound/schemas/nearly"
)

func someBars() map[string]Bars {
	none := math.NaN()
	return map[string]Bars{
		"stacked": {ID: "s", Title: "Where it is", X: Axis{Label: "Amount", Unit: "g"},
			Kinds: []string{"pot", "drum", "tubes"},
			Rows: []Row{{Label: "1 charge", Parts: []Part{{0, 2, none, 0}}, Text: "2 g"},
				{Label: "2 transfer of a long name that wraps twice and more", Parts: []Part{{0, 0.5, none, 0}, {0.5, 2, none, 1}}},
				{Label: "3 rest"}}},
		"ranges": {ID: "r", Title: "Air", X: Axis{Label: "Hydrogen fluoride", Unit: "ppm", Log: true},
			Rows: []Row{{Label: "step 1", Parts: []Part{{1e-6, 0.02, 3e-4, 0}}},
				{Label: "step 5", Parts: []Part{{4e-4, 15, 0.3, 0}}}},
			Lines: []Line{{0.5, "ceiling"}, {3, "over 15 min, a name of some length"}, {30, "immediately dangerous to " +
				"life or health"}}},
		"cold": {ID: "c", Title: "Heat", X: Axis{Label: "Heat", Unit: "kJ"},
			Rows: []Row{{Label: "1", Parts: []Part{{-2.3, 0, none, 1}}, Text: "-2.2 (-2.3 to -2.0)"},
				{Label: "2", Parts: []Part{{0, 8, none, 0}}, Text: "7.9 (7.2 to 8.7)"}}},
	}
}

// A bar lies where the ticks say, no text covers another or leaves the picture, and the
// words say every part.
func TestBars(t *testing.T) {
	for name, c := range someBars() {
		s, err := c.SVG()
		if err != nil {
			t.Fatal(name, err)
		}
		p := read(t, s)
		for i, a := range p.texts {
			b := a.box()
			if b.left < 0 || b.top < 0 || b.right > p.wide || b.bottom > p.high {
				t.Errorf("%s: %q leaves the picture: %v of %v", name, a.s, b, p.wide)
			}
			for _, other := range p.texts[i+1:] {
				if b.overlaps(other.box()) {
					t.Errorf("%s: %q covers %q", name, a.s, other.s)
				}
			}
		}
		for _, r := range c.Rows {
			if len(r.Parts) > 0 && !strings.Contains(c.Text(), r.Label+": ") {
				t.Errorf("%s: %q is not told in %q", name, r.Label, c.Text())
			}
		}
		if strings.Contains(s, "NaN") || strings.Contains(s, "Inf") {
			t.Errorf("%s: a number that is none", name)
		}
	}
}

// By hand: of an axis from 0 to 10 broken at 1, what lies before 1 takes two fifths, and
// half of what lies behind it three tenths more.
func TestABrokenAxis(t *testing.T) {
	c := Chart{ID: "b", Title: "Broken", X: Axis{Label: "Time", Unit: "h", Break: 1}, Y: celsius,
		Curves: []Curve{over("Vessel", 0, 10, 101, hump(20, 30, 0.5))}}
	p := arrange(c)
	for _, want := range []struct{ v, part float64 }{{0, 0}, {0.5, 0.2}, {1, 0.4}, {5.5, 0.7}, {10, 1}} {
		if got := p.x.part(want.v); !nearly.To(got, want.part, 1e-12) {
			t.Errorf("%v lies at %v, want %v", want.v, got, want.part)
		}
	}
	if s := svg(t, c); !strings.Contains(s, `stroke-dasharray="1 3"`) {
		t.Error("the break is not drawn")
	}
	c.X.Break = 4 // long enough to be seen: not broken
	if got := arrange(c).x.part(4); !nearly.To(got, 0.4, 1e-12) || arrange(c).x.brk != 0 {
		t.Errorf("4 of 10 lies at %v", got)
	}
}

// What cannot be drawn is refused.
func TestBarsThatCannotBe(t *testing.T) {
	for name, c := range map[string]Bars{
		"no row":    {ID: "x"},
		"no ID":     {Rows: []Row{{Label: "a"}}},
		"backwards": {ID: "x", Rows: []Row{{Label: "a", Parts: []Part{{2, 1, math.NaN(), 0}}}}},
		"no number": {ID: "x", Rows: []Row{{Label: "a", Parts: []Part{{0, math.NaN(), math.NaN(), 0}}}}},
		"no log":    {ID: "x", X: Axis{Log: true}, Rows: []Row{{Label: "a", Parts: []Part{{0, 1, math.NaN(), 0}}}}},
	} {
		if _, err := c.SVG(); err == nil {
			t.Errorf("%s: drawn", name)
		}
	}
}

// The names of limits that have room neither all at the left of their lines nor all at the
// right are still crossed by none.
func TestNoLimitCrossesTheNameOfAnother(t *testing.T) {
	for _, label := range []string{"step 2", "step 2, in part", "the second step, of which a part is known"} {
		c := Bars{ID: "air", Title: "Air", X: Axis{Label: "In air", Unit: "ppm", Log: true},
			Rows: []Row{{Label: label, Parts: []Part{{0.005, 4, math.NaN(), 0}}}}, Lines: []Line{{Y: 0.5,
				Label: "0.5 ppm, TLV over 8 h"}, {Y: 2, Label: "2 ppm, peak of twice the limit over 15 min"},
				{Y: 30, Label: "30 ppm, immediately dangerous to life or health"}}}
		p := c.arrange()
		for _, f := range p.flags {
			for _, g := range p.flags {
				if g.row > f.row && g.at > f.from && g.at < f.from+width(f.text, letters) {
					t.Errorf("%s: the line of %s crosses %s", label, g.text, f.text)
				}
			}
		}
	}
}
