package chart

import (
	"fmt"
	"math"
	"strings"
)

// told is the text of a chart that was checked and cleaned.
func (c Chart) told() string {
	var out []string
	if c.Alt != "" {
		out = append(out, sentence(c.Alt))
	}
	if y, x := c.Y.name(), c.X.name(); y != "" && x != "" {
		out = append(out, sentence(y+" over "+x))
	}
	for i := range c.Curves {
		out = append(out, c.tellCurve(i))
	}
	for _, l := range c.Lines {
		out = append(out, c.tellLine(l))
	}
	for _, m := range c.Marks {
		out = append(out, sentence("Mark at "+titled(with(rounded(m.X, 0), c.X.Unit), m.Label)))
	}
	return strings.Join(out, " ")
}

// sentence ends s as a sentence.
func sentence(s string) string {
	if strings.HasSuffix(s, ".") || strings.HasSuffix(s, "!") || strings.HasSuffix(s, "?") {
		return s
	}
	return s + "."
}

// called is the name of a curve in text.
func (c Chart) called(i int) string {
	if l := c.Curves[i].Label; l != "" {
		return l
	}
	if len(c.Curves) == 1 {
		return or(c.Y.Label, "The curve")
	}
	return fmt.Sprintf("curve %d", i+1)
}

// tellCurve says where a curve begins, peaks and ends. The least value is told
// where neither end is it, since a curve may turn below as well as above.
func (c Chart) tellCurve(i int) string {
	v, n := c.Curves[i], len(c.Curves[i].X)-1
	top, low := extremes(v.Y)
	wide, high := v.X[n]-v.X[0], v.Y[top]-v.Y[low]
	at := func(k int) string {
		return with(rounded(v.Y[k], high), c.Y.Unit) + " at " + with(rounded(v.X[k], wide), c.X.Unit)
	}
	switch {
	case n == 0:
		return fmt.Sprintf("%s: one point, %s.", c.called(i), at(0))
	case high <= noise*math.Abs(v.Y[top]):
		return fmt.Sprintf("%s: constant, %s and still at %s.", c.called(i), at(0), with(rounded(v.X[n], wide), c.X.Unit))
	}
	least := ""
	if v.Y[low] < min(v.Y[0], v.Y[n]) {
		least = ", least " + at(low)
	}
	return fmt.Sprintf("%s: first %s, greatest %s%s, last %s.", c.called(i), at(0), at(top), least, at(n))
}

// extremes are the places of the greatest and the least value, the first of
// equals.
func extremes(y []float64) (top, low int) {
	for i, v := range y {
		if v > y[top] {
			top = i
		}
		if v < y[low] {
			low = i
		}
	}
	return top, low
}

// tellLine says how each curve stands to a line, without judging which side of
// it is better.
func (c Chart) tellLine(l Line) string {
	said := make([]string, len(c.Curves))
	for i, v := range c.Curves {
		x, met := c.meets(v, l.Y)
		switch {
		case met:
			said[i] = c.called(i) + " first meets it at " + with(rounded(x, v.X[len(v.X)-1]-v.X[0]), c.X.Unit)
		case v.Y[0] > l.Y:
			said[i] = c.called(i) + " stays above it"
		default:
			said[i] = c.called(i) + " stays below it"
		}
	}
	return sentence("Line at " + titled(with(exact(l.Y), c.Y.Unit), l.Label) + ": " + strings.Join(said, "; "))
}

// titled adds a label to a place, unless the label is no more than the place.
func titled(place, label string) string {
	if place == label {
		return place
	}
	return place + ", " + label
}

// meets is the first X at which a curve, drawn as it is with straight lines
// between its points, touches or crosses the height y.
func (c Chart) meets(v Curve, y float64) (x float64, ok bool) {
	for i := range v.Y {
		if v.Y[i] == y {
			return v.X[i], true
		}
		if i > 0 && (v.Y[i-1] > y) != (v.Y[i] > y) {
			return c.between(v, i, y), true
		}
	}
	return 0, false
}

// between is where the piece of a curve that ends at point i has the height y.
func (c Chart) between(v Curve, i int, y float64) float64 {
	up := scale{lo: v.Y[i-1], hi: v.Y[i], log: c.Y.Log}
	along := scale{lo: v.X[i-1], hi: v.X[i], log: c.X.Log}
	return along.value(up.part(y))
}
