// Package limit knows limits, where they come from and how a number is held
// against one. It must not know which hazard a limit belongs to.
//
// A limit is held against the dangerous end x of a figure. The margin is the share of the
// limit that is left, for temperatures the kelvin:
//
//	margin = (L - x)/|L|     L - x for degC; signs turned where danger is low
//
//	exceeds  x beyond L
//	near     from half of L on, from 10 K below it, or as the limit says; a limit of 0
//	         has no near
//	unknown  x or L is not known; it ranks with exceeds
//	within   the rest
//
// Two numbers that differ by less than 1e-9 of the limit are the same, so that a verdict
// does not hang on the order in which terms were added, nor on the processor.
//
// A concentration averaged over longer than it lasts may be higher while it lasts
// (Exposure.Allowed). A local limit counts where it is stricter; where it is looser both
// stand, with a notice. A limit is named by where it comes from and its id (Key).
package limit
