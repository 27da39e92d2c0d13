package solution

import (
	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// worse lowers the status of a number and of the line that made it.
func worse(w *working.Sheet, n working.Num, st working.Status) working.Num {
	n = n.Worse(st)
	if w != nil && n.Line() > 0 {
		line := &w.Lines[n.Line()-1]
		line.Status = min(line.Status, st)
	}
	return n
}

// read takes a column of a table at x, times scale in the unit of its first column, onto the
// sheet: estimated where the table is from memory there, unknown outside it and of a table
// that has no such column.
func read(st *chemicals.Store, w *working.Sheet, symbol, id, column string, x working.Num, scale float64) working.Num {
	t, ok := st.Table(id)
	if !ok {
		return working.Absent(symbol, "", working.LacksDatum(datum.ID(id)))
	}
	if x.Unknown() {
		return w.Table(symbol, t.Unit, id, x.V, x)
	}
	c, ok := t.Column(column)
	v := 0.0
	if ok {
		v, ok = t.At(c, x.V*scale)
	}
	if !ok {
		return working.Absent(symbol, t.Unit, working.LacksDatum(datum.ID(id)))
	}
	n := w.Table(symbol, t.Unit, id, v, x)
	if !t.Read(x.V * scale) {
		n = worse(w, n, working.Estimated)
	}
	return n
}

// percent turns a mass fraction into the wt% of the tables.
const percent = 100

func waterMass(st *chemicals.Store, w *working.Sheet) working.Num {
	return waterFormula.MolarMass(st, w).As("M_w")
}

var waterFormula = mustParse("H2O")

func mustParse(text string) chemicals.Formula {
	f, err := chemicals.ParseFormula(text)
	if err != nil {
		panic(err)
	}
	return f
}
