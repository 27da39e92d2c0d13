// Package hazards makes the review of a case: its assessment with ranges, verdicts
// and what is not known. It must not know how anything is printed, nor read a
// clock, a file or the environment.
package hazards

import (
	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards/course"
	"etchbound/hazards/doubt"
	"etchbound/hazards/figure"
	"etchbound/hazards/labelling"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/ranges"
	"etchbound/hazards/rinsing"
	"etchbound/hazards/route"
	"etchbound/hazards/speciation"
	"etchbound/hazards/stock"
	"etchbound/hazards/treating"
	"etchbound/hazards/vessel"
)

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
	Tables      []*chemicals.Table  // and the tables it read, in that order
	Applied     []chemicals.Applied // overrides, with old and new value
	Milder      []Milder            // verdicts that those overrides made milder
	Turns       []ranges.Turn       // what each datum does to the verdicts that are near or exceed
	Leads       *ranges.Leads       // on what the dangerous ends stand; nil of a brief case
	Assumptions []Assumption
	Doubts      doubt.Counts // numbers used that nobody has read or measured
	Unknown     []UnknownItem
	NotAssessed []string // catalogued quantities no model covers yet
	Warnings    []phrase.Phrase
	Holds       []Hold
	Labels      []labelling.Label    // what stands on each bottle
	Treated     []treating.Liquor    // what each agent does to each liquor; nil of a brief case
	Containers  []treating.Container // of waste, batch by batch; nil of a brief case
	Rinsed      []rinsing.Wash       // what each decant holds; nil of a brief case
	Speciated   []speciation.Liquor
	Held        []stock.Holding // what the site keeps and a run takes, by CAS, then the powder
	Sums        []stock.Share   // of all of them together, where a programme adds up
}
