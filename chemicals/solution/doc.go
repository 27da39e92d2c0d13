// Package solution knows aqueous solutions of single acids and bases: density,
// heat capacity, heat of making and diluting them, boiling point. It must not
// know routes or what a solution is used for.
//
// A model is the name of a solute as Substance.Solution gives it: hf, hcl,
// h2so4, naoh, koh, nh3, hno3, h2o2, h3po4 or water. Not every property is
// held for every model; what is not held is unknown, and never a zero that
// could pass for a value.
//
// Heat capacities in J/g/K, w being the mass fraction, at the low end:
//
//	HF(aq)   4.18 - 1.9 w
//	HCl(aq)  0.975 (4.18 - 6.9 w + 5.4 w^2)
//
// Others by table. A boiling point is the root of p_acid + p_water = 101.325 kPa, with
// lg p = A - B/T straight in wt% between the columns of the tables. Dilute HF has the law
// of its dissociation; salt raises a pressure by a factor. The heat of dilution is the
// difference of two integral heats. Nothing is extrapolated in silence: below a table a
// pressure goes in proportion and is a bound, beyond it the line is unknown.
package solution
