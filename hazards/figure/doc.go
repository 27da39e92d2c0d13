// Package figure knows what a figure and a finding are and what each catalogued
// quantity is called, measured in and endangered by. It must not know which
// hazard computes one.
//
// The bare quantity always exists: it is the sum or the worst of its members, as the
// catalogue says, or the only one, and Of names the member that a worst one repeats. An id
// that does not apply is absent; one that applies and cannot be computed is unknown.
//
//	id      = quantity [ "@" place ] [ "/" agent ] [ ":" case ]
//	finding = figure id "+" limit id
//
// Surety says how much of the range of a figure has the verdict of its finding: all of it,
// the best estimate too, or only the dangerous end. A bound has no best estimate: the
// middle of what two laws bracket is no likelier than its ends. Of an unknown verdict
// nothing is said, which softens it by nothing.
package figure
