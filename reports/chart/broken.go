package chart

import "strings"

// early is the share of a broken axis that what lies before the break takes.
const early = 0.4

// breaks reports whether an axis is broken between two values: only where what lies
// before the break would else be less than a fifth of it.
func (a Axis) breaks(lo, hi float64) bool {
	return !a.Log && a.Break != 0 && a.Break > lo && a.Break < hi && (a.Break-lo) < (hi-lo)/5
}

// brokenAt is a scale of two pieces, each with ticks of its own.
func brokenAt(brk, lo, hi, room float64) scale {
	s := scale{lo: lo, hi: hi, brk: brk}
	for n, piece := range [][2]float64{{lo, brk}, {brk, hi}} {
		part := early
		if n == 1 {
			part = 1 - early
		}
		var of scale
		for k := 5; k >= 2; k-- {
			of = linear(piece[0], piece[1], k, false)
			if float64(len(of.ticks))*(widestTick(of.ticks)+14) <= room*part {
				break
			}
		}
		for _, t := range of.ticks {
			if n == 0 || t.v > brk {
				s.ticks = append(s.ticks, t)
			}
		}
	}
	return s
}

// drawBreak marks where the X axis is broken.
func drawBreak(b *strings.Builder, p plan) {
	if p.x.brk == 0 {
		return
	}
	x := p.placeX(p.x.brk)
	stroke(b, []point{{x, p.top}, {x, p.bottom}}, soft, "0.8", "1 3")
	for _, dx := range []float64{-2.5, 2.5} {
		stroke(b, []point{{x + dx - 2.5, p.bottom + 5}, {x + dx + 2.5, p.bottom - 5}}, ink, "1.4", "")
	}
}

// drawBands fills what lies between a curve and the far edge of what it may be.
func drawBands(b *strings.Builder, c Chart, p plan) {
	for i, v := range c.Bands {
		if i >= len(c.Curves) || len(v.X) < 2 {
			continue
		}
		var edge, back []point
		for k := range v.X {
			edge = append(edge, point{p.placeX(v.X[k]), p.placeY(v.Y[k])})
		}
		of := c.Curves[i]
		for k := len(of.X) - 1; k >= 0; k-- {
			back = append(back, point{p.placeX(of.X[k]), p.placeY(of.Y[k])})
		}
		edge = thin(edge)
		b.WriteString(`<path d="` + path(append(edge, back...)) + `Z" fill="` + haze + `" stroke="none"/>` + "\n")
		stroke(b, edge, tintOf(i), "0.8", "1.5 2")
	}
}
