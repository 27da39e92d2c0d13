// Package columns knows tables of comma-separated values: a line of heads, in any
// order, and below it a row for each thing. It finds a cell by its head, reads it as
// text, a number, a list or a choice, and says of a fault in which file, row and
// column it stands. It must not know what any table is about.
//
// Lines that begin with # are remarks. A blank cell is absent: no text, a number that
// is not one, no list; it is never a zero. The heads of a table are those its reader
// asks for: one that is missing and one that nobody asks for are faults, so that
// neither a misspelt head nor a forgotten column passes.
package columns

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
)

// Table is the rows of one file, with the faults found in them so far.
type Table struct {
	name   string
	heads  []string
	asked  []bool
	rows   []Row
	faults []error
}

// most faults that are kept of one table: who wrote it mends these first.
const most = 20

// Open reads a table whose columns are not known beforehand. The name is the one
// under which faults are reported. A table without heads or without rows is refused.
func Open(name, text string) (*Table, error) {
	t := &Table{name: name}
	r := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\ufeff")))
	r.Comment, r.FieldsPerRecord = '#', -1
	for {
		cells, err := r.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		line, _ := r.FieldPos(0)
		if t.heads == nil {
			t.head(cells)
			continue
		}
		if len(cells) != len(t.heads) {
			t.fault(fmt.Errorf("%s, row %d: it has %d cells under %d heads", name, line, len(cells), len(t.heads)))
			continue
		}
		t.rows = append(t.rows, Row{t, line, cells})
	}
	if t.heads == nil || len(t.rows) == 0 && t.faults == nil {
		return nil, fmt.Errorf("%s: it needs a line of heads and a row below it", name)
	}
	return t, t.Err()
}

func (t *Table) head(cells []string) {
	t.heads, t.asked = cells, make([]bool, len(cells))
	for i, h := range cells {
		if slices.Contains(cells[:i], h) || h == "" {
			t.fault(fmt.Errorf("%s, head %d: %q is blank or stands there twice", t.name, i+1, h))
		}
	}
}

// Heads are the heads of the columns in the order of the file.
func (t *Table) Heads() []string { return slices.Clone(t.heads) }

// Rows are the rows in the order of the file.
func (t *Table) Rows() []Row { return t.rows }

// Err is what was found wrong so far, nil where nothing was.
func (t *Table) Err() error { return errors.Join(t.faults...) }

func (t *Table) fault(err error) {
	if len(t.faults) < most {
		t.faults = append(t.faults, err)
	}
}

// unasked finds the heads that no reader asked for.
func (t *Table) unasked() {
	for i, h := range t.heads {
		if !t.asked[i] {
			t.fault(fmt.Errorf("%s: the column %q is not known here; read are %s", t.name, h, t.known()))
		}
	}
}

// known are the heads that were asked for.
func (t *Table) known() string {
	var out []string
	for i, h := range t.heads {
		if t.asked[i] {
			out = append(out, h)
		}
	}
	return strings.Join(out, ", ")
}

// Read makes a thing of each row of a table, in the order of the file. The error
// names every fault with its file, row and column.
func Read[T any](name, text string, thing func(Row) T) ([]T, error) {
	t, err := Open(name, text)
	if err != nil {
		return nil, err
	}
	out := make([]T, len(t.rows))
	for i, r := range t.rows {
		out[i] = thing(r)
	}
	t.unasked()
	return out, t.Err()
}

// Must is Read of a table that is part of the program: a fault in it is a fault of
// the build, so it panics.
func Must[T any](name, text string, thing func(Row) T) []T {
	out, err := Read(name, text, thing)
	if err != nil {
		panic(err)
	}
	return out
}
