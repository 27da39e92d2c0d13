package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/schemas/long"
)

// A formula that no layered phase has keeps its figures and stops work until it has
// been looked up: V2Al2C is 2:2:1, where M(n+1)AX(n) nearest to it is 2:1:1.
func TestFormulaOfNoFamilyIsQueried(t *testing.T) {
	long.NotShort(t)
	text := "route: etchbound/1\ntitle: t\nbasis: {status: invented}\nprecursor: {phase: Ti3AlC2, mass: 1 g}\n" +
		"places: {a: {kind: bottle, capacity: 100 mL, closure: vented}}\nsteps:\n" +
		"  - {do: charge, in: a, what: [{substance: HF, strength: 10 wt%, volume: 20 mL}], temperature: 25 degC}\n" +
		"  - {do: add, in: a, what: precursor, over: 10 min, temperature: 25 degC}\n"
	for phase, queried := range map[string]bool{"Ti3AlC2": false, "Mo2Ga2C": false, "V2Al2C": true} {
		c := newCase(t, load(t, strings.Replace(text, "Ti3AlC2", phase, 1)))
		c.Brief = true
		rv, err := hazards.Make(c)
		if err != nil {
			t.Fatal(err)
		}
		if holdsAt(&rv, "formula") != queried {
			t.Errorf("%s: hold points %+v", phase, rv.Holds)
		}
		for i := range rv.Figures {
			if f := &rv.Figures[i]; f.ID.String() == "gas.hydrogen.total" && !(f.Value.V > 0) {
				t.Errorf("%s: hydrogen %g", phase, f.Value.V)
			}
		}
	}
}
