package columns

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Row is one row of a table. A cell that cannot be read as asked is a fault of the
// table and reads as blank.
type Row struct {
	t     *Table
	line  int
	cells []string
}

// Line is the line of the file on which the row begins, from 1.
func (r Row) Line() int { return r.line }

// Fault records what is wrong with the cell under a head, for a check that the table
// itself cannot make.
func (r Row) Fault(head string, err error) {
	r.t.fault(fmt.Errorf("%s, row %d (%s), column %s: %w", r.t.name, r.line, r.cells[0], head, err))
}

// Text is the cell under a head as it stands.
func (r Row) Text(head string) string {
	i := slices.Index(r.t.heads, head)
	if i < 0 {
		err := fmt.Errorf("%s: there is no column %q; there are %s", r.t.name, head, strings.Join(r.t.heads, ", "))
		if !slices.ContainsFunc(r.t.faults, func(f error) bool { return f.Error() == err.Error() }) {
			r.t.fault(err)
		}
		return ""
	}
	r.t.asked[i] = true
	return r.cells[i]
}

// Named is a cell that must not be blank.
func (r Row) Named(head string) string {
	s := r.Text(head)
	if s == "" {
		r.Fault(head, fmt.Errorf("it must not be blank"))
	}
	return s
}

// Number is a cell as a number; not a number where it is blank.
func (r Row) Number(head string) float64 {
	s := r.Text(head)
	if s == "" {
		return math.NaN()
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		r.Fault(head, fmt.Errorf("%q is not a number", s))
		return math.NaN()
	}
	return v
}

// Stated is a cell that must hold a number.
func (r Row) Stated(head string) float64 {
	r.Named(head)
	return r.Number(head)
}

// Count is a cell as a whole number; 0 where it is blank.
func (r Row) Count(head string) int {
	s := r.Text(head)
	if s == "" {
		return 0
	}
	n, err := strconv.Atoi(s)
	if err != nil {
		r.Fault(head, fmt.Errorf("%q is not a whole number", s))
	}
	return n
}

// List is a cell whose parts stand between upright strokes: "beaker|bottle". It is
// empty where the cell is blank; a blank part is a fault.
func (r Row) List(head string) []string {
	s := r.Text(head)
	if s == "" {
		return nil
	}
	out := strings.Split(s, "|")
	for _, part := range out {
		if strings.TrimSpace(part) == "" {
			r.Fault(head, fmt.Errorf("%q has a blank part", s))
		}
	}
	return out
}

// Yes is whether a cell says yes; no and blank are that it does not.
func (r Row) Yes(head string) bool { return r.Choice(head, "", "no", "yes") == "yes" }

// Choice is a cell that must be one of some words. A blank one has to be among them
// to be taken.
func (r Row) Choice(head string, of ...string) string {
	s := r.Text(head)
	if !slices.Contains(of, s) {
		r.Fault(head, fmt.Errorf("%q is not one of %s", s, strings.Join(of, ", ")))
		return ""
	}
	return s
}
