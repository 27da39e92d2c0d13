package hazards_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
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

// The demonstration, with other agents in place of its lime.
func TestAgentsOfTheDemonstration(t *testing.T) {
	raw, err := os.ReadFile("../testdata/routes/demo-lif-hcl-2g.yaml")
	if err != nil {
		t.Fatal(err)
	}
	const lime = "      - {substance: calcium hydroxide, mass: 16 g}\n"
	for _, row := range []struct {
		what    string
		verdict figure.Verdict
		agent   string
		from    string
	}{
		{lime, figure.Within, "calcium_hydroxide", "16 g are 432 mmol of base for 351 to 366"},
		{"      - {substance: calcium hydroxide, mass: 3 g}\n", figure.Exceeds, "calcium_hydroxide", "81 mmol"},
		{"      - {substance: potassium hydroxide, mass: 3 g}\n", figure.Exceeds, "potassium_hydroxide", "53 mmol"},
		{"      - {substance: magnesium oxide, mass: 3 g}\n", figure.Exceeds, "magnesium_oxide", "149 mmol"},
		{"      - {substance: calcium chloride, mass: 50 g}\n", figure.UnknownVerdict, "calcium_chloride", "no base"},
		{"      - {substance: sodium chloride, mass: 50 g}\n", figure.UnknownVerdict, "sodium_chloride", "no base"},
		{"", figure.UnknownVerdict, "water", "nothing but water"},
		{"      - {substance: calcium hydroxide, mass: 8 g}\n      - {substance: calcium oxide, mass: 3 g}\n", figure.Exceeds,
			"calcium_hydroxide_and_calcium_oxide", "216 + 107 mmol"},
		{"      - {substance: calcium hydroxide, mass: 8 g}\n      - {substance: calcium oxide, mass: 6 g}\n", figure.Within,
			"calcium_hydroxide_and_calcium_oxide", "216 + 214 mmol"},
		{"      - {substance: sodium hydroxide, strength: 10 wt%, volume: 100 mL}\n", figure.Exceeds, "sodium_hydroxide", "277 mmol at 1.109 g/mL"},
		{"      - {substance: sodium hydroxide, strength: 10 wt%, volume: 200 mL}\n", figure.Within, "sodium_hydroxide", "555 mmol"},
		{lime + "      - {substance: hydrochloric acid, strength: 9 mol/L, volume: 20 mL}\n", figure.Exceeds, "calcium_hydroxide", "180 mmol more acid"},
		{lime + "      - {substance: calcium chloride, mass: 5 g}\n", figure.Within, "calcium_hydroxide", "calcium chloride beside it takes no acid"},
	} {
		c := newCase(t, load(t, strings.Replace(string(raw), lime, row.what, 1)))
		c.Brief = true
		rv, err := hazards.Make(c)
		if err != nil {
			t.Fatal(err)
		}
		v, found := needs(t, &rv, 10)
		if !found || v != row.verdict {
			t.Errorf("%s: %v, %s; want %s (%s)", row.what, found, v, row.verdict, row.from)
		}
		if figureOf(&rv, "neutralise.mass@10/"+row.agent) == nil {
			t.Errorf("%s: no figure of %s", row.what, row.agent)
		}
		if figureOf(&rv, "neutralise.temperature_rise@10/"+row.agent) == nil {
			t.Errorf("%s: nothing is said of how warm it gets", row.what)
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
