// Package solution knows aqueous solutions of single acids and bases: density,
// heat capacity, heat of making and diluting them, boiling point. It must not
// know routes or what a solution is used for.
//
// A model is the name of a solute as Substance.Solution gives it: hf, hcl,
// h2so4, naoh, koh, nh3, hno3, h2o2, h3po4 or water. Not every property is
// held for every model; what is not held is unknown, and never a zero that
// could pass for a value.
package solution
