// Package selection knows what of a review is said first, and in which order: what is
// asked, what can kill without warning, the answers to the questions that people come
// with, the worst of the rest, where work stops, and what is not known. It must not
// know how any of it is printed, nor work out a figure or a verdict.
//
// A question is a row of questions.csv. One whose figures no model builds yet says
// that it is not assessed; when the model is there, the row answers it.
package selection
