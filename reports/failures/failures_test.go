package failures_test

import (
	"fmt"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/failures"
	"etchbound/reports/fixture"
	"etchbound/reports/words"
)

// What is written of failures alone has their figures and findings, and no other.
func TestOnlyFailuresStay(t *testing.T) {
	of := func(quantity, failure string) figure.Figure {
		return figure.Figure{ID: figure.ID{Quantity: quantity, Place: figure.Step(2), Case: figure.If(failure)},
			Value: working.Exact("x", "1", 1, "tried")}
	}
	lost, bare := of("heat.temperature_peak", "cooling_lost"), of("heat.boiling_point", "")
	bare.Case, bare.Place = figure.Case{}, figure.Place{}
	normal, left := of("heat.temperature_peak", ""), of("heat.time_left", "")
	r := hazards.Review{Figures: []figure.Figure{normal, lost, left, bare},
		Findings: []figure.Finding{{Figure: normal.ID}, {Figure: lost.ID}}}
	got := failures.Only(r)
	if len(got.Figures) != 2 || got.Figures[0].ID != lost.ID || got.Figures[1].ID != left.ID {
		t.Errorf("kept %v", got.Figures)
	}
	if len(got.Findings) != 1 || got.Findings[0].Figure != lost.ID {
		t.Errorf("kept the findings %v", got.Findings)
	}
	if len(r.Figures) != 4 || len(r.Findings) != 2 {
		t.Error("the review itself has changed")
	}
}

// A review that did not follow failures says so as a warning, and one without a course
// says that there is none.
func TestWhatWasNotFollowedIsSaid(t *testing.T) {
	for brief, key := range map[bool]string{true: "upset.brief", false: "upset.none"} {
		r := fixture.Review()
		r.Case.Brief, r.Courses = brief, nil
		p, ok := failures.Section(draft.New(&r, draft.Options{})).Blocks[0].(document.Paragraph)
		if told := len(failures.Section(draft.New(&r, draft.Options{})).Blocks) > 2; told == brief {
			t.Errorf("brief %v: what can fail all the same is told: %v", brief, told)
		}
		if !ok || p.Text != words.Of(key) || p.Tone != document.Warning {
			t.Errorf("brief %v: %v, want %s", brief, p, key)
		}
	}
}

const inAShutBottle = `route: etchbound/1
title: check
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 20 g, impurities: none (certificate)}
places:
  pot: {kind: bottle, material: PTFE, lid_material: PTFE, capacity: 200 mL, closure: closed}
steps:
  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 30 wt%, volume: 100 mL}],
     temperature: 20 degC}
  - {do: add, in: pot, what: [precursor], over: 1 min, temperature: 25 degC}
`

// In a shut container temperature and pressure rise together: nothing boils there at the
// pressure of the air (common practice).
func TestNothingBoilsInAShutContainer(t *testing.T) {
	c, err := route.NewCase(loaded(t, inAShutBottle), nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	r, err := hazards.Make(c)
	if err != nil {
		t.Fatal(err)
	}
	text := fmt.Sprint(failures.Section(draft.New(&r, draft.Options{})))
	if !strings.Contains(text, ": shut, its pressure rises with it") || strings.Contains(text, ": boils") {
		t.Error(text)
	}
	if !strings.Contains(text, " min if it were open") || !strings.Contains(text, "°C if it were open, boiling point") {
		t.Error("time to boiling, or the boiling point, is told as of an open container:", text)
	}
}

func loaded(t *testing.T, yaml string) *route.Route {
	t.Helper()
	r, problems, err := route.Load("r.yaml", strings.NewReader(yaml))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	return r
}
