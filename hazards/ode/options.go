package ode

// Method names the integration method.
type Method int8

// The methods.
const (
	// Automatic starts explicit, goes to the implicit method where stiffness
	// rather than accuracy sets the step, and comes back where it does not.
	Automatic Method = iota
	// Explicit is a Runge-Kutta pair of order 5(4), dense output of order 4.
	Explicit
	// Implicit is a Rosenbrock pair of order 4(3), L-stable, dense output of
	// order 3.
	Implicit
)

// Options say how exact and how long.
type Options struct {
	// RelTol is the relative tolerance of one step, 1e-14 to 0.1. There is no
	// default: a tolerance is a decision.
	RelTol float64

	// AbsTol is the absolute tolerance of one step in the unit of each state,
	// one for all states or one a state, each above zero. A state below
	// AbsTol/RelTol is not held to relative accuracy.
	AbsTol []float64

	Method Method

	InitialStep float64 // first step of every piece; 0: found from f
	MaxStep     float64 // 0: no bound
	MaxSteps    int     // steps tried, over all pieces; 0: 100000

	// Discard keeps no trajectory: the Result then has the end, the events,
	// the peaks and the statistics, but At and After fail. It saves memory.
	Discard bool

	// Plain takes the peaks as the dense output has them, good to about RelTol,
	// and does not repeat their neighbourhood with finer steps.
	Plain bool
}

const (
	leastRelTol     = 1e-14
	greatestRelTol  = 0.1
	defaultMaxSteps = 100000
)
