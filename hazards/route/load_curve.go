package route

import (
	"fmt"
	"math"

	"etchbound/chemicals/datum"
	"etchbound/schemas"
	"etchbound/schemas/quantity"
)

// Carrying a curve to another temperature.
const (
	activation  = 60000.0     // J/mol: etching of Ti3AlC2 in HF, the central value of the data
	gasConstant = 8.314462618 // J/mol/K
)

const (
	agreement = 0.10 // by which a stated conversion may be above the curve
	complete  = 0.90 // below which a curve is told of where no conversion is stated
)

// curve reads a measured curve, nil where a part of it was refused.
func (l *loader) curve(n *schemas.Node) *Curve {
	points := n.Get("points")
	if !n.Usable(schemas.Map) || !points.Usable(schemas.List) {
		return nil
	}
	l.aboveZero(n, "temperature")
	c := &Curve{Temperature: n.Value("temperature"), At: n.Path}
	for _, x := range points.Items {
		p := CurvePoint{Time: x.Value("time"), Conversion: x.Value("conversion")}
		if !p.Time.Set || !p.Conversion.Set || !l.risen(x, c.Points, p) {
			return nil
		}
		c.Points = append(c.Points, p)
	}
	return c
}

// risen refuses a point that is not above the one before it, or the start.
func (l *loader) risen(x *schemas.Node, before []CurvePoint, p CurvePoint) bool {
	least := CurvePoint{Time: quantity.Value{Text: "zero"}, Conversion: quantity.Value{Text: "zero"}}
	hint := "leave the start out: nothing is etched at time zero"
	if len(before) > 0 {
		least = before[len(before)-1]
		hint = "list the points as time goes on, and of two within the scatter keep one"
	}
	for _, v := range []struct {
		key     string
		is, was quantity.Value
	}{{"time", p.Time, least.Time}, {"conversion", p.Conversion, least.Conversion}} {
		if lowest(v.is) <= highest(v.was) {
			what := fmt.Sprintf("the %s is %s", v.key, v.is.Text)
			if len(before) > 0 {
				what += ", not above the " + v.was.Text + " of the point before"
			}
			l.refuse(x.Near(v.key), what, "more than "+v.was.Text, hint)
			return false
		}
	}
	return true
}

// lowest and highest are the ends of a value, which is both of them where it has no range.
func lowest(v quantity.Value) float64 {
	if v.HasRange() {
		return v.Low
	}
	return v.SI
}

func highest(v quantity.Value) float64 {
	if v.HasRange() {
		return v.High
	}
	return v.SI
}

// reaches is the conversion after t seconds at the temperature of the curve:
// straight between the points from zero at the start, and beyond the last one at
// the share of the rest per second that its last piece had half-way.
func (c *Curve) reaches(t float64) float64 {
	t0, x0, slope, share := 0.0, 0.0, 0.0, 0.0
	for _, p := range c.Points {
		t1, x1 := p.Time.SI, p.Conversion.SI
		slope = (x1 - x0) / (t1 - t0)
		if t <= t1 {
			return x0 + slope*(t-t0)
		}
		share = slope / (1 - (x0+x1)/2)
		t0, x0 = t1, x1
	}
	return 1 - (1-x0)*math.Exp(-share*(t-t0))
}

// equivalent is the time at the temperature of the curve that does as much as
// the etch, in s. A time before any temperature was set is told by its step.
func (c *Curve) equivalent(etch stretch) (t float64, unset *Step) {
	var at quantity.Value
	for _, s := range etch {
		if s.Temperature.Set {
			at = s.Temperature
		}
		switch d := s.lasts(); {
		case d == 0:
		case !at.Set:
			return math.NaN(), s
		default:
			t += d * math.Exp(-activation/gasConstant*(1/at.SI-1/c.Temperature.SI))
		}
	}
	return t, nil
}

// stated is the conversion that the file states, at the low end of its range,
// in words and where; the node is nil where it states none.
func (r *Route) stated(root *schemas.Node) (n *schemas.Node, low float64, words string) {
	if r.Precursor == nil {
		return nil, math.NaN(), ""
	}
	for _, o := range r.Overrides() {
		if o.ID != datum.Of("etch_conversion", r.Precursor.Phase.Text) {
			continue
		}
		n = root.Get("measured").Get("conversion")
		for _, x := range root.List("data") {
			if x.Path == o.At {
				n = x.Get("value")
			}
		}
		if !math.IsNaN(o.Low) {
			return n, o.Low, "at least " + percent(o.Low)
		}
		return n, o.Value, percent(o.Value)
	}
	return nil, math.NaN(), ""
}

// holdsAgainstCurve refuses a stated conversion that the measured curve does not
// reach in the time and at the temperatures of the etch, and notices a low one
// where none is stated.
func (l *loader) holdsAgainstCurve(root *schemas.Node, r *Route, etch stretch) {
	c, whole := r.Curve, etch.lasts()
	if c == nil || whole == 0 {
		return
	}
	at := root.Get("measured").Get("curve")
	t, unset := c.equivalent(etch)
	if unset != nil {
		l.doubt(at, fmt.Sprintf("the curve is not held against the route: step %d lasts %s at no stated temperature",
			unset.Number, span(unset.lasts())), "give the step its temperature")
		return
	}
	x := c.reaches(t)
	contact := fmt.Sprintf("%s in the liquor, which counts as %s at %s (60 kJ/mol)", span(whole), span(t),
		c.Temperature.Text)
	switch n, low, words := r.stated(root); {
	case n == nil && x < complete-1e-9:
		l.doubt(at, fmt.Sprintf("by the curve %s of the powder is etched in %s: less than 90 %%, and no conversion "+
			"is stated", percent(x), contact), "check the times and temperatures of the steps, or state the conversion")
	case n != nil && x < low-agreement-1e-9:
		l.refuse(n, fmt.Sprintf("a conversion of %s is stated, and by the curve %s of the powder is etched in %s", words,
			percent(x), contact),
			"at most "+percent(x+agreement)+", or a curve, times and temperatures that reach "+percent(low-agreement), "")
	}
}

func percent(x float64) string { return figures(100*x, 3) + " %" }

// agree holds parts of a file against one another. What needs all the steps is
// looked at only where none was refused, so that no fault is told twice.
func (l *loader) agree(root *schemas.Node, r *Route) {
	if !schemas.Refused(l.problems) {
		etch := r.etch()
		l.holdAfterAddition(root, etch)
		l.holdsAgainstCurve(root, r, etch)
	}
	l.reach(root, r)
}
