package scaling

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"
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
	Jurisdictions              []string
	Document, Section, Edition string
	Status                     string // read, two-sources or memory
	Note                       string
}

// Release reports whether the threshold is of what gets out and not of what is
// held.
func (t *Threshold) Release() bool { return t.Counts == countsRelease }

// Holds reports whether the threshold counts at a site; where no jurisdiction
// is stated, every one does.
func (t *Threshold) Holds(jurisdiction string) bool {
	if jurisdiction == "us_california" {
		jurisdiction = "us"
	}
	return jurisdiction == "" || len(t.Jurisdictions) == 0 || slices.Contains(t.Jurisdictions, jurisdiction)
}

// Thresholds returns the table the binary carries, in its order. It must not be
// changed.
func Thresholds() []Threshold { return thresholds() }

var thresholds = sync.OnceValue(func() []Threshold {
	t, err := readThresholds(thresholdsCSV)
	if err != nil {
		panic(err) // embedded, so a fault of the build; a test reads it
	}
	return t
})

func readThresholds(data string) ([]Threshold, error) {
	rows, err := csv.NewReader(strings.NewReader(data)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("thresholds.csv: %w", err)
	}
	var out []Threshold
	for _, r := range rows[1:] {
		limit, err := strconv.ParseFloat(r[5], 64)
		if err != nil {
			return nil, fmt.Errorf("thresholds.csv: %s: %w", r[0], err)
		}
		least, err := strconv.ParseFloat(r[6], 64)
		if err != nil {
			return nil, fmt.Errorf("thresholds.csv: %s: %w", r[0], err)
		}
		out = append(out, Threshold{ID: r[0], CAS: r[1], Substance: r[2], Programme: r[3], Tier: r[4], Limit: limit, Least: least,
			Counts: r[7], Jurisdictions: strings.Fields(r[8]), Document: r[9], Section: r[10], Edition: r[11], Status: r[12], Note: r[13]})
	}
	return out, nil
}
