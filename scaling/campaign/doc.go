// Package campaign knows what a route comes to that is made again and again: how many batches
// a week its vessels and its people allow, what a week and a year take and leave, how much has
// to be kept of what it takes, and what fewer and larger batches change. It must not know how
// any of it is printed.
//
// All rests on the review of a batch, and on those of the other sizes, each at its best
// estimate and at its dangerous end. A time that nobody states is not nothing: the batches of
// a week are then no more than a bound, and what they take and leave is counted by that bound.
package campaign
