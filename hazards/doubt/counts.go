package doubt

import (
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
)

// Counts are how many of the numbers a run used nobody has read or measured: data,
// and tables of them, each once.
type Counts struct {
	Memory    int // recalled
	Assumed   int // chosen, or stated by the writer without a source
	Estimated int // added up, bracketed or fitted
}

// Count counts the data of a run and its tables.
func Count(used []chemicals.Datum, tables []*chemicals.Table) Counts {
	var c Counts
	for i := range used {
		c.add(used[i].Status, used[i].Doubtful())
	}
	for _, t := range tables {
		c.add(t.Status, t.Doubtful())
	}
	return c
}

// Tables are the tables that a sheet names, each once, in the order of first use.
func Tables(st *chemicals.Store, w *working.Sheet) []*chemicals.Table {
	var out []*chemicals.Table
	for i := range w.Lines {
		l := &w.Lines[i]
		if l.Kind != working.KindTable {
			continue
		}
		if t, ok := st.Table(l.Formula); ok && !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	return out
}

func (c *Counts) add(status string, doubtful bool) {
	switch {
	case !doubtful:
	case status == "memory":
		c.Memory++
	case status == "assumed":
		c.Assumed++
	default:
		c.Estimated++
	}
}
