package chemicals

import (
	"math"
	"math/bits"
	"slices"
)

// Reads are the rows that were read of a store, and of every store made from it by
// With, with the values that the store has there. They are noted while one
// calculation goes on and are not safe for several at a time; once it is over they
// are never changed.
type Reads struct {
	of   *Store
	rows []uint64 // a bit for each Datum.Index
}

// Noting returns the same store with what is read of it. What a store made from it
// by With replaces counts as read where it is read; one made by Override has read
// every row.
func (s *Store) Noting() (*Store, *Reads) {
	r := &Reads{of: s, rows: make([]uint64, (len(s.values)+63)/64)}
	return &Store{rows: s.rows, values: s.values, reads: r}, r
}

// Noted are the reads so far of a store that notes them, nil of another.
func (s *Store) Noted() *Reads {
	if s.reads == nil {
		return nil
	}
	return &Reads{of: s, rows: slices.Clone(s.reads.rows)}
}

// Note counts as read what was read of a store with the same rows.
func (s *Store) Note(r *Reads) {
	if s.reads == nil {
		return
	}
	for w, set := range r.rows {
		s.reads.rows[w] |= set
	}
}

func (s *Store) note(i int) {
	if s.reads != nil {
		s.reads.rows[i>>6] |= 1 << (i & 63)
	}
}

// Same reports whether a store has the same value at every row that was read, to
// the bit. Stores of different rows are never the same.
func (r *Reads) Same(s *Store) bool {
	if r.of.rows != s.rows {
		return false
	}
	for w, set := range r.rows {
		for ; set != 0; set &= set - 1 {
			i := w<<6 + bits.TrailingZeros64(set)
			if math.Float64bits(r.of.values[i]) != math.Float64bits(s.values[i]) {
				return false
			}
		}
	}
	return true
}

// Indices lists the rows that were read, by their index, rising.
func (r *Reads) Indices() []int {
	var out []int
	for w, set := range r.rows {
		for ; set != 0; set &= set - 1 {
			out = append(out, w<<6+bits.TrailingZeros64(set))
		}
	}
	return out
}
