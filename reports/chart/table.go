package chart

import (
	"math"
	"slices"
)

// Values are some points of a chart as a table has them: the ends and the greatest value
// of each curve, its events, and more between, at most about n. At each X it has the
// value of each curve there, on the straight line between its points, NaN where a curve
// does not reach.
func (c Chart) Values(n int) (x []float64, y [][]float64) {
	if c.check() != nil {
		return nil, nil
	}
	for _, v := range c.Curves {
		top, _ := extremes(v.Y)
		x = append(x, v.X[0], v.X[top], v.X[len(v.X)-1])
	}
	for _, m := range c.Marks {
		x = append(x, m.X)
	}
	lo, hi := span(c.valuesX(), c.X.Log)
	s := scale{lo: lo, hi: hi, log: c.X.Log}
	if c.X.breaks(lo, hi) {
		s.brk = c.X.Break
	}
	for i := 1; len(x) < n && i < n; i++ {
		if v := s.value(float64(i) / float64(n)); v > lo && v < hi {
			x = append(x, v)
		}
	}
	slices.Sort(x)
	x = slices.Compact(x)
	for _, at := range x {
		row := make([]float64, len(c.Curves))
		for i, v := range c.Curves {
			row[i] = v.at(at)
		}
		y = append(y, row)
	}
	return x, y
}

// at is the value of a curve at x.
func (v Curve) at(x float64) float64 {
	i, there := slices.BinarySearch(v.X, x)
	switch {
	case there:
		return v.Y[i]
	case i == 0 || i == len(v.X):
		return math.NaN()
	}
	return v.Y[i-1] + (x-v.X[i-1])/(v.X[i]-v.X[i-1])*(v.Y[i]-v.Y[i-1])
}
