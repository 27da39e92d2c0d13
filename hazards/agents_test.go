package hazards_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/schemas/long"
)

// needs finds the verdict on what a step writes to neutralise with.
func needs(t *testing.T, rv *hazards.Review, step int) (figure.Verdict, bool) {
	t.Helper()
	var v figure.Verdict
	found := false
	for i := range rv.Findings {
		f := &rv.Findings[i]
		if f.Limit.ID == "written_mass" && strings.HasPrefix(f.Figure.String(), fmt.Sprintf("neutralise.mass@%d", step)) {
			if found {
				t.Fatalf("two verdicts on step %d", step)
			}
			v, found = f.Verdict, true
		}
	}
	return v, found
}

func holdsAt(rv *hazards.Review, id string) bool {
	for _, h := range rv.Holds {
		if h.ID == id {
			return true
		}
	}
	return false
}

// The demonstration, with other agents in place of its lime: the finding, the
// hold point and what is said of the temperature stay.
func TestAgentsOfTheDemonstration(t *testing.T) {
	long.Only(t)
	raw, err := os.ReadFile("../testdata/routes/demo-lif-hcl-2g.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		what, agent string
		verdict     figure.Verdict
	}{
		{"{substance: potassium hydroxide, mass: 3 g}", "potassium_hydroxide", figure.Exceeds},
		{"{substance: calcium chloride, mass: 50 g}", "calcium_chloride", figure.UnknownVerdict},
		{"{substance: water, volume: 1 mL}", "water", figure.UnknownVerdict},
	} {
		c := newCase(t, load(t, strings.Replace(string(raw), "{substance: calcium hydroxide, mass: 16 g}", row.what, 1)))
		c.Brief = true
		rv, err := hazards.Make(c)
		if err != nil {
			t.Fatal(err)
		}
		if v, found := needs(t, &rv, 10); !found || v != row.verdict || !holdsAt(&rv, "written_mass") {
			t.Errorf("%s: %v, %s; want %s and a hold point", row.what, found, v, row.verdict)
		}
		for _, q := range []string{"neutralise.mass@10/", "neutralise.temperature_rise@10/"} {
			if figureOf(&rv, q+row.agent) == nil {
				t.Errorf("%s: no %s", row.what, q+row.agent)
			}
		}
	}
}

// A step that neutralises with nothing that is an agent is a finding too.
func TestNeutralisingWithNothing(t *testing.T) {
	rv := review(t, head+"precursor: {phase: Ti3AlC2, mass: 1 g, "+pure+"}\n"+places+"steps:\n"+charges(hf10)+
		"  - {do: neutralise, in: pot, temperature: 20 degC, what: [precursor]}\n")
	if v, found := needs(t, &rv, 2); !found || v != figure.UnknownVerdict || !holdsAt(&rv, "written_mass") {
		t.Errorf("%v %s", found, v)
	}
}

// What one step stronger is of an acid that nobody sells in steps is not known, and
// said so.
func TestAStrongerAcidOfNoListIsUnknown(t *testing.T) {
	long.NotShort(t)
	rv := followed(t, etches("phase: Ti3AlC2, mass: 1 g, "+pure, "{substance: tetrafluoroboric acid, strength: 40 wt%, "+
		"volume: 20 mL}")+"  - {do: hold, in: pot, time: 2 h, temperature: 25 degC}\n")
	f := figureOf(&rv, "heat.temperature_peak@2:stronger_acid")
	if f == nil || !f.Value.Unknown() {
		t.Errorf("a stronger acid of no list: %+v", f)
	}
}
