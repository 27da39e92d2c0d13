// Package levers knows what a writer can change of a route, and searches what of it takes
// away that it exceeds. It must not know how anything is computed inside an assessment, nor
// how it is printed.
//
// # Search
//
// A vessel that is shut over an etch is opened before anything else: of a shut one nothing is
// told of what would be breathed if it failed, so that opening it brings findings of failures,
// and no search that lets none come would open it. What comes after is held against the route
// so opened.
//
// Levers are rows of levers.csv, the smallest change first; each is a handful of values of
// one place of the file. A lever is tried where something exceeds that it can help. Of the
// values that leave fewest exceeding the smallest is taken. Where none alone helps, levers
// are tried together: one that takes something away and makes something else exceed, with
// those that help that, at most three. No gain makes up for a failure more, a step against
// a rule of order or a pair that must not meet. Where that does not help either, the one that comes nearest is
// taken and the search goes on. At the end every change that buys nothing is taken back.
//
// Of first rank is what exceeds over its best estimate, or is not known; then what only its
// dangerous end exceeds, judged with the data where they stand at that end; failures may
// not become more. All candidates are assessed as the loader reads the changed file; the
// file that comes out, and the one that went in, are reviewed by hazards.Make.
//
// # What is no lever
//
// Data, what was measured, impurities, jurisdiction, limits and attendance are not touched.
// What was measured under conditions that a change moves is taken out, and that is told. A
// rating, what a lid is made of, the flow of a hood and the batch are never written: of them
// it is told what they would do.
package levers
