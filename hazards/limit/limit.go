package limit

import (
	_ "embed"
	"math"
	"sync"

	"etchbound/hazards/phrase"
	"etchbound/schemas/columns"
)

// Limit is one limit value for one catalogued quantity.
type Limit struct {
	Key
	Quantity     string
	Agent        string // empty: any
	Label        string
	Value        float64 // in Unit, the unit of the catalogue
	Unit         string
	Jurisdiction string // empty: everywhere
	Document     string
	Section      string
	Edition      string
	Status       string
	Near         float64 // share of the limit at which near begins; degC: K below it
	Average      float64 // min over which a concentration is averaged; 0: at any moment, or nothing to average
	While        While
	Report       bool // what lies beyond it is reported or asked about: near, and never exceeds
	When         When // of which places it is
	Unseen       bool // nobody has seen the printed value: to be verified locally
	Role         Role // what it is beside its number
	Stops        Stopping

	low bool // of a local one: danger lies below it
}

// Stopping is where work stops at a limit.
type Stopping string

// The ways in which it does.
const (
	GoesOn        Stopping = ""
	WhereExceeded Stopping = "exceeded" // and not where it is not known
	UnlessKept    Stopping = "yes"      // where it is exceeded or not known
)

// Halts reports whether work stops at a limit that is exceeded, or of which that is not known.
func (s Stopping) Halts(known bool) bool { return s == UnlessKept || s == WhereExceeded && known }

// Role is what a limit is beside its number: what is done with it, or in which words.
type Role string

// The roles. Most limits have none.
const (
	Unrated Role = "unrated" // no pressure without a rating: whatever it is, none may be held
	Met     Role = "met"     // what meets is told, known or not, and no number
	Stands  Role = "stands"  // what does not stand what it meets is told
	Diluted Role = "diluted" // so much water brings it within
	Gathers Role = "gathers" // gas that burns gathers in air that does not change
	Mixing  Role = "mixing"  // how two are mixed is told
	Boils   Role = "boils"   // a liquor boils at it
	Escapes Role = "escapes" // immediately dangerous to life or health
)

// When says of which places a limit is.
type When string

// Of every one; of a container that can still give gas, or of which nobody knows whether it
// can; of one that gives none any more; of a container of waste.
const (
	Always When = ""
	Gas    When = "gas"
	NoGas  When = "no_gas"
	Waste  When = "waste"
)

// Set is the limits in force, with what the local file says of itself, if there is one.
type Set struct {
	Title        string
	Jurisdiction string
	Limits       []Limit
	Digest       string
	Notices      []phrase.Phrase // what a person should know of it
}

// NearShare and NearKelvin are where near begins unless a limit says
// otherwise: half of the limit, and 10 K below a temperature.
const (
	NearShare  = 0.5
	NearKelvin = 10
)

//go:embed limits.csv
var table string

// Base returns the limits the program carries.
func Base() *Set { return base() }

var base = sync.OnceValue(func() *Set {
	return &Set{Limits: columns.Must("hazards/limit/limits.csv", table, func(r columns.Row) Limit {
		l := Limit{Key: Named(BuiltIn, r.Named("id")), Quantity: r.Named("quantity"), Agent: r.Text("agent"),
			Label: r.Named("label"),
			Value: r.Stated("value"), Unit: r.Named("unit"), Jurisdiction: r.Text("jurisdiction"), Document: r.Named("document"),
			Section: r.Text("section"), Edition: r.Text("edition"), Status: r.Named("status"),
			Report: r.Choice("report", "", "yes") == "yes",
			Stops:  Stopping(r.Choice("stops", string(GoesOn), string(WhereExceeded), string(UnlessKept))),
			Role: Role(r.Choice("role", "", string(Unrated), string(Met), string(Stands),
				string(Diluted), string(Gathers), string(Mixing))),
			When: When(r.Choice("when", string(Always), string(Gas), string(NoGas), string(Waste)))}
		if near := r.Number("near"); !math.IsNaN(near) {
			l.Near = near
		}
		return l
	})}
})

// With returns the set with local limits beside its own. A local limit that is
// looser than one of ours for the same quantity is kept, and so is ours, with a
// notice.
func (s *Set) With(local *Set) *Set {
	if local == nil {
		return s
	}
	out := &Set{Limits: append(append([]Limit(nil), s.Limits...), local.Limits...), Digest: local.Digest,
		Title: local.Title, Jurisdiction: local.Jurisdiction}
	out.Notices = append(append(out.Notices, s.Notices...), local.Notices...)
	for _, l := range local.Limits {
		for _, ours := range s.Limits {
			same := ours.Quantity == l.Quantity && (ours.Agent == "" || ours.Agent == l.Agent)
			if same && (l.low && l.Value < ours.Value || !l.low && l.Value > ours.Value) {
				out.Notices = append(out.Notices, phrase.Of("warn.local_looser", l.ID, l.Quantity, ours.ID))
			}
		}
	}
	return out
}

// Level is the outcome of a comparison.
type Level uint8

// The levels.
const (
	Within Level = iota
	Near
	Unknown
	Exceeds
)

// Compare holds x, the dangerous end of a figure, against the limit. low means
// that danger lies below it. The margin is the share of the limit left, and
// for temperatures the kelvin left; NaN where either is unknown. A limit of
// zero has no near.
func (l *Limit) Compare(x float64, low bool) (Level, float64) {
	if math.IsNaN(x) || math.IsNaN(l.Value) {
		return Unknown, math.NaN()
	}
	gap := l.Value - x
	if low {
		gap = -gap
	}
	noise := rounding * math.Abs(l.Value)
	if math.Abs(gap) <= noise {
		gap = 0
	}
	margin := gap
	if l.Unit != "degC" && l.Value != 0 {
		margin = gap / math.Abs(l.Value)
	}
	switch {
	case gap < 0 && l.Report:
		return Near, margin
	case gap < 0:
		return Exceeds, margin
	case l.Value != 0 && gap < l.nearGap(low)-noise:
		return Near, margin
	}
	return Within, margin
}

// rounding is the share of a limit that a figure worked out in another order may
// differ by: what is just at a limit has one verdict at every batch.
const rounding = 1e-9

// NearFrom is the value from which on a figure is near, by the side danger lies on.
func (l *Limit) NearFrom(low bool) float64 {
	switch {
	case l.Value == 0: // no near: what is not zero exceeds
		return 0
	case low:
		return l.Value + l.nearGap(low)
	}
	return l.Value - l.nearGap(low)
}

// nearGap is how close to the limit near begins.
func (l *Limit) nearGap(low bool) float64 {
	near := l.Near
	if l.Unit == "degC" {
		if near == 0 {
			near = NearKelvin
		}
		return near
	}
	if near == 0 {
		near = NearShare
	}
	if low {
		return math.Abs(l.Value) * (1/near - 1)
	}
	return math.Abs(l.Value) * (1 - near)
}

// Tables is the text of the tables of this package as the program carries them.
func Tables() string { return table + equivalentTable + exposureTable }
