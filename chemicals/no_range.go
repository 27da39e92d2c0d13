package chemicals

import (
	"io/fs"
	"path"
	"strings"

	"etchbound/schemas/columns"
)

// why is a row of data/no_range.csv.
type why struct {
	id, begins string // with a star for anything, or without; what stands before it
	says       string
}

var whys = embedded(loadWhys)

func loadWhys(fsys fs.FS) ([]why, error) {
	return read(fsys, "data/no_range.csv", func(r columns.Row) why {
		w := why{id: r.Named("id"), says: r.Named("why")}
		w.begins, _, _ = strings.Cut(w.id, "*")
		if _, err := path.Match(w.id, ""); err != nil {
			r.Fault("id", err)
		}
		return w
	})
}

// NoRange says why a datum that nobody has read or measured has no range, "" where
// nothing says so. rule is the row of data/no_range.csv that does.
func NoRange(id string) (says, rule string) {
	for _, w := range whys() {
		if w.id == id {
			return w.says, w.id
		}
		if len(w.id) <= len(rule) || !strings.HasPrefix(id, w.begins) {
			continue
		}
		if fits, _ := path.Match(w.id, id); fits {
			says, rule = w.says, w.id
		}
	}
	return says, rule
}

// NoRangeRules are the ids of data/no_range.csv, in its order.
func NoRangeRules() []string {
	var out []string
	for _, w := range whys() {
		out = append(out, w.id)
	}
	return out
}
