// Package order knows what may not come to what in which order: powder before its
// acid, a hold before its powder, base to acid that nobody washed out. It must not know
// how much heat or gas that gives, nor move material.
//
// What meets is found by what substances are, by their classes and by what lies in a
// place, and held against the rows of rules.csv: there, what is in the place before;
// comes, what comes to it. A row that says met holds only where the acid and the base
// that meet can warm the place by more than may be left out. What is not held may be
// anything: a rule that it may go against is unknown.
//
//	order.against    rules that a step goes against
//
// What is told of two that are mixed stands with what must not meet (package meeting): the
// first row that fits counts.
package order
