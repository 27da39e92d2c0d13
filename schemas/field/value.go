package field

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"etchbound/schemas/quantity"
)

// Value is what a key holds in one file, to be told, compared and taken out.
type Value interface {
	Stated() bool
	String() string // as a person reads it; empty where it is not stated
	Same(Value) bool
	Clear() // as if the key had been left out
	Own()   // gives it memory of its own
}

// Word is a text that stands nowhere else, such as the name of a whole map.
type Word string

// The methods of a Value.
func (w Word) Stated() bool      { return w != "" }
func (w Word) String() string    { return string(w) }
func (w Word) Same(o Value) bool { return o.String() == string(w) }
func (w Word) Clear()            {}
func (w Word) Own()              {}

// Told is a value that is told by one function and taken out by another. Share, if
// there is one, gives it memory of its own. Counts is what counts where the key is
// left out, if that is the same as if it were written.
type Told struct {
	Tell   func() string
	Forget func()
	Share  func()
	Counts string
}

// Alike reports whether two values mean the same, though one may be written and the
// other left out.
func Alike(a, b Value) bool { return a.Same(b) || counts(a) != "" && counts(a) == counts(b) }

func counts(v Value) string {
	if t, ok := v.(Told); ok && !t.Stated() {
		return t.Counts
	}
	return v.String()
}

// The methods of a Value.
func (t Told) Stated() bool      { return t.Tell() != "" }
func (t Told) String() string    { return t.Tell() }
func (t Told) Same(o Value) bool { return o.String() == t.Tell() }
func (t Told) Clear()            { t.Forget() }

// Own is described with Value.
func (t Told) Own() {
	if t.Share != nil {
		t.Share()
	}
}

// Amount is a quantity.
type Amount struct{ Of *quantity.Value }

// The methods of a Value.
func (a Amount) Stated() bool   { return a.Of.Set }
func (a Amount) String() string { return a.Of.Text }
func (a Amount) Clear()         { *a.Of = quantity.Value{} }
func (a Amount) Own()           {}

// Same holds for the same quantity in another unit, to the last digits of a
// division.
func (a Amount) Same(o Value) bool {
	b, ok := o.(Amount)
	return ok && Equal(*a.Of, *b.Of)
}

// Equal reports whether two quantities state the same, in whatever unit.
func Equal(a, b quantity.Value) bool {
	if a.Set != b.Set || !a.Set {
		return a.Set == b.Set
	}
	if a.HasRange() != b.HasRange() || a.Dim != b.Dim || !near(a.SI, b.SI) {
		return false
	}
	return !a.HasRange() || near(a.Low, b.Low) && near(a.High, b.High)
}

func near(x, y float64) bool {
	return math.IsNaN(x) && math.IsNaN(y) || math.Abs(x-y) <= 1e-9*math.Max(math.Abs(x), math.Abs(y))
}

type words struct{ of *string }

func (w words) Stated() bool      { return *w.of != "" }
func (w words) String() string    { return *w.of }
func (w words) Same(o Value) bool { return *w.of == o.String() }
func (w words) Clear()            { *w.of = "" }
func (w words) Own()              {}

type flag struct{ of **bool }

func (f flag) Stated() bool { return *f.of != nil }
func (f flag) String() string {
	if *f.of == nil {
		return ""
	}
	return strconv.FormatBool(**f.of)
}
func (f flag) Same(o Value) bool { return f.String() == o.String() }
func (f flag) Clear()            { *f.of = nil }
func (f flag) Own()              { *f.of = clone(*f.of) }

type count struct{ of *int }

func (c count) Stated() bool { return *c.of != 0 }
func (c count) String() string {
	if *c.of == 0 {
		return ""
	}
	return strconv.Itoa(*c.of)
}
func (c count) Same(o Value) bool { return c.String() == o.String() }
func (c count) Clear()            { *c.of = 0 }
func (c count) Own()              {}

// plain is a number that is not stated where it is NaN.
type plain struct {
	of   *float64
	unit string
}

func (p plain) Stated() bool { return !math.IsNaN(*p.of) }
func (p plain) String() string {
	if math.IsNaN(*p.of) {
		return ""
	}
	return strings.TrimSpace(strconv.FormatFloat(*p.of, 'g', 12, 64) + " " + p.unit)
}
func (p plain) Same(o Value) bool {
	q, ok := o.(plain)
	return ok && p.unit == q.unit && near(*p.of, *q.of)
}
func (p plain) Clear() { *p.of = math.NaN() }
func (p plain) Own()   {}

// maybe is a number that is not stated where there is none.
type maybe struct{ of **float64 }

func (m maybe) Stated() bool { return *m.of != nil }
func (m maybe) String() string {
	if *m.of == nil {
		return ""
	}
	return strconv.FormatFloat(**m.of, 'g', -1, 64)
}
func (m maybe) Same(o Value) bool { return m.String() == o.String() }
func (m maybe) Clear()            { *m.of = nil }
func (m maybe) Own()              { *m.of = clone(*m.of) }

type texts struct{ of *[]string }

func (t texts) Stated() bool      { return len(*t.of) > 0 }
func (t texts) String() string    { return strings.Join(*t.of, ", ") }
func (t texts) Same(o Value) bool { return t.String() == o.String() }
func (t texts) Clear()            { *t.of = nil }
func (t texts) Own()              { *t.of = slices.Clone(*t.of) }

type amounts struct{ of *[]quantity.Value }

func (a amounts) Stated() bool { return len(*a.of) > 0 }
func (a amounts) String() string {
	var out []string
	for _, v := range *a.of {
		out = append(out, v.Text)
	}
	return strings.Join(out, ", ")
}
func (a amounts) Same(o Value) bool {
	b, ok := o.(amounts)
	return ok && slices.EqualFunc(*a.of, *b.of, Equal)
}
func (a amounts) Clear() { *a.of = nil }
func (a amounts) Own()   { *a.of = slices.Clone(*a.of) }

func clone[T any](p *T) *T {
	if p == nil {
		return nil
	}
	v := *p
	return &v
}
