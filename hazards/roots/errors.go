package roots

import "fmt"

// BracketError says that the function has the same sign at both ends, so that
// no zero is enclosed: none, or an even number of them.
type BracketError struct{ Low, High, AtLow, AtHigh float64 }

func (e *BracketError) Error() string {
	return fmt.Sprintf("roots: no change of sign between %g (%g) and %g (%g)", e.Low, e.AtLow, e.High, e.AtHigh)
}

// ValueError says that the function, or an end of the bracket, is not a finite
// number.
type ValueError struct{ X, Value float64 }

func (e *ValueError) Error() string {
	return fmt.Sprintf("roots: value %g at %g is not finite", e.Value, e.X)
}

// CallsError says that MaxCalls were spent; Low and High hold the zero still.
type CallsError struct{ Low, High float64 }

func (e *CallsError) Error() string {
	return fmt.Sprintf("roots: not settled after %d calls, between %g and %g", MaxCalls, e.Low, e.High)
}

// ToleranceError says that the tolerance is negative or not finite.
type ToleranceError struct{ Tolerance float64 }

func (e *ToleranceError) Error() string {
	return fmt.Sprintf("roots: tolerance %g is not a number of zero or more", e.Tolerance)
}
