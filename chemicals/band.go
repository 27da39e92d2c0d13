package chemicals

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"strconv"
	"strings"

	"etchbound/chemicals/datum"
	"etchbound/schemas/columns"
)

// Band is what a writer's own value of a datum may be, in the unit of the datum. An
// end that is not known is infinite.
type Band struct {
	Low, High float64
	Says      string // what it is a band of, in a few words
}

// rule is a row of data/bands.csv.
type rule struct {
	id         datum.Pattern
	low, high  float64
	around, by float64 // of our own value, 0 where it does not say
	says       string
}

var rules = embedded(loadRules)

func loadRules(fsys fs.FS) ([]rule, error) {
	return read(fsys, "data/bands.csv", func(r columns.Row) rule {
		x := rule{id: datum.Pattern(r.Named("id")), low: r.Number("low"), high: r.Number("high"),
			around: counts(r, "around"), by: counts(r, "by"), says: r.Named("says")}
		if err := x.id.Valid(); err != nil {
			r.Fault("id", err)
		}
		if x.low > x.high {
			r.Fault("low", errors.New("it lies above high"))
		}
		return x
	})
}

// BandOf is the band of a datum, and false where there is none. It stands around the
// value the program carries, whatever a site put in its place.
func BandOf(id datum.ID) (Band, bool) {
	r := datum.Best(rules(), func(r *rule) datum.Pattern { return r.id }, id)
	if r == nil {
		return Band{}, false
	}
	b := Band{math.Inf(-1), math.Inf(1), r.says}
	if !math.IsNaN(r.low) {
		b.Low = r.low
	}
	if !math.IsNaN(r.high) {
		b.High = r.high
	}
	if own, there := base().Row(id); there && (r.around > 0 || r.by > 0) {
		wide := r.around*math.Abs(own.Value) + r.by
		b.Low, b.High = max(b.Low, own.Value-wide), min(b.High, own.Value+wide)
	}
	return b, true
}

// holds reports whether a value lies in the band, for which rounding counts nothing.
func (b Band) holds(x float64) bool {
	slack := 1e-9 * math.Abs(x)
	return x >= b.Low-slack && x <= b.High+slack
}

// text is the band in a unit.
func (b Band) text(unit string) string {
	n := func(x float64) string { return strconv.FormatFloat(x, 'g', 4, 64) }
	switch {
	case b.Low == b.High:
		return strings.TrimSpace(n(b.Low) + " " + unit)
	case math.IsInf(b.High, 1):
		return strings.TrimSpace("at least " + n(b.Low) + " " + unit)
	}
	return strings.TrimSpace(n(b.Low) + " to " + n(b.High) + " " + unit)
}

// OutsideBand is the error of an override that cannot be believed.
type OutsideBand struct {
	ID    datum.ID
	At    string
	End   string // value, low or high: which of the three it is
	Found string // with its unit
	Band  Band
	Unit  string
}

// Accepted is the band in the unit of the datum.
func (e *OutsideBand) Accepted() string { return e.Band.text(e.Unit) }

// What says which value cannot be.
func (e *OutsideBand) What() string {
	if e.End == "value" {
		return fmt.Sprintf("%s cannot be %s", e.ID, e.Found)
	}
	return fmt.Sprintf("the %s end of %s cannot be %s", e.End, e.ID, e.Found)
}

// Error gives what was found and what is accepted.
func (e *OutsideBand) Error() string {
	return fmt.Sprintf("%s: %s; accepted: %s", e.At, e.What(), e.Accepted()+": "+e.Band.Says)
}

// believed refuses a value, or an end of its range, outside of the band.
func (v Override) believed(d *Datum) error {
	if _, stated := v.ID.Stated(); stated {
		return nil // what the route states itself, which its own keys bound
	}
	band, ok := BandOf(v.ID)
	if !ok {
		return nil
	}
	ends := [...]struct {
		name string
		x    float64
	}{{"value", v.Value}, {"low", v.Low}, {"high", v.High}}
	for _, e := range ends {
		if !math.IsNaN(e.x) && !band.holds(e.x) {
			found := strings.TrimSpace(strconv.FormatFloat(e.x, 'g', -1, 64) + " " + d.Unit)
			return &OutsideBand{ID: v.ID, At: v.At, End: e.name, Found: found, Band: band, Unit: d.Unit}
		}
	}
	return nil
}
