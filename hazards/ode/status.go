package ode

import "fmt"

// Status says how an integration ended. The list is closed.
type Status int8

// The ends. Reached and Stopped are answers, the others are failures.
const (
	Reached           Status = iota // To was reached
	Stopped                         // a terminal event ended the run before To
	BadProblem                      // a field of the Problem or the Options cannot be used
	BadTolerance                    // RelTol or AbsTol is missing or outside its range
	NonFiniteAtStart                // Rate is not finite at From
	NonFiniteRate                   // Rate or Jacobian is not finite later, however short the step
	NonFiniteScalar                 // an event or peak function is not finite on the solution
	NonFiniteJump                   // a switch left a state that is not finite
	TooManySteps                    // MaxSteps were tried
	StepTooSmall                    // the tolerance asks for a step that t cannot resolve
	SingularMatrix                  // the matrix of the implicit method cannot be factored
	EventNotBracketed               // a Required event did not happen
	statusCount                     // number of states above
)

var statusText = [statusCount]string{
	Reached:           "end reached",
	Stopped:           "stopped by an event",
	BadProblem:        "problem or options cannot be used",
	BadTolerance:      "tolerance missing or out of range",
	NonFiniteAtStart:  "right-hand side not finite at the start",
	NonFiniteRate:     "right-hand side not finite",
	NonFiniteScalar:   "event or peak function not finite",
	NonFiniteJump:     "state not finite after a switch",
	TooManySteps:      "too many steps",
	StepTooSmall:      "step too small",
	SingularMatrix:    "singular matrix",
	EventNotBracketed: "required event did not happen",
}

func (s Status) String() string {
	if s < 0 || s >= statusCount {
		return fmt.Sprintf("status %d", int(s))
	}
	return statusText[s]
}

// Failed tells whether the status is a failure.
func (s Status) Failed() bool { return s != Reached && s != Stopped }

// Failure is the error of Solve. T is the time reached, in the caller's unit.
type Failure struct {
	Status Status
	T      float64
	Detail string // what was wrong, for the person who wrote the input
}

func (f *Failure) Error() string {
	if f.Detail == "" {
		return fmt.Sprintf("ode: %s at t = %g", f.Status, f.T)
	}
	return fmt.Sprintf("ode: %s at t = %g: %s", f.Status, f.T, f.Detail)
}
