package chemicals

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"path"
	"strconv"
	"strings"

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
	id               string // with a star for anything, or without
	begins           string // what it begins with, before the star
	low, high        float64
	around, by       float64 // of our own value, 0 where it does not say
	relative, starry bool
	says             string
}

var rules = embedded(loadRules)

func loadRules(fsys fs.FS) ([]rule, error) {
	return read(fsys, "data/bands.csv", func(r columns.Row) rule {
		x := rule{id: r.Named("id"), low: r.Number("low"), high: r.Number("high"), around: counts(r, "around"),
			by: counts(r, "by"), says: r.Named("says")}
		x.begins, _, x.starry = strings.Cut(x.id, "*")
		x.relative = x.around > 0 || x.by > 0
		if _, err := path.Match(x.id, ""); err != nil {
			r.Fault("id", err)
		}
		if x.low > x.high {
			r.Fault("low", errors.New("it lies above high"))
		}
		return x
	})
}

// ruleOf is the rule of a datum: one of its id, else the longest that fits it.
func ruleOf(id string) (rule, bool) {
	var best rule
	for _, r := range rules() {
		if r.id == id {
			return r, true
		}
		if !r.starry || len(r.id) <= len(best.id) || !strings.HasPrefix(id, r.begins) {
			continue
		}
		if fits, _ := path.Match(r.id, id); fits {
			best = r
		}
	}
	return best, best.id != ""
}

// BandOf is the band of a datum, and false where there is none. It stands around the
// value the program carries, whatever a site put in its place.
func BandOf(id string) (Band, bool) {
	r, ok := ruleOf(id)
	if !ok {
		return Band{}, false
	}
	b := Band{math.Inf(-1), math.Inf(1), r.says}
	if !math.IsNaN(r.low) {
		b.Low = r.low
	}
	if !math.IsNaN(r.high) {
		b.High = r.high
	}
	if own, there := base().Row(id); there && r.relative {
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
	ID, At string
	End    string // value, low or high: which of the three it is
	Found  string // with its unit
	Band   Band
	Unit   string
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
	if strings.HasPrefix(v.ID, statedByRoute) {
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
