package quantity

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Parts are the pieces of a written quantity, in the unit it was written in.
// Low and High are NaN where no range was given.
type Parts struct {
	X, Low, High float64
	Unit         string // as written; empty for a bare number
	unitAt       int    // runes before the unit
}

// Split takes "10 (9 to 11) g" apart without asking what the unit means.
func Split(text string) (Parts, error) {
	p, e := split(text)
	if e != nil {
		return p, e
	}
	return p, nil
}

func split(text string) (Parts, *Error) {
	p := Parts{Low: math.NaN(), High: math.NaN()}
	body := strings.TrimLeft(text, blanks)
	skipped := len(text) - len(body)
	x, n, e := scanNumber(body)
	if e != nil {
		e.Text, e.Offset = text, runes(text[:skipped])
		return p, e
	}
	p.X = x
	rest := strings.TrimLeft(body[n:], blanks)
	if strings.HasPrefix(rest, "(") {
		if p.Low, p.High, rest, e = scanRange(rest); e != nil {
			e.Text, e.Offset = text, runes(text[:len(text)-len(rest)])
			return p, e
		}
	}
	p.Unit = strings.TrimRight(rest, blanks)
	p.unitAt = runes(text[:len(text)-len(rest)])
	if p.Low > p.X || p.X > p.High || p.Low > p.High {
		return p, &Error{Reason: ErrRange, Text: text, Found: strings.TrimSpace(text[:len(text)-len(rest)]),
			What: "a range that does not hold its value", Hint: "write value (low to high), with low <= value <= high"}
	}
	return p, nil
}

const rangeForm = "write the range as value (low to high), with the unit behind it"

const blanks = " \t\u00a0\u202f"

func runes(s string) int { return utf8.RuneCountInString(s) }

// scanRange reads "(9 to 11)" and gives what follows it. On an error the rest
// is where the trouble begins.
func scanRange(s string) (low, high float64, rest string, e *Error) {
	inner, rest, closed := strings.Cut(s[1:], ")")
	lo, hi, ok := strings.Cut(inner, " to ")
	if !ok {
		lo, hi, ok = strings.Cut(inner, "\u2013")
	}
	if !closed || !ok {
		return 0, 0, s, &Error{Reason: ErrRange, Found: s, What: "no range", Hint: rangeForm}
	}
	if low, e = wholeNumber(lo); e == nil {
		high, e = wholeNumber(hi)
	}
	if e != nil {
		if e.Hint == "" {
			e.Hint = rangeForm
		}
		return 0, 0, s, e
	}
	return low, high, strings.TrimLeft(rest, blanks), nil
}

func wholeNumber(s string) (float64, *Error) {
	s = strings.Trim(s, blanks)
	v, n, e := scanNumber(s)
	if e == nil && n != len(s) {
		e = &Error{Reason: ErrNumber, Found: s, What: "more than a number"}
	}
	return v, e
}

// Parse reads a quantity of one of the dimensions; of any where none is named.
// The text is a plain decimal number, a range in brackets if wanted, and a
// unit: "40 mL", "1.5e3 Pa", "10 (9 to 11) g". Only Count and None go without
// a unit. Pressures are gauge. The error is an *Error.
func Parse(text string, dims ...Dimension) (Value, error) {
	v, e := parse(text, dims)
	if e != nil {
		if e.Text == "" {
			e.Text = text
		}
		if e.Accepted == "" {
			e.Accepted = Accepted(dims...)
		}
		return Value{}, e
	}
	return v, nil
}

func parse(text string, dims []Dimension) (Value, *Error) {
	p, e := split(text)
	if e != nil {
		return Value{}, e
	}
	u, e := p.find(dims)
	if e != nil {
		return Value{}, e
	}
	v := Value{SI: u.toSI(p.X), Low: u.toSI(p.Low), High: u.toSI(p.High), Dim: u.dim,
		Text: strings.Join(strings.Fields(text), " "), Set: true}
	if e := believable(v, p, u); e != nil {
		return Value{}, e
	}
	return v, nil
}

// find settles which unit was meant.
func (p Parts) find(dims []Dimension) (*unit, *Error) {
	if p.Unit == "" {
		for _, d := range dims {
			if d == Count || d == None {
				return unitless(d), nil
			}
		}
		if len(dims) == 0 {
			return unitless(None), nil
		}
		return nil, &Error{Reason: ErrNoUnit, What: "a number without a unit",
			Found: shortest(p.X), Hint: p.itsUnit(dims)}
	}
	if u := find(p.Unit, dims); u != nil {
		return u, nil
	}
	e := &Error{Reason: ErrUnit, Found: p.Unit, What: "not a unit known here", Offset: p.unitAt}
	if other := lookup(p.Unit); len(other) > 0 {
		e.Reason = ErrDimension
		e.What = "the unit of " + other[0].dim.Words()
	}
	e.Hint = unitHint(p, dims)
	return nil, e
}

func unitless(d Dimension) *unit {
	i := slices.IndexFunc(units, func(u unit) bool { return u.dim == d })
	return &units[i]
}

// itsUnit asks for the unit that was left out: 6 may be minutes or hours, and a
// number up to one a share of one.
func (p Parts) itsUnit(dims []Dimension) string {
	hint := "write the unit that is meant: " + AnyUnit(dims...)
	if p.X > 0 && p.X <= 1 && (has(dims, Fraction) || has(dims, MassFraction)) {
		hint += "; a share of one is written in percent"
	}
	return hint
}

func (u *unit) toSI(x float64) float64 { return x*u.mul/u.div + u.add }

// smallest is the least amount that is not nothing, in SI: a picogram of powder.
// Far below it, products of what a route states leave the range of numbers.
const smallest = 1e-15

// believable refuses values that can only be slips: negative amounts, more than
// all of a whole, temperatures below absolute zero.
func believable(v Value, p Parts, u *unit) *Error {
	d := dimensions[v.Dim]
	e := &Error{Reason: ErrSize, Found: strings.TrimSpace(shortest(p.X) + " " + p.Unit)}
	least, most := v.SI, v.SI
	if !math.IsNaN(v.Low) {
		least, most = v.Low, v.High
	}
	switch {
	case math.IsInf(v.SI, 0) || p.X != 0 && v.SI == 0 && u.add == 0:
		e.Reason, e.What = ErrNumber, "outside the range of numbers that can be held"
	case least < d.floor && v.Dim == Temperature:
		e.What = "below absolute zero"
	case least < d.floor:
		e.What = "less than nothing: " + strings.TrimPrefix(strings.TrimPrefix(d.words, "an "), "a ") +
			" cannot be negative here"
	case p.X != 0 && u.add == 0 && math.Abs(v.SI) < smallest:
		e.What = "less than can be meant"
		e.Hint = "write 0 where there is none"
	case most > d.ceiling:
		e.What = "more than can be meant"
		e.Hint = "the most accepted is " + strings.TrimSpace(shortest(u.fromSI(d.ceiling))+" "+u.name)
	case v.Dim == Count && p.X != math.Trunc(p.X):
		e.What = "not a whole number"
	default:
		return nil
	}
	return e
}

func shortest(x float64) string {
	if a := math.Abs(x); a != 0 && (a < 1e-4 || a >= 1e9) {
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}
