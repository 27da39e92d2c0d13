package quantity

import "strings"

// dimension describes a dimension to a reader.
type dimension struct {
	key     string // as schemas name it
	words   string // what is asked for
	example string
	floor   float64 // least believable value, SI
	ceiling float64 // greatest believable value, SI
}

const (
	year   = 365.25 * 86400
	anyLow = -1e300
	anyTop = 1e300
)

// dimensions holds, in the order of the constants, the words of each dimension
// and the bounds outside of which a value is taken for a slip of the pen.
var dimensions = [...]dimension{
	None:            {"none", "a plain number", "3.2", anyLow, anyTop},
	Mass:            {"mass", "a mass", "1 g", 0, 1e6 / 1e3},
	Volume:          {"volume", "a volume", "40 mL", 0, 100},
	Amount:          {"amount", "an amount of substance", "0.2 mol", 0, 1e6},
	Ratio:           {"ratio", "a mole ratio", "12 mol/mol", 0, 1e6},
	MassFraction:    {"mass_fraction", "a mass fraction", "48 wt%", 0, 1},
	Molarity:        {"molarity", "a molar concentration", "9 mol/L", 0, 60e3},
	Molality:        {"molality", "a molality", "2 mol/kg", 0, 1000},
	MassConc:        {"mass_concentration", "a mass per volume", "5 g/L", 0, 25e3},
	Temperature:     {"temperature", "a temperature", "35 degC", 0, zeroCelsius + 2000},
	TemperatureDiff: {"temperature_difference", "a temperature difference", "10 K", -2300, 2300},
	Time:            {"time", "a time", "24 h", 0, 5 * year},
	Pressure:        {"pressure", "a gauge pressure", "50 kPa", 0, 1e9},
	Length:          {"length", "a length", "6 mm", 0, 1000},
	Area:            {"area", "an area", "100 cm2", 0, 1e5},
	Flow:            {"flow", "a volume flow", "800 m3/h", 0, 1e4},
	Velocity:        {"velocity", "a velocity", "0.5 m/s", 0, 1000},
	Power:           {"power", "a power", "500 W", 0, 1e9},
	Conductance:     {"conductance", "a heat-transfer conductance (UA)", "2 W/K", 0, 1e7},
	CellCurrent:     {"current", "a current", "1 A", 0, 1e6},
	Voltage:         {"voltage", "a voltage", "5 V", -1e6, 1e6},
	MolarEnergy:     {"molar_energy", "an energy per mole", "720 kJ/mol", -1e8, 1e8},
	VolumePerMass:   {"volume_per_mass", "a volume per mass", "5 mL/g", 0, 100},
	AirFraction:     {"air_fraction", "a share of the air by volume", "10 ppm", 0, 1},
	Fraction:        {"fraction", "a percentage", "10 %", 0, 1},
	Count:           {"count", "a whole number", "4", 0, 1e6},
	Energy:          {"energy", "an energy", "20 kJ", -1e15, 1e15},
	EnergyPerMass:   {"energy_per_mass", "an energy per mass", "3.9 kJ/g", -1e9, 1e9},
	MassFlow:        {"mass_flow", "a mass per time", "15 g/h", 0, 1e3},
	AirVolume:       {"air_volume", "a volume of air", "100 m3", 0, 1e6},
}

// String gives the name by which schemas refer to the dimension.
func (d Dimension) String() string { return dimensions[d].key }

// Words says what a value of the dimension is, with its article.
func (d Dimension) Words() string { return dimensions[d].words }

// Example is a value of the dimension as a person would write it.
func (d Dimension) Example() string { return dimensions[d].example }

// Named finds a dimension by the name that schemas use.
func Named(name string) (Dimension, bool) {
	for i := range dimensions {
		if dimensions[i].key == name {
			return Dimension(i), true
		}
	}
	return None, false
}

// Accepted says what a key of these dimensions takes, with the units.
func Accepted(dims ...Dimension) string {
	parts := make([]string, len(dims))
	for i, d := range dims {
		parts[i] = d.Words() + " such as " + d.Example()
		if list := Units(d); len(list) > 1 {
			parts[i] += " (" + strings.Join(list, ", ") + ")"
		}
	}
	return strings.Join(parts, "; or ")
}
