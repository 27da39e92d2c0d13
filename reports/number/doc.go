// Package number knows how a figure is put to a reader: its unit, its digits by the width
// of its range, what is left of a limit, and the words where a number would say nothing.
// It must not know how a figure came about, nor where it stands on a page.
package number
