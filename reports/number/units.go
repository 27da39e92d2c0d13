package number

import (
	"fmt"
	"math"
	"strings"
)

// Units are the units a reader chose for what is written in more than one way. The zero
// Units write pressures in kPa and what is in air in ppm.
type Units struct {
	Bar  bool // pressures in bar
	Mass bool // what is in air in mg/m³, where its molar mass is known
	// In is the unit of a ladder that numbers beside each other are written in; "" chooses one
	// for each.
	In string
}

// choices are the words of Choose, each with what it changes.
var choices = []struct {
	word string
	set  func(*Units)
}{
	{"kPa", func(u *Units) { u.Bar = false }}, {"bar", func(u *Units) { u.Bar = true }},
	{"ppm", func(u *Units) { u.Mass = false }}, {"mg/m3", func(u *Units) { u.Mass = true }},
}

// Choices are the words that Choose takes.
func Choices() []string {
	var out []string
	for _, c := range choices {
		out = append(out, c.word)
	}
	return out
}

// Choose are the units named in a list, such as "bar,mg/m3"; "" for the usual ones. A
// word it does not know is an error that says which it takes.
func Choose(list string) (Units, error) {
	var u Units
	for _, word := range strings.FieldsFunc(list, func(r rune) bool { return r == ',' || r == ' ' }) {
		known := false
		for _, c := range choices {
			if strings.EqualFold(c.word, word) {
				c.set(&u)
				known = true
			}
		}
		if !known {
			return Units{}, fmt.Errorf("%q is no unit to choose: accepted are %s", word, strings.Join(Choices(), ", "))
		}
	}
	return u, nil
}

// unit is a unit as it is read and how many of it one of the unit given are.
type unit struct {
	name string
	per  float64
}

// rung is a unit of a ladder: how many of the ladder's first unit it is, and from how
// many of itself on it is used.
type rung struct {
	name     string
	of, from float64
}

// ladders are units of the same kind, the largest first. The last one takes the rest.
var ladders = [][]rung{
	{{"kg", 1, 1}, {"g", 1e-3, 0.1}, {"mg", 1e-6, 0}},
	{{"L", 1, 0.1}, {"mL", 1e-3, 0}},
	{{"L/min", 1, 0.1}, {"mL/min", 1e-3, 0}},
	{{"m3/h", 1, 0.1}, {"L/h", 1e-3, 0}},
	{{"g/min", 1, 1}, {"mg/min", 1e-3, 0}},
	{{"kW", 1, 1}, {"W", 1e-3, 0.1}, {"mW", 1e-6, 0}},
	{{"MJ", 1, 10}, {"kJ", 1e-3, 0.1}, {"J", 1e-6, 0}},
	{{share, 1, 10}, {"ppm", 1e-4, 0}}, // a tenth of the air and more is no trace
	{{"d", 1, 2}, {"h", 1.0 / 24, 2}, {"min", 1.0 / 1440, 1}, {"s", 1.0 / 86400, 0}},
}

// share is the unit of a share of the air; what is given in it is read in it.
const share = "vol%"

// isTime reports whether a unit is one of time.
func isTime(name string) bool { return name == "d" || name == "h" || name == "min" || name == "s" }

// isMass reports whether a unit is one of mass.
func isMass(name string) bool { return name == "kg" || name == "g" || name == "mg" }

// unitOf is the unit in which v, in a unit of the catalogue, is read: grams below a
// kilogram, hours and days above two hours. What is behind "as" stays: g as HF.
func unitOf(name string, v float64) unit {
	base, of, as := strings.Cut(name, " as ")
	if as {
		of = " as " + of
	}
	for _, l := range ladders {
		for _, was := range l {
			if was.name != base || base == share {
				continue
			}
			for i, r := range l {
				if a := math.Abs(v) * was.of / r.of; a >= r.from*(1-1e-9) || i == len(l)-1 {
					if v == 0 || math.IsNaN(v) {
						r = was
					}
					if v == 0 && was.name == "kg" {
						r = l[1] // 0 g
					}
					return unit{r.name + of, was.of / r.of}
				}
			}
		}
	}
	return unit{name, 1}
}

// molarVolume is that of a gas at 25 °C and 101.325 kPa, L/mol.
const molarVolume = 24.4654

// chosen is a unit of the catalogue in the units a reader chose; molar is the molar mass
// of what is in the air, g/mol, 0 where it is not known.
func (u Units) chosen(name string, molar float64) unit {
	kind, gauge, _ := strings.Cut(name, " ")
	switch {
	case u.Bar && kind == "kPa":
		return unit{strings.TrimSpace("bar " + gauge), 0.01}
	case u.Mass && name == "ppm" && molar > 0:
		return unit{"mg/m3", molar / molarVolume}
	}
	return unit{name, 1}
}

// UnitText is a unit as it is printed after a number; empty for a plain number.
func UnitText(name string) string {
	if name == "1" {
		return ""
	}
	return symbols.Replace(name)
}

var symbols = strings.NewReplacer("degC", "°C", "m3", "m³", "m2", "m²")

// With joins a number and its unit.
func With(text, name string) string {
	if s := UnitText(name); s != "" {
		return text + " " + s
	}
	return text
}
