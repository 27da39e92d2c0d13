package number

import (
	"math"

	"etchbound/reports/digits"
	"etchbound/reports/words"
)

// Thing is what is written: a unit of the catalogue, and how its kind is read.
type Thing struct {
	Unit   string
	Digits int     // significant digits at most; 0: three
	Low    bool    // danger lies at the low end
	Never  float64 // value, in Unit, that says that it is not reached; 0: none
	Molar  float64 // g/mol of what is in the air; 0: not known, and ppm stays
	Units  Units
}

// Ends are a value and its range in the unit of a Thing; NaN where one is not known. What
// has no range has it three times.
type Ends struct{ Value, Low, High float64 }

// Single is a value without a range.
func Single(v float64) Ends { return Ends{v, v, v} }

// Significant digits: of what is known well, and of what is known to no better than
// wide, the width of its range over its value.
const (
	fine   = 3
	coarse = 2
	wide   = 0.1
	// spans is how many times the low end the high end is from where a range is said as
	// two bounds.
	spans = 10
	// least is what is written of a number in its unit; below it is "less than".
	least = 1e-4
	// million is what many are counted in.
	million = 1e6
	// parts is of how many one part is the least that is written of a plain share.
	parts = 1e9
	// last is the last place behind the point, as a power of ten.
	last = -5
)

// form is how one figure is written: its unit and the place of its last digit.
type form struct {
	Thing
	unit
	digits int
	whole  bool // a temperature, written in no more than whole degrees of rounding
}

// form of a thing by its ends.
func (t Thing) form(e Ends) form {
	f := form{Thing: t, unit: t.Units.chosen(t.Unit, t.Molar), whole: t.Unit == "degC" || t.Unit == "K"}
	lead := e.lead(t)
	next, ok := in(f.unit.name, t.Units.In)
	if !ok {
		next = unitOf(f.unit.name, lead*f.unit.per)
	}
	f.unit = unit{next.name, f.unit.per * next.per}
	f.digits = fine
	if w := math.Abs(e.High - e.Low); w > wide*math.Abs(lead) {
		f.digits = coarse
	}
	if t.Digits > 0 {
		f.digits = min(f.digits, t.Digits)
	}
	return f
}

// lead is the number by which the unit is chosen: the value, and without one the high end.
func (e Ends) lead(t Thing) float64 {
	for _, v := range []float64{e.Value, e.High, e.Low} {
		if digits.Is(v) && v != 0 {
			return v
		}
	}
	return 0
}

// never reports whether a value says that it is not reached.
func (t Thing) never(v float64) bool { return t.Never > 0 && v >= t.Never*(1-1e-9) }

// number is a value in the unit of the form, without it.
func (f form) number(v float64, way int) string {
	switch {
	case !digits.Is(v):
		return words.Of("value.unknown")
	case f.never(v):
		return f.notReached()
	}
	if x := digits.Round9(v * f.per); x != 0 && math.Abs(x) < least {
		return f.tiny(x)
	}
	return f.to(v, f.step(v, way), way)
}

// step is the place of the last digit that is written of v.
func (f form) step(v float64, way int) int {
	x := v * f.per
	step := digits.StepOf(x, f.digits)
	if r := digits.Rounded(x, step, way); r != 0 {
		step = max(step, digits.StepOf(r, f.digits)) // 9.996 to three digits is 10.0
	}
	if f.whole {
		return min(step, 0)
	}
	return max(step, last)
}

// to is v to a place, in the unit of the form; in millions where it would be a power of ten.
func (f form) to(v float64, step, way int) string { return toStep(v*f.per, step, way) }

func toStep(v float64, step, way int) string {
	if digits.Is(v) && math.Abs(v) >= million {
		return words.Of("number.million", digits.ToStep(v/million, step-6, way))
	}
	return digits.ToStep(v, step, way)
}

// count is how many there are, to some digits.
func count(v float64, most, way int) string { return toStep(v, digits.StepOf(v, most), way) }

// beside is an end of a range, to no finer a place than the number it stands beside.
func (f form) beside(of, v float64, way int) string {
	if !digits.Is(v) || f.never(v) {
		return f.number(v, way)
	}
	if v == 0 || of == 0 || math.IsNaN(of) || f.never(of) {
		return f.number(v, way)
	}
	return f.to(v, max(f.step(v, way), f.step(of, 0)), way)
}

// tiny is what is written of a number too small to be read: what it is less than, or of
// a plain share one part in how many.
func (f form) tiny(x float64) string {
	switch counted := f.unit.name == "1" || f.unit.name == ""; {
	case counted && parts*math.Abs(x) < 1-1e-9:
		return words.Of("number.less", words.Of("number.part", count(parts, 1, 0)))
	case counted:
		return words.Of("number.part", count(1/math.Abs(x), coarse, 0))
	}
	return words.Of("number.less", digits.Readable(least, -1))
}

// notReached says of a time until when it is looked for.
func (f form) notReached() string {
	days := f.Never
	if f.Unit != "d" {
		days /= 1440
	}
	if days != 1 {
		return words.Of("time.never_days", Nearest(days, fine))
	}
	return words.Of("time.never_day")
}

// with is a value with its unit.
func (f form) with(v float64, way int) string {
	if !digits.Is(v) || f.never(v) {
		return f.number(v, way)
	}
	return With(f.number(v, way), f.unit.name)
}

// Bound is one number with its unit: rounded up for way 1, down for way -1.
func (t Thing) Bound(v float64, way int) string { return t.form(Single(v)).with(v, way) }

// Beside is Bound in the unit in which a number of the same kind is read that it stands beside.
func (t Thing) Beside(v, of float64) string {
	f := t.form(Single(v))
	if other := t.form(Single(of)); other.unit.name == share {
		f = other
	}
	return f.with(v, 0)
}

// Value is the value of a figure with its unit.
func (t Thing) Value(e Ends) string { return t.form(e).with(e.Value, 0) }

// Range is the range of a figure without its unit. Both ends are rounded outward, so that
// the end where danger lies never looks better than it was computed.
func (t Thing) Range(e Ends) string {
	return t.form(e).ends(e, func(f form, v float64, way int) string { return f.number(v, way) })
}

// Whole is the value with its range: 63.1 K (56 to 70); where it spans decades the two
// ends alone.
func (t Thing) Whole(e Ends) string {
	f := t.form(e)
	switch {
	case e.alike(f):
		return f.with(e.Value, 0)
	case math.IsNaN(e.Value) && math.IsNaN(e.Low) && math.IsNaN(e.High):
		return words.Of("value.unknown")
	case t.never(e.Value) && !math.IsNaN(e.Low):
		return words.Of("time.soonest", f.at(e.Low).with(e.Low, -1), f.with(e.Value, 0))
	case e.span() && !t.never(e.High):
		return f.ends(e, form.with)
	}
	return words.Of("range.about", f.with(e.Value, 0), f.ends(e, func(f form, v float64, way int) string {
		return f.number(v, way)
	}))
}

// alike reports whether both ends are written as the value is.
func (e Ends) alike(f form) bool {
	return digits.Round9(e.Low) == digits.Round9(e.High) || f.with(e.Low, -1) == f.with(e.High, 1) && !math.IsNaN(e.Low)
}

// span reports whether a range spans decades.
func (e Ends) span() bool { return e.Low >= 0 && e.High >= spans*e.Low && e.High > 0 }

// ends are both ends in words, each written by write; where they are of different units
// each with its own.
func (f form) ends(e Ends, write func(f form, v float64, way int) string) string {
	switch {
	case e.alike(f):
		return words.Of("range.none")
	case math.IsNaN(e.Low) && math.IsNaN(e.High):
		return words.Of("value.unknown")
	case f.never(e.High):
		return words.Of("time.soonest", f.at(e.Low).with(e.Low, -1), f.notReached())
	case f.Unit == "min" && f.at(e.Low).unit != f.at(e.High).unit && e.Low > 0: // minutes stay minutes
		return words.Of("range", f.at(e.Low).with(e.Low, -1), f.at(e.High).with(e.High, 1))
	case !e.span():
		return words.Of("range", f.beside(e.Value, e.Low, -1), f.beside(e.Value, e.High, 1))
	}
	return f.apart(e, write)
}

// apart are the ends of a range that spans decades, the end of danger first, with units where
// they are not that of the value.
func (f form) apart(e Ends, write func(f form, v float64, way int) string) string {
	low, high := f.at(e.Low), f.at(e.High)
	other := form.number
	if low.unit != high.unit && e.Low != 0 || high.unit != f.unit {
		write, other = form.with, form.with
	}
	switch {
	case f.Low && isTime(f.unit.name) && digits.Round9(e.Low*low.per) < least:
		return words.Of("range.at_once", high.with(e.High, 1))
	case f.Low:
		return words.Of("range.down", write(low, e.Low, -1), other(high, e.High, 1))
	case e.Low == 0:
		return words.Of("range.up_to", write(high, e.High, 1))
	case digits.Round9(e.Low*low.per) < least:
		return words.Of("range.up", write(high, e.High, 1), words.Of("range.negligible"))
	}
	return words.Of("range.up", write(high, e.High, 1), other(low, e.Low, -1))
}

// at is the form of one end alone.
func (f form) at(v float64) form {
	out := f.Thing.form(Single(v))
	out.digits = min(out.digits, coarse)
	return out
}
