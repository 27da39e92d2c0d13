// Package number knows how a person writes a value, its range and what is left of a
// limit: in which unit, to how many digits, and in which words where a number would say
// nothing. It must not know how a number came about, nor on which page it stands.
package number
