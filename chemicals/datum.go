package chemicals

import (
	"math"
	"slices"
	"strings"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// Datum is one row of the data files: one number, its range and where it came
// from. Value, Low and High are in Unit; NaN stands for blank.
type Datum struct {
	Index                int // position in Store.Rows and key of Store.With
	ID                   datum.ID
	Symbol               string
	Value, Low, High     float64
	Unit, Shape, Group   string
	Valid, Source, Where string
	Status, Note         string
	OverriddenBy         string  // what replaced the row, "" where nothing did
	From                 string  // the file of that, route or site
	Old                  float64 // value before that, NaN where there was none
}

// Swings reports whether the row is moved to its ends when ranges are worked
// out. Rows without a shape, and bounds, are printed and not moved.
func (d Datum) Swings() bool {
	return d.Shape != "" && d.Shape != "bound" && !math.IsNaN(d.Low) && !math.IsNaN(d.High)
}

// Named is what a row is, in few words: its note as far as the first colon with a space,
// behind which a note says why. It is "" where nothing is noted.
func (d *Datum) Named() string {
	says, _, _ := strings.Cut(d.Note, ": ")
	return says
}

// seen are the statuses of what was read in a source, computed exactly from what was, or
// stated by the writer with his source. Nothing else is known, whatever it is called.
var seen = [...]string{"read", "two-sources", "computed", "stated"}

// Doubtful reports whether nobody has read or measured the value: it is recalled,
// assumed, or estimated by adding up, bracketing or fitting.
func (d Datum) Doubtful() bool { return doubtful(d.Status) }

func doubtful(status string) bool { return !slices.Contains(seen[:], status) }

// trust turns the status and shape of a row into the status of a number.
func (d Datum) trust() working.Status {
	switch {
	case d.Shape == "bound":
		return working.Bound
	case d.Doubtful():
		return working.Estimated
	}
	return working.Known
}

// Source is where a row was read: title, publisher or journal, year, DOI and
// section.
type Source struct{ Key, Title, Publisher, Year, DOI, Section string }
