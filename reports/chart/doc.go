// Package chart knows how a curve is drawn as SVG with its data beside it. It
// must not know what the curve is of. Nothing is drawn yet: the review lists
// its figures and has no curves.
package chart
