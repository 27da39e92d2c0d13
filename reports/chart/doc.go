// Package chart knows how curves are drawn as one SVG picture and told in
// sentences. It must not know what a curve is of: names, units and numbers come
// from the caller, who has already turned them into the units to be shown.
//
// A picture is black and grey on white, so that print and a reader who sees no
// colours lose nothing: curves differ in dashes and markers and are named at
// their ends, limits are lines named in words. It holds no script, no style
// sheet and no reference to anything outside itself, and every id in it begins
// with the one the caller gave, so many of them can stand in one page.
package chart
