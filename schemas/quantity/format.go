package quantity

import (
	"math"
	"strconv"
	"strings"
)

// fromSI gives back the number that was written: the quotient, or the shorter
// decimal beside it that stands for the same SI value.
func (u *unit) fromSI(si float64) float64 {
	if u.mul == 1 && u.div == 1 && u.add == 0 {
		return si
	}
	x := (si - u.add) * u.div / u.mul
	if math.IsNaN(x) || math.IsInf(x, 0) || x == math.Trunc(x) {
		return x
	}
	y, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 15, 64), 64)
	if u.add != 0 {
		// The offset costs digits behind the point, whatever the size of x.
		y = math.Round(x*1e10) / 1e10
	}
	if u.toSI(y) == si {
		return y
	}
	for up, down, n := x, x, 0; n < 4; n++ { // a unit with many digits can lose the last one
		if u.toSI(up) == si {
			return up
		}
		if u.toSI(down) == si {
			return down
		}
		up, down = math.Nextafter(up, math.Inf(1)), math.Nextafter(down, math.Inf(-1))
	}
	return x
}

// In is the value in a unit of its dimension; NaN for a value that was left
// out. A temperature difference is read in K. It panics on a unit that is
// unknown or of another dimension: that is a programmer's mistake.
func (v Value) In(unit string) float64 {
	if !v.Set {
		return math.NaN()
	}
	return v.unit(unit).fromSI(v.SI)
}

// Range is the stated range in a unit, NaN where the writer gave none. It
// panics as In does.
func (v Value) Range(unit string) (low, high float64) {
	if !v.Set {
		return math.NaN(), math.NaN()
	}
	u := v.unit(unit)
	return u.fromSI(v.Low), u.fromSI(v.High)
}

// HasRange reports whether the writer gave a range.
func (v Value) HasRange() bool { return v.Set && !math.IsNaN(v.Low) && !math.IsNaN(v.High) }

// Can reports whether In accepts the unit.
func (v Value) Can(unit string) bool { return find(unit, []Dimension{v.Dim}) != nil }

func (v Value) unit(text string) *unit {
	u := find(text, []Dimension{v.Dim})
	if u == nil {
		panic("quantity: " + strconv.Quote(text) + " is no unit of " + v.Dim.Words())
	}
	return u
}

// Of is x in a unit, as a stated value without a range. Where a unit serves
// several dimensions, dims says which. It panics on an unknown unit.
func Of(x float64, unit string, dims ...Dimension) Value {
	u := find(unit, dims)
	if u == nil {
		panic("quantity: unknown unit " + strconv.Quote(unit))
	}
	v := Value{SI: u.toSI(x), Low: math.NaN(), High: math.NaN(), Dim: u.dim, Set: true}
	v.Text = v.tidy(u.name)
	return v
}

// Unit is the unit the value was written in, in its usual spelling.
func (v Value) Unit() string {
	p, e := split(v.Text)
	if e == nil {
		if u := find(p.Unit, []Dimension{v.Dim}); u != nil && u.name != "1" {
			return u.name
		}
	}
	if list := Units(v.Dim); len(list) > 0 && v.Dim != None {
		return list[0]
	}
	return ""
}

// Times is the value multiplied by k, with its range and its text. It is for
// extensive quantities; temperatures are points and panic.
func (v Value) Times(k float64) Value {
	if !v.Set {
		return v
	}
	if v.Dim == Temperature {
		panic("quantity: a temperature cannot be multiplied")
	}
	unit := v.Unit()
	v.SI, v.Low, v.High = v.SI*k, v.Low*k, v.High*k
	v.Text = v.tidy(unit)
	return v
}

// tidy is the text of a computed value: twelve digits, no trailing zeros.
func (v Value) tidy(unit string) string {
	u := find(unit, []Dimension{v.Dim})
	if u == nil {
		u = unitless(v.Dim)
	}
	for _, x := range []*float64{&v.SI, &v.Low, &v.High} {
		y, err := strconv.ParseFloat(strconv.FormatFloat(u.fromSI(*x), 'g', 12, 64), 64)
		if err == nil {
			*x = u.toSI(y)
		}
	}
	return v.Format(unit, 0)
}

// Format prints the value in a unit with the given number of significant
// digits and its range if there is one; 0 digits means as many as it takes to
// read the same value back.
func (v Value) Format(unit string, digits int) string {
	if !v.Set {
		return ""
	}
	var b strings.Builder
	b.WriteString(Number(v.number(unit, v.SI), digits))
	if v.HasRange() {
		b.WriteString(" (" + Number(v.number(unit, v.Low), digits) + " to " + Number(v.number(unit, v.High), digits) + ")")
	}
	if unit != "" && unit != "1" {
		b.WriteString(" " + unit)
	}
	return b.String()
}

func (v Value) number(unit string, si float64) float64 {
	if unit == "" || unit == "1" {
		return si
	}
	return v.unit(unit).fromSI(si)
}

// String is the text as written.
func (v Value) String() string { return v.Text }

// Number prints x with exactly the given number of significant digits, in plain
// decimals where they are readable; 0 digits means the shortest text that reads
// back as x. A number that is not finite prints as an empty text.
func Number(x float64, digits int) string {
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return ""
	case digits <= 0:
		return shortest(x)
	case x == 0:
		return "0"
	}
	e := strconv.FormatFloat(x, 'e', digits-1, 64)
	power, _ := strconv.Atoi(e[strings.IndexByte(e, 'e')+1:])
	if power < -4 || power > 8 {
		return e
	}
	rounded, _ := strconv.ParseFloat(e, 64)
	return strconv.FormatFloat(rounded, 'f', max(0, digits-1-power), 64)
}
