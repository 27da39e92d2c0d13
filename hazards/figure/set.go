package figure

import "iter"

// Set is figures in their order, found by id, by quantity and by place. The figures
// are those of the list it was made of, not copies: their values may be set, and their
// ids may not.
type Set struct {
	list  []Figure
	first []int32 // of each quantity, by its row in the catalogue and last those of none; -1: none
	next  []int32 // of each figure, the next one of its quantity; -1: none
}

// NewSet indexes a list.
func NewSet(list []Figure) *Set {
	c := catalogue()
	s := &Set{list: list, first: make([]int32, len(c.rows)+1), next: make([]int32, len(list))}
	for i := range s.first {
		s.first[i] = -1
	}
	for i := len(list) - 1; i >= 0; i-- {
		row := s.row(list[i].Quantity)
		s.next[i], s.first[row] = s.first[row], int32(i)
	}
	return s
}

// row is that of a quantity in the catalogue, one past the last for one of none.
func (s *Set) row(quantity string) int {
	c := catalogue()
	if i, ok := c.index[quantity]; ok {
		return i
	}
	return len(c.rows)
}

// List is all of them, in order.
func (s *Set) List() []Figure { return s.list }

// Of are the figures of a quantity, in order. A set that is not there has none.
func (s *Set) Of(quantity string) iter.Seq[*Figure] {
	return func(yield func(*Figure) bool) {
		if s == nil {
			return
		}
		for i := s.first[s.row(quantity)]; i >= 0; i = s.next[i] {
			if f := &s.list[i]; f.Quantity == quantity && !yield(f) {
				return
			}
		}
	}
}

// At are the figures of a quantity at a place, in order.
func (s *Set) At(quantity string, place Place) iter.Seq[*Figure] {
	return func(yield func(*Figure) bool) {
		for f := range s.Of(quantity) {
			if f.Place == place && !yield(f) {
				return
			}
		}
	}
}

// Get is the figure with an id, nil where there is none.
func (s *Set) Get(id ID) *Figure {
	for f := range s.Of(id.Quantity) {
		if f.ID == id {
			return f
		}
	}
	return nil
}

// One is the figure of a quantity at a place by no agent and no case in particular, nil
// where there is none.
func (s *Set) One(quantity string, place Place) *Figure {
	return s.Get(ID{Quantity: quantity, Place: place})
}
