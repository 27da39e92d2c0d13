// Package quantity knows units: it reads "40 mL" or "48 wt%" into SI and gives
// values back in any unit of the same dimension. It is the one place with unit
// symbols, and it knows nothing of files, chemistry or hazards.
package quantity

// Dimension is what a quantity measures.
type Dimension uint8

// The dimensions a route, site or limits file can state.
const (
	None Dimension = iota
	Mass
	Volume
	Amount          // mol
	Ratio           // mol per mol
	MassFraction    // wt%
	Molarity        // mol/m3 in SI
	Molality        // mol/kg
	MassConc        // kg/m3
	Temperature     // K, a point
	TemperatureDiff // K, a difference
	Time
	Pressure // Pa; gauge unless the key says absolute
	Length
	Area
	Flow     // m3/s
	Velocity // m/s
	Power
	Conductance // UA, W/K
	CellCurrent // A
	Voltage
	MolarEnergy   // J/mol
	VolumePerMass // m3/kg
	AirFraction   // ppm, vol%
	Fraction      // a plain percentage, of a whole the key names
	Count         // "3" tubes: the one dimension without a unit
	Energy        // J
	EnergyPerMass // J/kg
	MassFlow      // kg/s
	AirVolume     // m3, of a room or a cabinet
	StockMass     // kg, of what a site keeps
)

// Value is a stated quantity in SI. Set is false for a key that was left out;
// Low and High are NaN unless the writer gave a range. At is the path of the
// value in its file, such as "steps[2].over".
type Value struct {
	SI, Low, High float64
	Dim           Dimension
	Text          string
	At            string
	Set           bool
}
