package quantity

import (
	"errors"
	"fmt"
)

// The reasons for which a text is no quantity; an *Error wraps one of them.
var (
	ErrNumber    = errors.New("not a plain decimal number")
	ErrNoUnit    = errors.New("no unit")
	ErrUnit      = errors.New("unknown unit")
	ErrDimension = errors.New("unit of another dimension")
	ErrRange     = errors.New("range that does not hold its value")
	ErrSize      = errors.New("value that cannot be meant")

	// ErrFinite is the ErrNumber of nan and inf, by which some mean that a value
	// is not known.
	ErrFinite = fmt.Errorf("%w: not finite", ErrNumber)
)

// Error says why a text is no quantity. Offset is where the trouble begins, in
// runes from the start of Text.
type Error struct {
	Reason   error
	Text     string // the whole text
	Found    string // the part that is wrong
	What     string // what it is, in words
	Accepted string
	Hint     string // may be empty
	Offset   int
	ranged   bool // the hint shows a range, which not every key takes
}

// Error gives the message in one line, without where it stands.
func (e *Error) Error() string {
	s := e.Words()
	if e.Accepted != "" {
		s += "; accepted: " + e.Accepted
	}
	if e.Hint != "" {
		s += "; " + e.Hint
	}
	return s
}

// Words says what is wrong with the part that is wrong, and nothing else.
func (e *Error) Words() string {
	if e.Found == "" {
		return e.What
	}
	return "\"" + e.Found + "\" is " + e.What
}

// Unwrap gives the reason.
func (e *Error) Unwrap() error { return e.Reason }
