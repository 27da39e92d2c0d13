package route_test

import (
	"fmt"
	"strings"

	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/schemas/quantity"
)

const small = `route: etchbound/1
title: One gram in dilute acid
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (worked example)}
places:
  pot: {kind: beaker, material: PTFE, capacity: 250 mL, closure: open}
steps:
  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 mL}], temperature: 20 degC}
  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 20 degC}
  - {do: hold, in: pot, temperature: 35 degC, time: 24 h}
`

// A route is read whole or not at all; problems that stop nothing are notices.
func ExampleLoad() {
	r, problems, err := route.Load("small.yaml", strings.NewReader(small))
	if err != nil || r == nil {
		fmt.Println(err, problems)
		return
	}
	fmt.Println(r.Title, "in", len(r.Steps), "steps")
	// Output: One gram in dilute acid in 3 steps
}

// What is wrong is told with file, line, column, what was found and what is
// accepted.
func ExampleLoad_refused() {
	text := strings.Replace(small, "over: 10 min", "over: 10", 1)
	r, problems, _ := route.Load("small.yaml", strings.NewReader(text))
	fmt.Println(r == nil)
	fmt.Println(problems[0].Short())
	// Output:
	// true
	// small.yaml:9:49: 10 is a number without a unit
}

// A case is a route at a batch, a site and limits, with the data they replace.
func ExampleNewCase() {
	r, _, err := route.Load("small.yaml", strings.NewReader(small))
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := route.NewCase(r.Scaled(quantity.Of(50, "g", quantity.Mass)), nil, limit.Base())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c.Route.Precursor.Mass.In("g"), "g in", c.Route.Places[0].Capacity.In("L"), "L")
	// Output: 50 g in 12.5 L
}
