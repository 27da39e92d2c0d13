// Package hazards joins the walk, the vessels and the readers into one pure
// function, Assess, and adds ranges and verdicts to it in Review. It must not
// know how anything is printed, nor read a clock, a file or the environment.
package hazards

import (
	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
	"etchbound/hazards/vessel"
)

// Assessment is what one set of central values gives.
type Assessment struct {
	Figures  []figure.Figure // with bare sums; ranges not set
	Walk     process.Walk
	Runs     []vessel.Run
	Courses  []course.Course
	Warnings []string
	Err      error // the route cannot be walked
}

// Review is an assessment with ranges, verdicts and working.
type Review struct {
	Case        route.Case
	Figures     []figure.Figure // Low and High set; bare members added
	Findings    []figure.Finding
	Sheet       *working.Sheet
	Walk        process.Walk
	Runs        []vessel.Run
	Courses     []course.Course
	Used        []chemicals.Datum   // rows the traced run read, by id
	Applied     []chemicals.Applied // overrides, with old and new value
	Assumptions []Assumption
	Unknown     []UnknownItem
	NotAssessed []string // catalogued quantities no model covers yet
	Warnings    []string
	Holds       []Hold
}

// Hold is a point at which work stops until something is so.
type Hold struct {
	ID   string
	Text string
}

// Assumption is a value nobody stated or verified, with what it moves.
type Assumption struct {
	ID    string
	Text  string
	Value float64
	Unit  string
	Moves []Move
}

// Move is the swing of one figure over the range of one assumption.
type Move struct {
	Figure   string
	From, To float64
}

// UnknownItem is something missing that could change the answer.
type UnknownItem struct {
	ID      string
	Text    string
	Measure string
	Figures []string
}
