package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/process"
	"etchbound/schemas/long"
)

// What is poured to and fro is of the same few things at the end as at the
// beginning, and the account still closes.
func TestPouringToAndFroAddsNoEntries(t *testing.T) {
	long.NotShort(t)
	const fro = `  - {do: transfer, in: pot, into: jar}
  - {do: add, in: jar, what: [{substance: water, volume: 1 mL}], over: 1 min, temperature: 20 degC}
  - {do: transfer, in: jar, into: pot, part: 50 %}
`
	yaml := etches("phase: Ti3AlC2, mass: 1 g, "+pure, "{substance: hydrofluoric acid, strength: 20 wt%, volume: 20 mL}")
	if !strings.Contains(yaml, "places:\n") {
		t.Fatalf("no places in %s", yaml)
	}
	const jar = "places:\n  jar: {kind: bottle, material: HDPE, capacity: 1 L, closure: vented}\n"
	yaml = strings.Replace(yaml, "places:\n", jar, 1)
	most := func(times int) int {
		a := hazards.Assess(newCase(t, load(t, yaml+strings.Repeat(fro, times))), nil)
		if a.Err != nil {
			t.Fatal(a.Err)
		}
		if !(a.Walk.Error.V <= 1e-9) {
			t.Errorf("the account of %d times is wrong by %g", times, a.Walk.Error.V)
		}
		for i := range a.Walk.Steps {
			if e := a.Walk.Steps[i].Etches; len(e) > len(a.Walk.Etches) {
				t.Fatalf("step %d lists %d etches, and there are %d", i+1, len(e), len(a.Walk.Etches))
			}
		}
		n := 0
		for i := range a.Walk.Ends {
			n = max(n, entries(&a.Walk.Ends[i]))
		}
		return n
	}
	few, many := most(2), most(30)
	if many > 2*few {
		t.Errorf("%d entries after two times, %d after thirty", few, many)
	}
}

func entries(s *process.State) int {
	n := 0
	for i := range s.Liquid {
		n += len(s.Liquid[i].Entries)
	}
	return n
}
