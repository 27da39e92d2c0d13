// Package chemicals knows substances and the data about them: elements and
// formulas, the library of substances, and the store of sourced numbers with
// their ranges. It must not know routes, hazards or how anything is printed.
package chemicals
