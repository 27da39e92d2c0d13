package doubt

import (
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

// Count counts the data of a run and the tables that its sheet names.
func Count(st *chemicals.Store, used []chemicals.Datum, w *working.Sheet) Counts {
	var c Counts
	for i := range used {
		c.add(used[i].Status, used[i].Doubtful())
	}
	counted := map[string]bool{}
	for i := range w.Lines {
		l := &w.Lines[i]
		if l.Kind != working.KindTable || counted[l.Formula] {
			continue
		}
		counted[l.Formula] = true
		if t, ok := st.Table(l.Formula); ok {
			c.add(t.Status, t.Doubtful())
		}
	}
	return c
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
