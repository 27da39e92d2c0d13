package chemicals

import (
	"fmt"
	"io/fs"
	"math"
	"strings"

	"gonum.org/v1/gonum/interp"

	"etchbound/schemas/columns"
)

// Table is a tabulated function of one variable, with one or more columns. It
// is read by monotone cubic interpolation, which passes through every row and
// makes no maximum of its own between two.
type Table struct {
	ID, XName, XUnit, Unit string
	X                      []float64
	Columns                []string
	Y                      [][]float64 // by column
	// EstimatedBelow and EstimatedAbove bound the rows that were read; outside
	// them the table holds figures from memory. NaN where there are none.
	EstimatedBelow, EstimatedAbove float64
	Source, Where, Status, Note    string

	log   bool                    // X is spaced by its logarithm
	curve []interp.FritschButland // by column
}

func tableOf(r columns.Row) *Table {
	return &Table{ID: r.Named("id"), XName: r.Text("x"), XUnit: r.Text("x_unit"), Unit: r.Text("unit"),
		log: r.Choice("spacing", "linear", "log") == "log", EstimatedBelow: r.Number("estimated_below"),
		EstimatedAbove: r.Number("estimated_above"), Source: r.Text("source"), Where: r.Text("where"),
		Status: r.Named("status"), Note: r.Text("note")}
}

// load reads the rows of a table: x, and a column of y under each other head.
func (t *Table) load(fsys fs.FS) error {
	name := "data/tables/" + t.ID + ".csv"
	text, err := fs.ReadFile(fsys, name)
	if err != nil {
		return err
	}
	all, err := columns.Open("chemicals/"+name, string(text))
	if err != nil {
		return err
	}
	heads := all.Heads()
	t.Columns = heads[1:]
	t.Y = make([][]float64, len(t.Columns))
	for n, r := range all.Rows() {
		t.X = append(t.X, r.Stated(heads[0]))
		if n > 0 && !(t.X[n] > t.X[n-1]) {
			r.Fault(heads[0], fmt.Errorf("%s does not rise", t.XName))
		}
		for c, head := range t.Columns {
			t.Y[c] = append(t.Y[c], r.Stated(head))
		}
	}
	if err := all.Err(); err != nil {
		return err
	}
	return t.fit()
}

// fit lays the curve of each column through its rows.
func (t *Table) fit() error {
	at := make([]float64, len(t.X))
	for i, x := range t.X {
		at[i] = t.place(x)
	}
	t.curve = make([]interp.FritschButland, len(t.Columns))
	for c := range t.Columns {
		if err := t.curve[c].Fit(at, t.Y[c]); err != nil {
			return fmt.Errorf("%s: %w", t.ID, err)
		}
	}
	return nil
}

func (t *Table) place(x float64) float64 {
	if t.log {
		return math.Log(x)
	}
	return x
}

// Column returns the position of a column, and false where there is none.
func (t *Table) Column(name string) (int, bool) {
	for i, c := range t.Columns {
		if strings.EqualFold(c, name) {
			return i, true
		}
	}
	return 0, false
}

// Range returns the first and the last x of the table.
func (t *Table) Range() (low, high float64) { return t.X[0], t.X[len(t.X)-1] }

// Doubtful reports whether nobody has read or measured the table: it is recalled or
// estimated.
func (t *Table) Doubtful() bool { return doubtful(t.Status) }

// Read reports whether x lies among the rows that were read and not recalled.
func (t *Table) Read(x float64) bool {
	return !t.Doubtful() && !(x < t.EstimatedBelow) && !(x > t.EstimatedAbove)
}

// At returns the value of a column at x, and false outside the table: nothing
// is extrapolated.
func (t *Table) At(column int, x float64) (float64, bool) {
	low, high := t.Range()
	if !(x >= low && x <= high) {
		return math.NaN(), false
	}
	return t.curve[column].Predict(t.place(x)), true
}

// interval returns the row at or before x, the last but one at the most.
func (t *Table) interval(x float64) int {
	lo, hi := 0, len(t.X)-1
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; t.X[mid] <= x {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// Linear returns the value of a column at x on the straight line between the
// rows beside it, and false outside the table. It is for coefficients whose
// sum, not whose curve, has to be kept, such as those of a vapour pressure.
func (t *Table) Linear(column int, x float64) (float64, bool) {
	low, high := t.Range()
	if !(x >= low && x <= high) {
		return math.NaN(), false
	}
	k := t.interval(x)
	s := (x - t.X[k]) / (t.X[k+1] - t.X[k])
	return t.Y[column][k]*(1-s) + t.Y[column][k+1]*s, true
}
