// Package roots knows how to find one zero of a continuous function of one
// variable inside a bracket. It must not know what the function means: units
// are the caller's, and it imports nothing of ours.
package roots

import "math"

// MaxCalls bounds the function calls of one search. Bisection alone needs
// about 1075 halvings from the widest possible bracket to the last bit; the
// method below is rarely past 60 and its worst case is bounded by this.
const MaxCalls = 1100

// Root is a located zero.
type Root struct {
	X     float64 // where the function is nearest to zero, caller's units
	Value float64 // the function at X
	Other float64 // the far end of the last bracket: the zero lies between X and Other
	Calls int     // function calls made
}

// Find returns a zero of f between low and high.
//
// The function must be continuous, and finite wherever it is called; its
// values at low and high must not have the same sign. low and high may come in
// either order. The search ends when the bracket around the zero is no wider
// than tolerance + 4 eps |x|, in the units of x; tolerance zero asks for the
// last bits. A function that jumps through zero has its jump located.
//
// Errors: *BracketError when the ends have the same sign, *ValueError when an
// end or a value is NaN or infinite, *CallsError when MaxCalls is spent, and
// *ToleranceError for a tolerance that is negative or not finite. With an
// error the Root holds no answer.
//
// Method: inverse quadratic interpolation and secant, kept honest by
// bisection (the Brent method). Algorithms for Minimization without
// Derivatives, Prentice-Hall, 1973, chapter 4.
func Find(f func(x float64) float64, low, high, tolerance float64) (Root, error) {
	if !(tolerance >= 0) || math.IsInf(tolerance, 1) {
		return Root{}, &ToleranceError{tolerance}
	}
	s := search{f: f, tolerance: tolerance}
	if err := s.open(low, high); err != nil {
		return Root{Calls: s.calls}, err
	}
	for !s.done() {
		if s.calls >= MaxCalls {
			return Root{Calls: s.calls}, &CallsError{s.a, s.b}
		}
		if err := s.advance(); err != nil {
			return Root{Calls: s.calls}, err
		}
	}
	return Root{X: s.b, Value: s.fb, Other: s.c, Calls: s.calls}, nil
}
