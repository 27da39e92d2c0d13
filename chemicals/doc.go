// Package chemicals knows substances and the data about them: elements and
// formulas, the library of substances, and the store of sourced numbers with
// their ranges. It must not know routes, hazards or how anything is printed.
//
// A datum has 95 % ends, or bounds where its shape is bound. Blank is absent, never zero.
// Its status is read (seen in the source), two-sources (two independent ones agree),
// computed, memory (own knowledge, not looked up) or assumed (a choice made to fill a gap).
// Rows of one group move together. A table moves by one factor as a whole. Route data beat
// those of the site, and those beat ours.
package chemicals
