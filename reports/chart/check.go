package chart

import (
	"errors"
	"fmt"
	"math"
)

// most is the greatest size of a number: twice it is still finite. least is the
// smallest width of a linear axis and the beginning of a logarithmic one.
const most, least = 1e300, 1e-300

// check says what keeps the chart from being drawn.
func (c Chart) check() error {
	if c.ID == "" {
		return errors.New("chart: no ID")
	}
	if err := c.checkParts(); err != nil {
		return fmt.Errorf("chart %q: %w", c.ID, err)
	}
	return nil
}

func (c Chart) checkParts() error {
	if len(c.Curves) == 0 {
		return errors.New("no curve")
	}
	for i, v := range c.Curves {
		if err := v.check(c.X.Log, c.Y.Log); err != nil {
			return fmt.Errorf("curve %d %q: %w", i+1, v.Label, err)
		}
	}
	for i, v := range c.Bands {
		if err := v.check(c.X.Log, c.Y.Log); err != nil {
			return fmt.Errorf("band %d: %w", i+1, err)
		}
	}
	for i, l := range c.Lines {
		if err := drawable(l.Y, c.Y.Log); err != nil {
			return fmt.Errorf("line %d %q: Y %w", i+1, l.Label, err)
		}
	}
	for i, m := range c.Marks {
		if err := drawable(m.X, c.X.Log); err != nil {
			return fmt.Errorf("mark %d %q: X %w", i+1, m.Label, err)
		}
	}
	return nil
}

func (v Curve) check(logX, logY bool) error {
	if len(v.X) != len(v.Y) {
		return fmt.Errorf("%d values of X and %d of Y", len(v.X), len(v.Y))
	}
	if len(v.X) == 0 {
		return errors.New("no points")
	}
	for i := range v.X {
		if err := drawable(v.X[i], logX); err != nil {
			return fmt.Errorf("point %d: X %w", i+1, err)
		}
		if err := drawable(v.Y[i], logY); err != nil {
			return fmt.Errorf("point %d: Y %w", i+1, err)
		}
		if i > 0 && v.X[i] <= v.X[i-1] {
			return fmt.Errorf("point %d: X does not rise, %v after %v", i+1, v.X[i], v.X[i-1])
		}
	}
	return nil
}

func drawable(v float64, log bool) error {
	switch {
	case math.IsNaN(v), math.IsInf(v, 0):
		return fmt.Errorf("is %v and not a finite number", v)
	case math.Abs(v) > most:
		return fmt.Errorf("is %v and beyond %v", v, most)
	case log && v < least:
		return fmt.Errorf("is %v, and a logarithmic axis begins at %v", v, least)
	}
	return nil
}
