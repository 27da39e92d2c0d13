package chemicals

import (
	"math"
	"slices"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

// Store holds the data of one assessment: the embedded rows with whatever a
// route, a site or a draw replaced. A Store is never changed once made, so
// that many goroutines can read one.
type Store struct {
	rows   *rowSet
	values []float64 // by Datum.Index; NaN is a row taken away
	reads  *Reads    // nil where nobody asks what is read
}

// rowSet is what stores share: all of the rows but their values.
type rowSet struct {
	rows    []Datum
	nums    []working.Num // of the rows as stored; With changes only V
	byID    map[datum.ID]int
	weights [NumElements]int // index of the row of each atomic weight, -1 none
	files   *files
}

// Base returns the embedded data. It is parsed on the first call; later calls
// return the same Store. Safe for concurrent use.
func Base() *Store { return base() }

// Num returns a row as a number with the symbol and unit of the row. Only what was
// read or computed exactly from what was is known; the rest is at best estimated,
// bounds are bounds. Where the row is
// absent or was taken away, the number is unknown and lacks id.
func (s *Store) Num(id datum.ID) working.Num {
	i, ok := s.rows.byID[id]
	if !ok {
		return working.Datum("", "", math.NaN(), working.Unknown, id)
	}
	return s.num(i)
}

func (s *Store) num(i int) working.Num {
	s.note(i)
	v := s.values[i]
	if math.IsNaN(v) {
		d := &s.rows.rows[i]
		return working.Datum(d.Symbol, d.Unit, v, working.Unknown, d.ID)
	}
	n := s.rows.nums[i]
	n.V = v
	return n
}

// weight is Num of weight.<element>, without the search.
func (s *Store) weight(element int) working.Num {
	if i := s.rows.weights[element]; i >= 0 {
		return s.num(i)
	}
	return s.Num(datum.Of("weight", elementSymbols[element]))
}

// With returns a store in which the rows at the given indices have other
// values, in the units of the rows. NaN takes a row away. An index outside the
// store is ignored.
func (s *Store) With(values map[int]float64) *Store {
	out := &Store{rows: s.rows, values: slices.Clone(s.values), reads: s.reads}
	for i, v := range values {
		if i >= 0 && i < len(out.values) {
			out.values[i] = v
		}
	}
	return out
}

// Alike reports whether another store has the same rows with the same values, so that one serves
// for the other.
func (s *Store) Alike(o *Store) bool {
	same := func(x, y float64) bool { return math.Float64bits(x) == math.Float64bits(y) }
	return s.rows == o.rows && slices.EqualFunc(s.values, o.values, same) ||
		s.rows.files == o.rows.files && slices.EqualFunc(s.rows.rows, o.rows.rows, func(x, y Datum) bool {
			if !same(x.Value, y.Value) || !same(x.Low, y.Low) || !same(x.High, y.High) || !same(x.Old, y.Old) {
				return false
			}
			x.Value, x.Low, x.High, x.Old = 0, 0, 0, 0
			y.Value, y.Low, y.High, y.Old = 0, 0, 0, 0
			return x == y
		}) && slices.EqualFunc(s.values, o.values, same)
}

// Row returns a row with its value in this store, and false where there is
// none or it was taken away.
func (s *Store) Row(id datum.ID) (Datum, bool) {
	i, ok := s.rows.byID[id]
	if !ok {
		return Datum{}, false
	}
	s.note(i)
	d := s.rows.rows[i]
	d.Value = s.values[i]
	return d, !math.IsNaN(d.Value)
}

// ReplacedBy is the file that put the value of a row into this store, route or site; empty
// where it is that of the tables, or there is no row. No run of ranges changes it, so that to
// ask for it is not to read the value.
func (s *Store) ReplacedBy(id datum.ID) string {
	i, ok := s.rows.byID[id]
	if !ok {
		return ""
	}
	return s.rows.rows[i].From
}

// Rows returns every row with its value in this store, in file order.
func (s *Store) Rows() []Datum {
	out := slices.Clone(s.rows.rows)
	for i := range out {
		s.note(i)
		out[i].Value = s.values[i]
	}
	return out
}

// Source returns the source with a key, and false where there is none.
func (s *Store) Source(key string) (Source, bool) {
	i, ok := s.rows.files.bySource[key]
	if !ok {
		return Source{}, false
	}
	return s.rows.files.sources[i], true
}

// Sources returns every source, in file order.
func (s *Store) Sources() []Source { return slices.Clone(s.rows.files.sources) }

// Table returns the table with an id, and false where there is none.
func (s *Store) Table(id string) (*Table, bool) {
	t, ok := s.rows.files.tables[id]
	return t, ok
}

// Tables returns every table, in file order.
func (s *Store) Tables() []*Table { return slices.Clone(s.rows.files.tableList) }

func newRowSet(rows []Datum, f *files) *rowSet {
	r := &rowSet{rows: rows, files: f, byID: make(map[datum.ID]int, len(rows)), nums: make([]working.Num, len(rows))}
	for i := range rows {
		rows[i].Index = i
		r.byID[rows[i].ID] = i
		d := &rows[i]
		// A row without a value now may get one from With, so the number is
		// made with a stand-in and its value is filled in when it is asked for.
		r.nums[i] = working.Datum(d.Symbol, d.Unit, 0, d.trust(), d.ID)
	}
	for e := range r.weights {
		r.weights[e] = -1
		if i, ok := r.byID[datum.Of("weight", elementSymbols[e])]; ok {
			r.weights[e] = i
		}
	}
	return r
}

func newStore(rows []Datum, f *files) *Store {
	s := &Store{rows: newRowSet(rows, f), values: make([]float64, len(rows))}
	for i := range rows {
		s.values[i] = rows[i].Value
	}
	return s
}
