package chemicals

import (
	"fmt"
	"io/fs"
	"math"
	"strings"
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

	log   bool // X is spaced by its logarithm
	at    []float64
	slope [][]float64
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
	for _, x := range t.X {
		t.at = append(t.at, t.place(x))
	}
	for c := range t.Columns {
		t.slope = append(t.slope, monotoneSlopes(t.at, t.Y[c]))
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
	k, u := t.interval(x), t.place(x)
	y, d := t.Y[column], t.slope[column]
	return hermite(u, t.at[k], t.at[k+1], y[k], y[k+1], d[k], d[k+1]), true
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

func hermite(x, x0, x1, y0, y1, d0, d1 float64) float64 {
	h := x1 - x0
	s := (x - x0) / h
	q := 1 - s
	return y0*q*q*(1+2*s) + y1*s*s*(3-2*s) + h*s*q*(d0*q-d1*s)
}

// monotoneSlopes are the derivatives of a piecewise cubic that keeps the
// rises and falls of the data: the harmonic mean of the two chords, weighted
// by the spacing, and zero at a turning point.
func monotoneSlopes(x, y []float64) []float64 {
	n := len(x)
	d := make([]float64, n)
	if n < 2 {
		return d
	}
	chord := func(k int) float64 { return (y[k+1] - y[k]) / (x[k+1] - x[k]) }
	for k := 1; k < n-1; k++ {
		a, b := chord(k-1), chord(k)
		if a*b <= 0 {
			continue
		}
		h0, h1 := x[k]-x[k-1], x[k+1]-x[k]
		d[k] = 3 * (h0 + h1) / ((2*h1+h0)/a + (h1+2*h0)/b)
	}
	d[0], d[n-1] = chord(0), chord(n-2)
	if n > 2 {
		d[0] = endSlope(x[1]-x[0], x[2]-x[1], chord(0), chord(1))
		d[n-1] = endSlope(x[n-1]-x[n-2], x[n-2]-x[n-3], chord(n-2), chord(n-3))
	}
	return d
}

// endSlope is the three-point derivative at an end, held back where it would
// change the sense of the first chord.
func endSlope(h0, h1, a, b float64) float64 {
	d := ((2*h0+h1)*a - h0*b) / (h0 + h1)
	switch {
	case d*a <= 0:
		return 0
	case a*b <= 0 && math.Abs(d) > 3*math.Abs(a):
		return 3 * a
	}
	return d
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
