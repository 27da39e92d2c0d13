package review

import (
	"math"

	"etchbound/reports/chart"
	"etchbound/reports/document"
	"etchbound/reports/words"
	"etchbound/scaling/keeping"
)

// keptCurves draws what is lost and the pressure over the time of the store, a curve a
// condition; nothing where the ways are not traced. Of conditions that go alike the first is
// drawn with the names of the others.
func keptCurves(ways []keeping.Way) []document.Block {
	lost := chart.Chart{ID: "keep-lost-" + ways[0].Place, Title: words.Of("keep.curve_lost"),
		Alt: words.Of("keep.curve_lost"), X: chart.Axis{Label: words.Of("keep.axis_life"), Unit: "d"},
		Y: chart.Axis{Label: words.Of("keep.axis_lost"), Unit: "%"}}
	press := chart.Chart{ID: "keep-gas-" + ways[0].Place, Title: words.Of("keep.curve_pressure"),
		Alt: words.Of("keep.curve_pressure"), X: lost.X,
		Y: chart.Axis{Label: words.Of("keep.axis_pressure"), Unit: "kPa", Log: true}}
	for i := range ways {
		w := &ways[i]
		lost.Curves = drawnWith(lost.Curves, overDays(w, func(p *keeping.Point) float64 { return 100 * p.Lost[0] }))
		press.Curves = drawnWith(press.Curves, atLeast(leastDrawn, overDays(w, func(p *keeping.Point) float64 {
			return p.Pressure[0]
		})))
	}
	return append(drawn(lost), drawn(press)...)
}

// overDays is a curve of a way; without points where any of it is not known.
func overDays(w *keeping.Way, of func(*keeping.Point) float64) chart.Curve {
	c := chart.Curve{Label: keptBy(w)}
	for i := range w.Over {
		y := of(&w.Over[i])
		if math.IsNaN(y) {
			return chart.Curve{}
		}
		c.X, c.Y = append(c.X, w.Over[i].Days), append(c.Y, y)
	}
	return c
}

// atLeast is a curve without what lies below the least that is drawn, and without a vacuum.
func atLeast(least float64, c chart.Curve) chart.Curve {
	out := chart.Curve{Label: c.Label}
	for i, y := range c.Y {
		if y >= least {
			out.X, out.Y = append(out.X, c.X[i]), append(out.Y, y)
		}
	}
	return out
}

// alike is the share by which two curves may differ and still are drawn as one.
const alike = 0.01

// drawnWith adds a curve, or its name to one that goes as it does.
func drawnWith(all []chart.Curve, c chart.Curve) []chart.Curve {
	if len(c.X) == 0 {
		return all
	}
	for i := range all {
		if same(all[i].X, c.X) && same(all[i].Y, c.Y) {
			all[i].Label = words.Of("keep.and", all[i].Label, c.Label)
			return all
		}
	}
	return append(all, c)
}

func same(a, b []float64) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if math.Abs(a[i]-b[i]) > alike*math.Abs(a[i]) {
			return false
		}
	}
	return true
}
