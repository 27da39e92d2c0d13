package selection_test

import (
	"strings"
	"testing"

	"etchbound/reports/draft"
	"etchbound/reports/selection"
	"etchbound/schemas/long"
)

const jar = `route: etchbound/1
title: jar
basis: {status: invented}
precursor: {phase: V2AlC, mass: 3 g}
places:
  jar: {kind: bottle, material: polypropylene, capacity: 150 mL, closure: closed}
steps:
  - {do: charge, in: jar, what: [{substance: hydrofluoric acid, strength: 48 wt%, volume: 60 mL}], temperature: 22 degC}
  - {do: add, in: jar, what: [precursor], over: 10 min, temperature: 22 degC, stirred: true}
  - {do: hold, in: jar, time: 92 h, temperature: 35 degC, attended: false, stirred: true}
`

// A limit of the house on what happens if cooling fails stands in the row, though what is
// so as it runs leads it.
func TestALimitOfTheHouseStandsInAnyCase(t *testing.T) {
	long.NotShort(t)
	r := writtenHeld(t, jar, "limits: etchbound/1\ntitle: h\nentries:\n"+
		"  - {id: top, quantity: heat.mtsr, value: 40 degC, document: House rules}\n")
	p := selection.Read(draft.New(&r, draft.Options{}), nil)
	for _, want := range []string{"boiling", ", bound; ", "40 °C, local limit, whole range over"} {
		if hot := line(p, "cooling"); !strings.Contains(hot.Against, want) {
			t.Errorf("held against %q, want %q", hot.Against, want)
		}
	}
}

// A limit of the house that all of a range is over is not said to be one that may be
// exceeded, though the boiling point beside it is; what is expected stands once; and what a
// waste warms by is told as what it does without the water that goes in first.
func TestEachLimitSaysHowSurely(t *testing.T) {
	long.NotShort(t)
	told := strings.NewReplacer("closure: closed", "closure: closed, cooling: {kind: none}", "mass: 3 g}",
		"mass: 3 g, purity: 95 wt%, impurities: [{formula: Al, share: 5 wt%}]}").Replace(jar)
	r := writtenHeld(t, told, "limits: etchbound/1\ntitle: h\nentries:\n"+
		"  - {id: top, quantity: heat.mtsr, value: 40 degC, document: House rules}\n")
	p := selection.Read(draft.New(&r, draft.Options{}), nil)
	hot := line(p, "cooling")
	for _, want := range []string{"may exceed; ", "40 °C, local limit, whole range over"} {
		if !strings.Contains(hot.Against, want) {
			t.Errorf("held against %q with %q, want %q", hot.Against, hot.Surely, want)
		}
	}
	if hot.Surely != "" || strings.Contains(hot.Answer, "expected") {
		t.Errorf("%q, %q", hot.Answer, hot.Surely)
	}
	if a := line(p, "neutralise").Answer; !strings.Contains(a, "warms by 75 K, unless ") {
		t.Errorf("75 K is what it warms by without more water: %q", a)
	}
}

const residue = `route: etchbound/1
title: residue
basis: {status: invented}
places:
  can: {kind: drum, material: HDPE, capacity: 20 L, closure: vented, held_before: nitric acid}
steps:
  - {do: charge, in: can, what: [{substance: hydrochloric acid, strength: 15 wt%, volume: 2 L}], temperature: 20 degC}
`

// Chlorine of a residue of nitric acid is in the banner, and what has no powder says where it
// stands (common practice: what is left of aqua regia gives nitrosyl chloride and chlorine).
func TestAResidueThatGivesChlorineIsInTheBanner(t *testing.T) {
	long.NotShort(t)
	r := written(t, residue, "")
	p := selection.Read(draft.New(&r, draft.Options{}), nil)
	if !strings.Contains(strings.Join(p.Banner, " "), "Chlorine, nitrosyl chloride and nitrogen oxides can come off") {
		t.Errorf("the banner says %q", p.Banner)
	}
	if !strings.Contains(p.Asked, "in drum can (20 L, vented), no hood stated") {
		t.Errorf("%q does not say where", p.Asked)
	}
}
