package number

import (
	"math"

	"etchbound/chemicals"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/reports/digits"
)

// Of is how a quantity of an agent is written: "" for none.
func (u Units) Of(quantity, agent string) Thing {
	q, ok := figure.Lookup(quantity)
	if !ok {
		return Thing{Units: u}
	}
	return Thing{Unit: q.Unit, Digits: q.Digits, Low: q.Danger == figure.Low, Never: float64(q.Never),
		Molar: u.molar(agent), Units: u}
}

// molar is the molar mass of one agent, g/mol, where it is asked for; 0 for none, for
// several and where it is not known.
func (u Units) molar(agent string) float64 {
	if !u.Mass || agent == "" {
		return 0
	}
	s, ok := chemicals.Library().Find(agent)
	if !ok {
		return 0
	}
	m := s.Formula.MolarMass(chemicals.Base(), nil)
	if m.Unknown() {
		return 0
	}
	return m.V
}

// EndsOf are the value and the range of a figure. What remains of a balance that closes
// is rounding of the machine, and 0.
func EndsOf(f *figure.Figure) Ends {
	e := Ends{f.Value.V, f.Low().V, f.High().V}
	for _, x := range []struct {
		to      *float64
		unknown bool
	}{{&e.Value, f.Value.Unknown()}, {&e.Low, f.Low().Unknown()}, {&e.High, f.High().Unknown()}} {
		switch {
		case x.unknown:
			*x.to = math.NaN()
		case f.Quantity == "account.error" && math.Abs(*x.to) < 1e-12:
			*x.to = 0
		}
	}
	return e
}

// Value is the value of a figure with its unit.
func (u Units) Value(f *figure.Figure) string { return u.Of(f.Quantity, f.Agent).Value(EndsOf(f)) }

// Range is the range of a figure without its unit.
func (u Units) Range(f *figure.Figure) string { return u.Of(f.Quantity, f.Agent).Range(EndsOf(f)) }

// Whole is a figure with its range.
func (u Units) Whole(f *figure.Figure) string { return u.Of(f.Quantity, f.Agent).Whole(EndsOf(f)) }

// Danger is the end of the range of a figure where danger lies, rounded to that side.
func (u Units) Danger(f *figure.Figure) string {
	t := u.Of(f.Quantity, f.Agent)
	way := 1
	if t.Low {
		way = -1
	}
	if d := f.Danger(); !d.Unknown() {
		return t.Bound(d.V, way)
	}
	return t.Bound(math.NaN(), way)
}

// stated is how many digits of a limit are written: enough for a tabled one.
const stated = 4

// Limit is the value of a limit on what an agent does, with its unit: not rounded as a
// figure is, since people look it up; one that no document prints, such as a third of 2 ppm,
// or one over a shorter time than it is stated for, was worked out and is never made milder.
func (u Units) Limit(l *limit.Limit, agent string) string { return u.LimitBeside(l, agent, l.Value) }

// LimitBeside is Limit in the unit in which a number of its kind is read that it stands beside.
func (u Units) LimitBeside(l *limit.Limit, agent string, v float64) string {
	t := u.Of(l.Quantity, agent)
	t.Unit = l.Unit
	f := t.form(Single(l.Value))
	if other := t.form(Single(v)); other.unit.name == share {
		f = other
	}
	f.digits = stated
	if l.Origin == limit.Review {
		f.digits = fine
	}
	switch {
	case l.While.Full != 0:
		f.digits = fine
		return f.with(l.Value, -1)
	case l.Unit == "ppm" && digits.Round9(l.Value) != digits.Rounded(l.Value, digits.StepOf(l.Value, stated), 0):
		f.digits = coarse
		return f.with(l.Value, -1)
	}
	return f.with(l.Value, 0)
}

// Margin is what a finding leaves of its limit.
func (u Units) Margin(f *figure.Finding) string {
	return u.Of(f.Figure.Quantity, f.Figure.Agent).Margin(f.Margin, f.Limit.Value)
}

// Amount is one number of a quantity of an agent with its unit: rounded up for way 1,
// down for way -1.
func (u Units) Amount(quantity, agent string, v float64, way int) string {
	return u.Of(quantity, agent).Bound(v, way)
}

// LowEnd is the low end of the range of a figure without its unit.
func (u Units) LowEnd(f *figure.Figure) string {
	e := EndsOf(f)
	return u.Of(f.Quantity, f.Agent).form(e).number(e.Low, -1)
}
