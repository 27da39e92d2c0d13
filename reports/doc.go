// Package reports knows which pages and files are put before people and programs, and
// what each is made of: it is the door that the commands knock at, with one room a page
// behind it. It must not know any arithmetic of a hazard: every number that is printed
// was computed before it came here.
package reports
