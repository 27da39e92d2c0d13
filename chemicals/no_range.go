package chemicals

import (
	"io/fs"

	"etchbound/chemicals/datum"
	"etchbound/schemas/columns"
)

// why is a row of data/no_range.csv.
type why struct {
	id   datum.Pattern
	says string
}

var whys = embedded(loadWhys)

func loadWhys(fsys fs.FS) ([]why, error) {
	return read(fsys, "data/no_range.csv", func(r columns.Row) why {
		w := why{datum.Pattern(r.Named("id")), r.Named("why")}
		if err := w.id.Valid(); err != nil {
			r.Fault("id", err)
		}
		return w
	})
}

// NoRange says why a datum that nobody has read or measured has no range, "" where
// nothing says so. rule is the row of data/no_range.csv that does.
func NoRange(id datum.ID) (says string, rule datum.Pattern) {
	if w := datum.Best(whys(), func(w *why) datum.Pattern { return w.id }, id); w != nil {
		return w.says, w.id
	}
	return "", ""
}

// NoRangeRules are the ids of data/no_range.csv, in its order.
func NoRangeRules() []datum.Pattern {
	var out []datum.Pattern
	for _, w := range whys() {
		out = append(out, w.id)
	}
	return out
}
