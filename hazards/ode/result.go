package ode

// Result is what an integration gives. On a failure it holds what was reached
// before it; no value in it is ever NaN or infinite.
type Result struct {
	Status Status
	T      float64   // time reached
	Y      []float64 // state there
	Hits   []Hit     // events in order of time
	Peaks  []Maximum // one for each Problem.Peaks, in its order
	Stats  Stats

	path path
}

// Hit is an event that happened.
type Hit struct {
	Event  int // index in Problem.Events
	Piece  int
	T      float64
	Y      []float64
	Rising bool
}

// Maximum is the greatest value of a Peak.
type Maximum struct {
	Found bool // false only if the run failed before the first value
	Piece int
	T     float64 // the earliest time of the greatest value
	Value float64
	Y     []float64

	// Edge says that the greatest value is at From, at a switch or at the end
	// of the run, so that it may go on growing beyond: no stationary maximum.
	Edge bool
}

// Stats counts the work done.
type Stats struct {
	Steps          int // accepted
	Rejected       int // tried and not accepted
	ImplicitSteps  int // of the accepted, by the implicit method
	MethodChanges  int
	RateCalls      int // with those for the Jacobian and the peaks
	JacobianCalls  int // analytic or by differences
	Factorisations int
	ShortestStep   float64 // accepted, in the unit of t; 0 if none
	LongestStep    float64
}

func (s *Stats) accept(h float64) {
	if s.Steps == 0 || h < s.ShortestStep {
		s.ShortestStep = h
	}
	s.LongestStep = max(s.LongestStep, h)
	s.Steps++
}
