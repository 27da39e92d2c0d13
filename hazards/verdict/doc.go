// Package verdict holds figures with their ranges against limits: which figure has
// a verdict, which limit it is held against, what a finding means and where work
// has to stop. It must not know how a figure or its range is found, nor how
// anything is printed.
//
// A verdict is within, near, unknown or exceeds, at the dangerous end of the range; unknown
// ranks with exceeds (package limit has the comparison). What would meet a limit is worded
// as necessary, not sufficient, and no word promises anything. A figure that nobody knows
// and that has no limit is a finding of its own, has_to_be_known.
package verdict
