// Package scrubbing knows what the gas of a reviewed route needs on its way out: what base
// and column take its acid up, what comes back, what a line, a condenser, a duct and a stack
// have to be. It must not know how any of it is printed.
//
// All rests on the figures of the review, each at its best estimate and at its dangerous end.
// What base the gas of a place takes is that of the same route with a scrubber behind the
// place, assessed again. Hydrogen goes past all of it, always.
package scrubbing
