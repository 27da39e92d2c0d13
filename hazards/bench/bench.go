// Package bench gives tests of readers a small route that has been bench. It must
// not know what a reader makes of it, and nothing but tests imports it.
package bench

import (
	"strings"
	"testing"

	"etchbound/hazards/course"
	"etchbound/hazards/figure"
	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// Head begins a route file: the places of a small bench.
const Head = `route: etchbound/1
title: check
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (certificate)}
places:
  pot: {kind: beaker, material: PTFE, closure: open, capacity: 250 mL, cooling: {kind: none}}
  drum: {kind: drum, material: HDPE, closure: vented, capacity: 5 L}
steps:
`

// Etch is a gram of powder added to 20 mL of 10 wt% hydrofluoric acid: steps 1 and 2.
const Etch = "  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 " +
	"mL}], temperature: 20 degC}\n" +
	"  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 20 degC}\n"

// Bench is a case on central values, with what its walk left behind.
type Bench struct {
	Case    route.Case
	Walk    process.Walk
	Courses []course.Course
}

// CaseOf is the case of a route that is written out, without a site.
func CaseOf(t testing.TB, text string) route.Case {
	t.Helper()
	r, problems, err := route.Load("check.yaml", strings.NewReader(text))
	if err != nil || r == nil {
		t.Fatal(err, problems)
	}
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Steps walks a route of these steps after Head.
func Steps(t testing.TB, steps ...string) Bench {
	t.Helper()
	c := CaseOf(t, Head+strings.Join(steps, ""))
	k, err := process.Go(c, nil)
	if err != nil {
		t.Fatal(err)
	}
	return Bench{c, k, course.Find(c, nil, &k, nil)}
}

// Find is the figure of an id among others, and a failed test where it is none.
func Find(t testing.TB, figs []figure.Figure, id string) figure.Figure {
	t.Helper()
	var ids []string
	for _, f := range figs {
		if f.ID.String() == id {
			return f
		}
		ids = append(ids, f.ID.String())
	}
	t.Fatalf("no %s among %q", id, ids)
	return figure.Figure{}
}
