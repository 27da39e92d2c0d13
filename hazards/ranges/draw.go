package ranges

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/assess"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/hazards/verdict"
)

// Drawing is the data of a case that have a range, each with its shape, to be
// drawn together any number of times. It is safe for use by several goroutines.
type Drawing struct {
	c    route.Case
	kept *assess.Kept
	vars []variable
}

// NewDrawing finds the data a case reads that have a range: those a review swings,
// in the same groups. Failures are left out of every draw.
func NewDrawing(c route.Case) (*Drawing, error) {
	c.Brief = true
	w := working.NewSheet()
	a := assess.Case(c, w)
	if a.Err != nil {
		return nil, a.Err
	}
	c.Rough = true
	return &Drawing{c, assess.Keep(c, nil), variables(Used(c.Store, w))}, nil
}

// Inputs are what is drawn: a datum, or the name of a group that moves together.
func (d *Drawing) Inputs() []string {
	out := make([]string, len(d.vars))
	for i := range d.vars {
		out[i] = string(d.vars[i].id)
		if g := d.vars[i].rows[0].Group; g != "" {
			out[i] = g
		}
	}
	return out
}

// Drawn is one draw.
type Drawn struct {
	Figures  []figure.Figure // both ends are the value drawn
	Findings []verdict.Told
}

// At assesses the case with every datum at a share of its distribution, 0 to 1,
// one for each input; the rows of a group stand at the same.
func (d *Drawing) At(shares []float64) (Drawn, error) {
	move := map[int]float64{}
	for i := range d.vars {
		for _, row := range d.vars[i].rows {
			move[row.Index] = quantile(row, shares[i])
		}
	}
	c := d.c
	c.Store = c.Store.With(move)
	a := d.kept.Anew(c.Store)
	if a.Err != nil {
		return Drawn{}, a.Err
	}
	for i := range a.Figures {
		f := &a.Figures[i]
		f.SetRange(f.Value.V, f.Value.V)
	}
	return Drawn{a.Figures, verdict.Names(c, a.Figures, &a.Walk, verdict.Traces(a.Figures))}, nil
}

// beyond95 is how many standard deviations lie to either side of 95 %.
const beyond95 = 1.959963984540054

// quantile is the value of a datum below which a share of its distribution lies.
//
//	normal     low and high are its 2.5 and 97.5 %; each side has its own width;
//	           where low is not below zero, no draw is: its lowest 2.5 % lie above
//	           zero, since less than nothing would be a route that cannot be
//	lognormal  the same of the logarithm
//	triangle   from low over the value to high
//	uniform    from low to high
func quantile(d chemicals.Datum, share float64) float64 {
	switch d.Shape {
	case "uniform":
		return d.Low + share*(d.High-d.Low)
	case "triangle":
		if d.High > d.Low {
			return distuv.NewTriangle(d.Low, d.High, math.Min(math.Max(d.Value, d.Low), d.High), nil).Quantile(share)
		}
		return d.Value
	case "lognormal":
		if d.Low > 0 && d.Value > 0 {
			return math.Exp(sided(math.Log(d.Low), math.Log(d.Value), math.Log(d.High), share))
		}
	}
	v := sided(d.Low, d.Value, d.High, share)
	if d.Low >= 0 && share < outside {
		return max(v, d.Low*share/outside)
	}
	return v
}

// outside is the share of a normal datum that lies below its low end.
const outside = 0.025

// sided is a normal distribution that may be wider on one side of its middle.
func sided(low, middle, high, share float64) float64 {
	z := distuv.UnitNormal.Quantile(share)
	if z < 0 {
		return middle + z*(middle-low)/beyond95
	}
	return middle + z*(high-middle)/beyond95
}
