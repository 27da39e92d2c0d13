// Package route knows what a person wrote: the typed route and site in SI, and
// the Case that every calculation starts from. It must not know what any of it
// does in a vessel, nor how a review is printed.
package route

import (
	"etchbound/chemicals"
	"etchbound/schemas/quantity"
)

// Route is one route file, checked and in SI.
type Route struct {
	Name      string // file name as given
	Title     string // with the batch, where that is not the one written
	Written   string // the title as written
	Basis     Basis
	Date      string // given by the writer, never taken from a clock
	Family    string // as written; decides nothing
	Purpose   string // prose in Markdown
	Notes     string // prose in Markdown
	Precursor *Precursor
	Places    []Place
	Steps     []Step
	Data      []chemicals.Override // what stands under data:, in the unit of its row
	Digest    string               // hex SHA-256 of the file's bytes
	Text      string               // the file as it was read
	Notices   []string             // what a person should know of the file that is no error
	BatchText string               // the batch as last scaled, or as written
	Measured
}

// Place is the place with a key, nil where there is none.
func (r *Route) Place(key string) *Place {
	for i := range r.Places {
		if r.Places[i].Key == key {
			return &r.Places[i]
		}
	}
	return nil
}

// Measured is what was measured for the powder of the route. Its plain values count
// as data of the phase: see Overrides.
type Measured struct {
	EtchHeat   quantity.Value // J per mol of layered phase
	Hydrogen   quantity.Value // mol per mol of layered phase
	Conversion quantity.Value // Fraction of the layered phase
	Density    quantity.Value // kg/m3
	Curve      *Curve         // conversion over time; nil where none was given
	Kinetics   string         // first_order, early_peak, self_accelerating, or empty where no law is known
	TD24       quantity.Value // K: from here a decomposition of the liquor needs 24 h to its maximum rate
	Source     string
}

// Basis says what a route rests on.
type Basis struct {
	Status    string // read, mixed, memory, measured, invented
	Title     string
	Publisher string
	Year      string
	DOI       string
	Section   string
	Note      string
}

// Curve is the conversion of the powder in its etchant, measured at constant
// temperature. There are at least two points; times and conversions rise
// strictly, from above zero, the conversions to 1 at most.
type Curve struct {
	Temperature quantity.Value // K
	Points      []CurvePoint
	At          string
}

// CurvePoint is one measured point: Time counts from the start of contact.
type CurvePoint struct {
	Time       quantity.Value
	Conversion quantity.Value // Fraction of the layered phase
}

// Precursor is the layered powder as weighed.
type Precursor struct {
	Phase        chemicals.Formula
	Layers       []string // element symbols that leave; empty: by the groups of the elements
	Mass         quantity.Value
	Purity       quantity.Value // mass fraction of the layered phase
	Impurities   []Impurity
	Stated       bool   // impurities were stated, even as none
	Source       string // where the statement comes from
	ParticleSize quantity.Value
}

// Impurity is one stated foreign solid of the powder.
type Impurity struct {
	Formula chemicals.Formula
	Share   quantity.Value // mass fraction of the powder
}

// Closure is how a place is shut.
type Closure uint8

// The closures; one that was not stated counts as Closed.
const (
	Closed Closure = iota
	Vented
	Open
)

// Place is a vessel, bottle, tube, cell or waste container.
type Place struct {
	Key           string
	Kind          string // vessel, beaker, bottle, tube, vial, crucible, autoclave, cell, tray, waste
	Material      string
	Capacity      quantity.Value
	Count         int // equal containers sharing the contents; at least 1
	CountStated   bool
	Batches       int // whose waste it takes until it is picked up; 0: not stated
	Closure       Closure
	ClosureStated bool
	Rating        quantity.Value // Pa gauge
	Relief        quantity.Value // set pressure, Pa gauge
	VentBore      quantity.Value
	VentLine      quantity.Value // length of the tube the gas leaves through
	Bubbler       quantity.Value // depth of liquid the gas bubbles through
	Scrubber      string         // key of the place its gas goes through
	Wall          quantity.Value // thickness
	LidMaterial   string
	HeldBefore    []string       // what earlier stood in it: names of substances or words; empty: not stated
	Wetted        []Wetted       // what stands in its liquor, or is filled with it, all the time
	StirrerHeat   quantity.Value // into the liquor, while it stirs
	Cooling       *Cooling
	KeepStated    bool
	Keep          bool // the capacity and the water of the bath stay as written when the batch changes
	At            string
}

// Several reports whether nobody says how many containers there are of a kind that is
// used by the handful, so that one cannot be meant.
func (p *Place) Several() bool { return p.Kind == "tube" && !p.CountStated }

// Cooling is what takes heat from a place.
type Cooling struct {
	Kind        string // none, ice_bath, water_bath, jacket
	Temperature quantity.Value
	UA          quantity.Value
	Ice         quantity.Value
	Bath        quantity.Value // volume of water in the bath
	Flow        quantity.Value // of coolant through the jacket
	Liquid      quantity.Value // volume of coolant in the jacket
	Power       quantity.Value // heat the chiller of the jacket takes at the temperature
}

// Wetted is a thing that meets a liquor beside the wall and the lid: a stir bar, a probe,
// a membrane.
type Wetted struct {
	What     string
	Material string // as written, "" where it is not stated
}

// Material is something put into a place.
type Material struct {
	Precursor bool // the powder of the route
	Substance *chemicals.Substance
	Mass      quantity.Value
	Volume    quantity.Value
	Amount    quantity.Value
	Ratio     quantity.Value // mol per mol of layered phase
	// MassFraction, Molarity, Molality or MassConc; a salt's molarity without a volume is over the liquid of its step
	Strength quantity.Value
	At       string
}

// Step is one thing done. Do is one of the verbs of the route language.
type Step struct {
	Number        int // from 1
	Do            string
	In            string
	Into          string
	Label         string
	Note          string
	What          []Material
	Wetted        []Wetted       // what meets its liquor in this step alone
	Over          quantity.Value // time of addition
	Portions      int            // in which it goes in, one after the other; 0: evenly
	PortionTime   quantity.Value // in which one of them is tipped in
	Time          quantity.Value
	Temperature   quantity.Value // K
	NotAbove      quantity.Value // K, at which the addition is stopped
	Attended      *bool
	Stirred       *bool
	Cycles        int            // 0: as many as the target needs
	Retained      quantity.Value // Volume, VolumePerMass of powder, or Fraction of the filled tube
	Product       string         // solids or liquid: what carries the flakes where they part; "" where nobody says
	Form          string         // powder, film or encased: what stored flakes lie in once dry; "" where nobody says
	TargetPH      *float64
	Water         string // co2_free or open_air
	WaterStated   bool
	Part          quantity.Value // Fraction of the contents, or a Volume, that a sample or transfer takes
	Keeps         string         // solids or liquid: what stays in In on separation
	Current       quantity.Value
	Voltage       quantity.Value // highest while the current flows
	Power         quantity.Value // that a sonicator gives to the liquor
	Gas           string
	GasFlow       quantity.Value // of that gas, while the step lasts
	Cryogen       string         // what cools by turning to gas in the open, or none
	CryogenAmount quantity.Value // of it, Mass or Volume
	At            string
}

// Site is one site file.
type Site struct {
	Name         string
	Title        string
	Jurisdiction string
	Hood         *Hood
	RoomVolume   quantity.Value
	Cabinet      quantity.Value // air in the closed cabinet that containers stand in
	Cylinder     quantity.Value // gas that the largest cylinder in the room would let out
	Dewar        quantity.Value // liquid nitrogen in the largest vessel of it in the room
	RoomFlow     quantity.Value
	CoolingPower quantity.Value // heat the shared cooling can take
	CoolingPoint quantity.Value // its coolant
	CoolingTaken quantity.Value // of it, by other work at the same time
	Stock        []Stock
	FireCode     *FireCode // nil: the site asks for the amounts of none
	Triggers     Triggers
	Unattended   *Unattended // nil: the site states no rules
	Data         []chemicals.Override
	Notes        string // prose in Markdown
	Digest       string
	Notices      []string // what a person should know of the file that is no error
}

// FireCode is the table of amounts by which a site wants what it keeps to be held, and how
// much of them holds there.
type FireCode struct {
	Table string
	Times float64 // the amount of one control area; NaN where nobody states it
}

// Unattended is what the site lets run with nobody there, at most. What is not set, and a
// list that is nil, are rules nobody stated.
type Unattended struct {
	Time, Gas, Temperature quantity.Value // Gas: flow of hydrogen
	Never                  []*chemicals.Substance
}

// Stock is one substance kept on site, as a mass or a volume.
type Stock struct {
	Substance *chemicals.Substance
	Strength  quantity.Value
	Mass      quantity.Value
	Volume    quantity.Value
	Bottle    quantity.Value // the largest bottle; not set: all of it is one
	Stands    string         // the cabinet or tray it stands in; "": nobody says
	At        string
}

// Triggers say how large a change has to be reviewed again. A ratio that was
// not stated is NaN; the others are above 1.
type Triggers struct {
	QuantityRatio     float64        // batch, new over reviewed
	StrengthRatio     float64        // strength of a reagent, new over reviewed
	TimeRatio         float64        // time of an addition, reviewed over new
	TemperatureChange quantity.Value // of a set temperature
	HFStrength        quantity.Value // mass fraction that may not be crossed
	MassBands         []quantity.Value
	Ignore            []string // rules that do not count
}

// Hood is the extract the route runs in. Containment is its measured outward
// leakage as a share of the emission.
type Hood struct {
	Flow         quantity.Value
	FaceVelocity quantity.Value
	TestDate     string
	Containment  quantity.Value
	Stack        quantity.Value // height over the ground at which its air leaves
}
