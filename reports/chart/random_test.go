package chart

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"etchbound/schemas/long"
)

// chance is a chart of any size, scale and crowding.
func chance(r *rand.Rand) Chart {
	word := func() string {
		return strings.TrimSpace(strings.Repeat("ab cd ", r.IntN(12)) + strings.Repeat("W", r.IntN(9)))
	}
	size := math.Pow(10, 40*r.Float64()-20)
	c := Chart{ID: "any", Title: word(), X: Axis{Label: word(), Unit: "s", Log: r.IntN(4) == 0},
		Y: Axis{Label: word(), Unit: word(), Log: r.IntN(4) == 0}}
	for range 1 + r.IntN(7) {
		v := Curve{Label: word()}
		x := size * (1 + r.Float64())
		for range 1 + r.IntN(40) {
			v.X, v.Y = append(v.X, x), append(v.Y, size*(0.01+r.Float64()))
			x += size * (0.01 + r.Float64())
		}
		c.Curves = append(c.Curves, v)
	}
	for range r.IntN(5) {
		c.Lines = append(c.Lines, Line{size * (0.01 + 2*r.Float64()), word()})
	}
	for range r.IntN(9) {
		c.Marks = append(c.Marks, Mark{size * (0.5 + 20*r.Float64()), word()})
	}
	return c
}

// No crowd of names makes one cover another or leave the picture.
func TestAnyChartHasRoom(t *testing.T) {
	long.Only(t)
	r := rand.New(rand.NewPCG(5, 6))
	for n := range 400 {
		c := chance(r)
		p := read(t, svg(t, c))
		for i, a := range p.texts {
			b := a.box()
			if b.left < 0 || b.top < 0 || b.right > p.wide || b.bottom > p.high {
				t.Errorf("%d: %q leaves the picture: %v", n, a.s, b)
			}
			if k := slices.IndexFunc(p.texts[i+1:], func(w words) bool { return b.overlaps(w.box()) }); k >= 0 {
				t.Errorf("%d: %q covers %q", n, a.s, p.texts[i+1+k].s)
			}
		}
	}
}
