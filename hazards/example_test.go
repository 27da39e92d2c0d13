package hazards_test

import (
	"fmt"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
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

func smallCase() route.Case {
	r, problems, err := route.Load("small.yaml", strings.NewReader(small))
	if err != nil || r == nil {
		panic(fmt.Sprint(err, problems))
	}
	c, err := route.NewCase(r, nil, limit.Base())
	if err != nil {
		panic(err)
	}
	return c
}

// An assessment has central values; the sheet keeps how each was made.
func ExampleAssess() {
	sheet := working.NewSheet()
	a := hazards.Assess(smallCase(), sheet)
	if a.Err != nil {
		fmt.Println(a.Err)
		return
	}
	for i := range a.Figures {
		if f := &a.Figures[i]; f.ID.String() == "gas.hydrogen.total" {
			fmt.Printf("%s = %.3f %s, %v\n", f.ID, f.Value.V, f.Value.Unit, f.Value.Status)
		}
	}
	// Output: gas.hydrogen.total = 0.377 L, estimated
}

// A review adds the range of each figure and the verdicts.
func ExampleMake() {
	r, err := hazards.Make(smallCase())
	if err != nil {
		fmt.Println(err)
		return
	}
	for i := range r.Findings {
		if f := &r.Findings[i]; f.ID().String() == "heat.adiabatic_rise@2+severity_medium" {
			fmt.Printf("%s: %v, %v\n", f.ID(), f.Verdict, f.Surely)
		}
	}
	// Output: heat.adiabatic_rise@2+severity_medium: exceeds, end
}
