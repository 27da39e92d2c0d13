package quantity

import (
	"slices"
	"strings"
)

// dimension describes a dimension to a reader.
type dimension struct {
	key     string  // as schemas name it
	words   string  // what is asked for
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
	None:            {"none", "a plain number", anyLow, anyTop},
	Mass:            {"mass", "a mass", 0, 1e6 / 1e3},
	Volume:          {"volume", "a volume", 0, 100},
	Amount:          {"amount", "an amount of substance", 0, 1e6},
	Ratio:           {"ratio", "a mole ratio", 0, 1e6},
	MassFraction:    {"mass_fraction", "a mass fraction", 0, 1},
	Molarity:        {"molarity", "a molar concentration", 0, 60e3},
	Molality:        {"molality", "a molality", 0, 1000},
	MassConc:        {"mass_concentration", "a mass per volume", 0, 25e3},
	Temperature:     {"temperature", "a temperature", 0, zeroCelsius + 2000},
	TemperatureDiff: {"temperature_difference", "a temperature difference", -2300, 2300},
	Time:            {"time", "a time", 0, 5 * year},
	Pressure:        {"pressure", "a gauge pressure", 0, 1e9},
	Length:          {"length", "a length", 0, 1000},
	Area:            {"area", "an area", 0, 1e5},
	Flow:            {"flow", "a volume flow", 0, 1e4},
	Velocity:        {"velocity", "a velocity", 0, 1000},
	Power:           {"power", "a power", 0, 1e9},
	Conductance:     {"conductance", "a heat-transfer conductance (UA)", 0, 1e7},
	CellCurrent:     {"current", "a current", 0, 1e6},
	Voltage:         {"voltage", "a voltage", -1e6, 1e6},
	MolarEnergy:     {"molar_energy", "an energy per mole", -1e8, 1e8},
	VolumePerMass:   {"volume_per_mass", "a volume per mass", 0, 100},
	AirFraction:     {"air_fraction", "a share of the air by volume", 0, 1},
	Fraction:        {"fraction", "a percentage", 0, 1},
	Count:           {"count", "a whole number", 0, 1e6},
	Energy:          {"energy", "an energy", -1e15, 1e15},
	EnergyPerMass:   {"energy_per_mass", "an energy per mass", -1e9, 1e9},
	MassFlow:        {"mass_flow", "a mass per time", 0, 1e3},
	AirVolume:       {"air_volume", "a volume of air", 0, 1e6},
	StockMass:       {"stock_mass", "a mass", 0, 1e6},
}

// String gives the name by which schemas refer to the dimension.
func (d Dimension) String() string { return dimensions[d].key }

// Words says what a value of the dimension is, with its article.
func (d Dimension) Words() string { return dimensions[d].words }

// Named finds a dimension by the name that schemas use.
func Named(name string) (Dimension, bool) {
	for i := range dimensions {
		if dimensions[i].key == name {
			return Dimension(i), true
		}
	}
	return None, false
}

// Accepted says what a key of these dimensions takes, with the units. It shows no
// number: what is shown is copied, and a copied number is nobody's.
func Accepted(dims ...Dimension) string {
	parts := make([]string, len(dims))
	for i, d := range dims {
		parts[i] = d.Words()
		if list := Units(d); len(list) > 0 {
			parts[i] += " with its unit (" + strings.Join(list, ", ") + ")"
		}
	}
	return strings.Join(parts, "; or ")
}

// AnyUnit lists the units of the dimensions, each once.
func AnyUnit(dims ...Dimension) string {
	var list []string
	for _, d := range dims {
		for _, u := range Units(d) {
			if !slices.Contains(list, u) {
				list = append(list, u)
			}
		}
	}
	return strings.Join(list, ", ")
}
