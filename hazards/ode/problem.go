package ode

// Problem is an initial-value problem y' = f(t, y) with known times at which
// f or y jumps. Units are the caller's; t is usually s.
//
// Every function gets the number of the piece it is called for: 0 before the
// first switch, 1 after it, and so on. A right-hand side that looks up its
// inputs by piece, never by time, is integrated right up to a switch from both
// sides. The functions must not keep or change y, and must give the same
// answer for the same arguments; then a Problem can be solved many times, and
// by several goroutines at once.
type Problem struct {
	From, To float64   // To >= From, both finite
	Start    []float64 // y at From, finite, at least one; not changed

	// Rate writes f(t, y) into dy, every entry of it. A value that is not
	// finite makes the solver try a shorter step, and fail if that does not
	// help.
	Rate func(piece int, t float64, y, dy []float64)

	// Jacobian writes the derivative of f row by row, j[i*n+k] = df_i/dy_k,
	// into j, which comes filled with zeros. Nil: differences of Rate.
	Jacobian func(piece int, t float64, y, j []float64)

	// Autonomous says that Rate does not depend on t within a piece, which
	// saves one call of Rate a step in the implicit method.
	Autonomous bool

	Switches []Switch // rising in time, strictly between From and To
	Events   []Event
	Peaks    []Peak
}

// Switch is a time at which the right-hand side jumps. The integration ends
// there to the last bit and starts afresh.
type Switch struct {
	At float64
	// Jump changes y at the switch, for the piece that begins; nil: no change.
	Jump func(piece int, t float64, y []float64)
}

// Scalar is a function of the state whose zero or maximum is looked for, in
// the caller's units. It must be finite along the solution.
type Scalar func(piece int, t float64, y []float64) float64

// Direction is the way in which an event passes zero.
type Direction int8

// The directions.
const (
	Either  Direction = 0
	Rising  Direction = 1
	Falling Direction = -1
)

// Event is a zero of a Scalar, found by its change of sign. A zero that is
// touched without a change of sign is not an event, and neither is a value of
// exactly zero at From. Where a switch makes the sign change, the event is at
// the switch.
//
// The sign is looked at twice a step: two zeros closer together than half a
// step can be missed. Set Options.MaxStep if that matters.
type Event struct {
	Of        Scalar
	Direction Direction
	Terminal  bool // the integration ends at the first one
	Required  bool // the run fails with EventNotBracketed if there is none by the end
}

// Peak asks for the greatest value of a Scalar over the whole run, ends and
// both sides of every switch included.
//
// A maximum inside a step is placed where the derivative along the solution is
// zero. That derivative is taken by moving y along f by up to 1/256 of a step to
// both sides, so Of should be smooth there; where that is not finite the best
// value at step ends and middles is given instead.
type Peak struct {
	Of Scalar
}
