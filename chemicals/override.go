package chemicals

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"etchbound/chemicals/datum"
)

// Override is a number a route or site file puts in the place of a row. Value,
// Low and High are in the unit of the row; NaN stands for no end given.
type Override struct {
	ID               datum.ID
	Value, Low, High float64
	Unit             string // "" for the unit of the row
	Source           string // where the writer has it from; without one it counts as assumed
	At               string // place in the file
	From             string // "route" or "site"
}

// Applied is an override with what it replaced; Old is NaN and OldStatus ""
// where there was no row before.
type Applied struct {
	Override
	Old       float64
	OldStatus string
}

// Override returns a store with the rows replaced, site before route so that
// the route stands, and the list of what was replaced in that order. It is an
// error to give an id that is neither in the store nor of a kind that files may add to, a
// unit other than the row's, a value outside its own ends, a value that is not
// a number, one outside the band of what can be believed (an *OutsideBand), or one id twice from the same file.
func (s *Store) Override(o []Override) (*Store, []Applied, error) {
	if len(o) == 0 {
		return s, nil, nil
	}
	order := slices.Clone(o)
	slices.SortStableFunc(order, func(a, b Override) int { return rank(a) - rank(b) })
	rows, index := s.Rows(), make(map[datum.ID]int, len(o))
	applied := make([]Applied, 0, len(order))
	seen := map[[2]string]bool{}
	for _, v := range order {
		if key := [2]string{v.From, string(v.ID)}; seen[key] {
			return nil, nil, fmt.Errorf("%s: %s is given twice", v.At, v.ID)
		} else {
			seen[key] = true
		}
		i, ok := index[v.ID]
		if !ok {
			i, ok = s.rows.byID[v.ID]
		}
		if !ok {
			d, err := newRow(v)
			if err != nil {
				return nil, nil, err
			}
			i, rows = len(rows), append(rows, d)
		}
		index[v.ID] = i
		a, err := replace(&rows[i], v)
		if err != nil {
			return nil, nil, err
		}
		applied = append(applied, a)
	}
	return newStore(rows, s.rows.files), applied, nil
}

// Takes tells why Override would refuse one override, nil where it would take it, and
// the unit of the row that is replaced or opened, empty where there is none. It
// copies no row, unlike Override: a loader asks it of every datum of a file.
func (s *Store) Takes(o Override) (unit string, err error) {
	var row Datum
	if i, known := s.rows.byID[o.ID]; known {
		row = s.rows.rows[i]
	} else if row, err = newRow(o); err != nil {
		return "", err
	}
	_, err = replace(&row, o)
	return row.Unit, err
}

func rank(o Override) int {
	if o.From == "route" {
		return 1
	}
	return 0
}

// UnitOf is the unit of the row that an override replaces or opens, whatever its value;
// an error where there is no such row and none can be opened.
func (s *Store) UnitOf(o Override) (string, error) {
	if i, ok := s.rows.byID[o.ID]; ok {
		return s.rows.rows[i].Unit, nil
	}
	d, err := newRow(o)
	return d.Unit, err
}

func newRow(v Override) (Datum, error) {
	nan := math.NaN()
	symbol, unit, ok := opened(v.ID)
	if !ok {
		return Datum{}, fmt.Errorf("%s: there is no datum %q", v.At, v.ID)
	}
	return Datum{ID: v.ID, Symbol: symbol, Unit: unit, Value: nan, Low: nan, High: nan, Old: nan}, nil
}

// opened is the symbol and unit of a row that may be added: of a quantity that a file states
// with a range, or of a kind of number that files may state of what they hold. Every other
// id must exist, so that a misspelt one is refused and not silently kept.
func opened(id datum.ID) (symbol, unit string, ok bool) {
	if at, stated := id.Stated(); stated {
		return "x", "", at != ""
	}
	if k := id.Key(); k.Kind.Opens() && k.Subject != "" {
		return k.Kind.Symbol, k.Kind.Unit, true
	}
	return "", "", false
}

// replace puts the override into the row. A row with its own stated range no
// longer moves with its group.
func replace(d *Datum, v Override) (Applied, error) {
	if err := v.check(d); err != nil {
		return Applied{}, err
	}
	a := Applied{v, d.Value, d.Status}
	d.Old, d.From, d.OverriddenBy = d.Value, v.From, strings.TrimSpace(v.From+" "+v.At)
	d.Value, d.Low, d.High, d.Group = v.Value, v.Low, v.High, ""
	d.Source, d.Where, d.Note = v.Source, v.At, ""
	d.Status = "stated"
	if strings.TrimSpace(v.Source) == "" {
		d.Status = "assumed"
	}
	switch {
	case math.IsNaN(v.Low) || math.IsNaN(v.High):
		d.Shape = ""
	case d.Shape == "" || d.Shape == "bound":
		d.Shape = "normal"
	}
	return a, nil
}

func (v Override) check(d *Datum) error {
	switch {
	case math.IsNaN(v.Value) || math.IsInf(v.Value, 0) || math.IsInf(v.Low, 0) || math.IsInf(v.High, 0):
		return fmt.Errorf("%s: %s is not a number", v.At, v.ID)
	case v.Unit != "" && v.Unit != d.Unit:
		return fmt.Errorf("%s: %s is in %q, not in %q", v.At, v.ID, d.Unit, v.Unit)
	case math.IsNaN(v.Low) != math.IsNaN(v.High):
		return fmt.Errorf("%s: %s has one end of a range; give both or none", v.At, v.ID)
	case v.Low > v.Value || v.High < v.Value:
		return fmt.Errorf("%s: %s lies outside its own range", v.At, v.ID)
	}
	return v.believed(d)
}
