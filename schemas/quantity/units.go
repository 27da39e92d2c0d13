package quantity

import (
	"strings"
	"sync"
)

// unit turns a written number x into SI: x*mul/div + add. Exactly one of mul
// and div differs from 1, so that 40 mL is 40/1e6 and correctly rounded.
type unit struct {
	name          string // as printed
	dim           Dimension
	mul, div, add float64
	also          string // other spellings, parted by blanks
}

// foot in m and cubicFoot in L: exact by the international definition (NIST SP 811, B.6).
const foot, cubicFoot = 0.3048, 28.316846592

// units is the one table of unit symbols. The first unit of a dimension is the
// one offered in messages.
var units = []unit{
	{"g", Mass, 1, 1e3, 0, "gram grams"},
	{"mg", Mass, 1, 1e6, 0, ""},
	{"kg", Mass, 1, 1, 0, ""},
	{"ug", Mass, 1, 1e9, 0, "mcg"},
	{"t", Mass, 1e3, 1, 0, ""},

	{"mL", Volume, 1, 1e6, 0, "ml cm3 ccm cc"},
	{"L", Volume, 1, 1e3, 0, "l dm3 litre litres liter liters"},
	{"uL", Volume, 1, 1e9, 0, "ul mm3"},
	{"m3", Volume, 1, 1, 0, ""},

	{"mol", Amount, 1, 1, 0, ""},
	{"mmol", Amount, 1, 1e3, 0, ""},
	{"umol", Amount, 1, 1e6, 0, ""},

	{"mol/mol", Ratio, 1, 1, 0, "eq equiv"},

	{"wt%", MassFraction, 1, 1e2, 0, "%w/w w/w% %(w/w) mass% wt.% wt-% %wt m/m% %m/m w% %wt."},
	{"g/g", MassFraction, 1, 1, 0, "kg/kg"},

	{"mol/L", Molarity, 1e3, 1, 0, "M mol/l mol/dm3 molL-1 moldm-3 mol*L-1 mmol/mL mmol/ml"},
	{"mmol/L", Molarity, 1, 1, 0, "mM mmol/l mol/m3 mmol/dm3"},

	{"mol/kg", Molality, 1, 1, 0, "molkg-1"},
	{"mmol/kg", Molality, 1, 1e3, 0, ""},

	{"g/L", MassConc, 1, 1, 0, "g/l kg/m3 mg/mL mg/ml g/dm3 gL-1"},
	{"mg/L", MassConc, 1, 1e3, 0, "mg/l ug/mL ug/ml g/m3"},
	{"g/mL", MassConc, 1e3, 1, 0, "g/ml g/cm3 kg/L kg/l"},
	{"mg/m3", MassConc, 1, 1e6, 0, ""},

	{"degC", Temperature, 1, 1, zeroCelsius, "celsius"},
	{"K", Temperature, 1, 1, 0, "kelvin"},
	{"K", TemperatureDiff, 1, 1, 0, "kelvin"},

	{"min", Time, 60, 1, 0, "mins minute minutes"},
	{"s", Time, 1, 1, 0, "sec secs second seconds"},
	{"h", Time, 3600, 1, 0, "hr hrs hour hours"},
	{"d", Time, 86400, 1, 0, "day days"},

	{"kPa", Pressure, 1e3, 1, 0, "kPag kPa(g)"},
	{"bar", Pressure, 1e5, 1, 0, "barg bar(g)"},
	{"mbar", Pressure, 1e2, 1, 0, "mbarg hPa"},
	{"Pa", Pressure, 1, 1, 0, ""},
	{"MPa", Pressure, 1e6, 1, 0, ""},

	{"mm", Length, 1, 1e3, 0, ""},
	{"cm", Length, 1, 1e2, 0, ""},
	{"um", Length, 1, 1e6, 0, "micron microns"},
	{"m", Length, 1, 1, 0, ""},
	{"nm", Length, 1, 1e9, 0, ""},

	{"m2", Area, 1, 1, 0, ""},
	{"cm2", Area, 1, 1e4, 0, ""},
	{"mm2", Area, 1, 1e6, 0, ""},

	{"m3/h", Flow, 1, 3600, 0, "m3/hr"},
	{"L/min", Flow, 1, 6e4, 0, "l/min"},
	{"mL/min", Flow, 1, 6e7, 0, "ml/min cc/min cm3/min"},
	{"L/h", Flow, 1, 3.6e6, 0, "l/h"},
	{"L/s", Flow, 1, 1e3, 0, "l/s"},
	{"m3/s", Flow, 1, 1, 0, ""},
	{"cfm", Flow, cubicFoot, 60e3, 0, "ft3/min CFM"},

	{"m/s", Velocity, 1, 1, 0, ""},
	{"cm/s", Velocity, 1, 1e2, 0, ""},
	{"mm/s", Velocity, 1, 1e3, 0, ""},
	{"fpm", Velocity, foot, 60, 0, "ft/min FPM"},

	{"g", StockMass, 1, 1e3, 0, "gram grams"},
	{"kg", StockMass, 1, 1, 0, ""},
	{"t", StockMass, 1e3, 1, 0, ""},
	{"mg", StockMass, 1, 1e6, 0, ""},

	{"m3", AirVolume, 1, 1, 0, ""},
	{"L", AirVolume, 1, 1e3, 0, "l dm3 litre litres liter liters"},
	{"ft3", AirVolume, cubicFoot, 1e3, 0, "cf cuft"},

	{"W", Power, 1, 1, 0, ""},
	{"kW", Power, 1e3, 1, 0, ""},
	{"mW", Power, 1, 1e3, 0, ""},

	{"W/K", Conductance, 1, 1, 0, ""},

	{"A", CellCurrent, 1, 1, 0, ""},
	{"mA", CellCurrent, 1, 1e3, 0, ""},

	{"V", Voltage, 1, 1, 0, ""},
	{"mV", Voltage, 1, 1e3, 0, ""},

	{"kJ/mol", MolarEnergy, 1e3, 1, 0, ""},
	{"J/mol", MolarEnergy, 1, 1, 0, ""},

	{"mL/g", VolumePerMass, 1, 1e3, 0, "ml/g L/kg l/kg cm3/g"},
	{"m3/kg", VolumePerMass, 1, 1, 0, ""},

	{"ppm", AirFraction, 1, 1e6, 0, "ppmv ppm(v)"},
	{"vol%", AirFraction, 1, 1e2, 0, "%v/v v/v% vol.% vol-% %vol"},

	{"%", Fraction, 1, 1e2, 0, "percent"},

	{"kJ", Energy, 1e3, 1, 0, ""},
	{"J", Energy, 1, 1, 0, ""},
	{"MJ", Energy, 1e6, 1, 0, ""},

	{"kJ/g", EnergyPerMass, 1e6, 1, 0, "MJ/kg"},
	{"J/g", EnergyPerMass, 1e3, 1, 0, "kJ/kg"},
	{"J/kg", EnergyPerMass, 1, 1, 0, ""},

	{"mg/min", MassFlow, 1, 6e7, 0, ""},
	{"g/h", MassFlow, 1, 3.6e6, 0, ""},

	{"", Count, 1, 1, 0, ""},
	{"1", None, 1, 1, 0, ""},
}

const zeroCelsius = 273.15

// unitIndex finds the units by any spelling; a symbol such as K belongs to more
// than one dimension.
var unitIndex = sync.OnceValue(func() map[string][]*unit {
	m := make(map[string][]*unit, 2*len(units))
	for i := range units {
		u := &units[i]
		for _, s := range append(strings.Fields(u.also), u.name) {
			m[s] = append(m[s], u)
		}
	}
	return m
})

var unitSpelling = strings.NewReplacer(
	" ", "", "\u00a0", "", "\u202f", "", "\t", "",
	"\u00b5", "u", "\u03bc", "u",
	"\u00b0", "deg", "\u2103", "degC",
	"\u00b2", "2", "\u00b3", "3", "\u207b", "-", "\u00b9", "1",
	"\u2212", "-", "\u00b7", "",
)

// lookup gives every unit a text may mean.
func lookup(text string) []*unit {
	if us, plain := unitIndex()[text]; plain {
		return us
	}
	return unitIndex()[unitSpelling.Replace(text)]
}

// Meant lists the dimensions that a unit symbol may stand for; none for an
// unknown symbol.
func Meant(unit string) []Dimension {
	var list []Dimension
	for _, u := range lookup(unit) {
		list = append(list, u.dim)
	}
	return list
}

// find gives the unit of one of the dimensions, or of any where none is named.
func find(text string, dims []Dimension) *unit {
	us := lookup(text)
	if len(dims) == 0 && len(us) > 0 {
		return us[0]
	}
	for _, d := range dims {
		for _, u := range us {
			if u.dim == d {
				return u
			}
		}
	}
	return nil
}

// Units lists the unit symbols of a dimension as they are printed, the usual
// one first.
func Units(d Dimension) []string {
	var list []string
	for i := range units {
		if units[i].dim == d && units[i].name != "" {
			list = append(list, units[i].name)
		}
	}
	return list
}

// DimensionOf is the dimension of a unit symbol; false for an unknown symbol.
// K is a point on the temperature scale here, not a difference.
func DimensionOf(unit string) (Dimension, bool) {
	us := lookup(unit)
	if len(us) == 0 {
		return None, false
	}
	return us[0].dim, true
}
