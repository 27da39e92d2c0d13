package stock

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"etchbound/schemas/columns"
)

//go:embed thresholds.csv
var thresholdsCSV string

// What of a portion counts toward a threshold.
const (
	countsPure    = "pure"    // the substance without its water
	countsMixture = "mixture" // the solution whole
	countsRelease = "release" // the substance, as if all of it were released in a day
)

// Threshold is a quantity of a substance from which a programme of a
// jurisdiction has duties. Limit is in kg, above zero; portions weaker than
// Least wt% do not count, and 100 means the substance without water.
type Threshold struct {
	ID, CAS, Substance         string
	Programme, Tier            string
	Limit, Least               float64
	Counts                     string
	Group                      string // in which the programme adds it up; none: alone
	Jurisdictions              []string
	Document, Section, Edition string
	Status                     string // read, two-sources or memory
	Note                       string
	Instead                    bool // what it names counts by it and by no class of its document
}

// Release reports whether the threshold is of what gets out and not of what is
// held.
func (t *Threshold) Release() bool { return t.Counts == countsRelease }

// Holds reports whether the threshold counts at a site; where no jurisdiction
// is stated, every one does.
func (t *Threshold) Holds(jurisdiction string) bool {
	state, _, _ := strings.Cut(jurisdiction, "_") // in us_california holds what holds in us
	return jurisdiction == "" || len(t.Jurisdictions) == 0 || slices.Contains(t.Jurisdictions, jurisdiction) ||
		slices.Contains(t.Jurisdictions, state)
}

// Thresholds returns the table the binary carries, in its order. It must not be
// changed.
func Thresholds() []Threshold { return thresholds() }

var thresholds = sync.OnceValue(func() []Threshold {
	return columns.Must("hazards/stock/thresholds.csv", thresholdsCSV, func(r columns.Row) Threshold {
		return Threshold{ID: r.Named("id"), CAS: r.Text("cas"), Substance: r.Named("substance"),
			Programme: r.Named("programme"),
			Tier:      r.Text("tier"), Limit: r.Stated("threshold_kg"), Least: r.Stated("least_strength_wt"),
			Counts: r.Choice("counts", countsPure, countsMixture,
				countsRelease), Jurisdictions: strings.Fields(r.Text("jurisdiction")),
			Document: r.Named("document"), Section: r.Text("section"), Edition: r.Text("edition"), Status: r.Named("status"),
			Note: r.Text("note"), Group: r.Text("group"), Instead: r.Yes("instead")}
	})
})

// names reports whether a threshold takes a substance of a number in place of the classes of
// a document and tier, where it is a share of its solution; a share nobody knows is all.
func (t *Threshold) names(cas string, of *Threshold, share float64) bool {
	return t.Instead && cas != "" && t.CAS == cas && t.Document == of.Document && t.Tier == of.Tier &&
		!(100*share < t.Least*(1-1e-9))
}

// ThresholdOf is the threshold of an id: of a substance, of a class of hazard or of a sum.
func ThresholdOf(id string) (*Threshold, bool) {
	all := Thresholds()
	if i := slices.IndexFunc(all, func(t Threshold) bool { return t.ID == id }); i >= 0 {
		return &all[i], true
	}
	of := categories()
	if i := slices.IndexFunc(of, func(g category) bool { return g.ID == id }); i >= 0 {
		return &of[i].Threshold, true
	}
	for i := range sums() {
		if t := &sums()[i].Threshold; t.ID == id {
			return t, true
		}
	}
	return nil, false
}
