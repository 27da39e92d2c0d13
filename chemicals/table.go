package chemicals

import (
	"fmt"
	"io/fs"
	"math"
	"strings"

	"gonum.org/v1/gonum/interp"
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

const tableHeader = "id,x,x_unit,unit,spacing,estimated_below,estimated_above,source,where,status,note"

func loadTable(fsys fs.FS, r []string) (*Table, error) {
	t := &Table{ID: r[0], XName: r[1], XUnit: r[2], Unit: r[3], log: r[4] == "log",
		Source: r[7], Where: r[8], Status: r[9], Note: r[10]}
	var err error
	if t.EstimatedBelow, err = readNumber(r[5]); err != nil {
		return nil, err
	}
	if t.EstimatedAbove, err = readNumber(r[6]); err != nil {
		return nil, err
	}
	records, err := readCSV(fsys, "data/tables/"+t.ID+".csv", "")
	if err != nil {
		return nil, err
	}
	return t, t.fill(records)
}

func (t *Table) fill(records [][]string) error {
	t.Columns = records[0][1:]
	t.Y = make([][]float64, len(t.Columns))
	for n, r := range records[1:] {
		x, err := readNumber(r[0])
		if err != nil {
			return err
		}
		if n > 0 && !(x > t.X[n-1]) {
			return fmt.Errorf("%s: %s does not rise at row %d", t.ID, t.XName, n+2)
		}
		t.X = append(t.X, x)
		for c := range t.Columns {
			y, err := readNumber(r[c+1])
			if err != nil {
				return err
			}
			t.Y[c] = append(t.Y[c], y)
		}
	}
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

// Read reports whether x lies among the rows that were read and not recalled.
func (t *Table) Read(x float64) bool {
	return !(x < t.EstimatedBelow) && !(x > t.EstimatedAbove)
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
