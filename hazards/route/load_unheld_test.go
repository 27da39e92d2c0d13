package route_test

import (
	"strings"
	"testing"

	"etchbound/hazards/route"
)

// What is said of a substance that is not held goes with where it stands, and one
// name is one substance.
func TestWhatIsNotHeldIsToldWhatToWrite(t *testing.T) {
	of := func(what ...string) string {
		return "route: etchbound/1\ntitle: t\nbasis: {status: invented}\nplaces:\n  pot: {kind: vessel}\nsteps:\n" +
			"  - {do: charge, in: pot, what: [" + strings.Join(what, ", ") + "], temperature: 20 degC}\n"
	}
	first := "{substance: florbide, formula: CsF, not_held: true, mass: 1 g}"
	for _, c := range []struct{ name, text, want string }{
		{"as it is written", of(first), ""},
		{"twice the same", of(first, first), ""},
		{"two formulas", of(first, "{substance: florbide, formula: RbF, not_held: true, mass: 1 g}"), "another formula"},
		{"a formula and none", of(first, "{substance: florbide, not_held: true, mass: 1 g}"), "another formula"},
		{"not said", of("{substance: florbide, mass: 1 g}"), "write {substance: florbide, formula: ..., not_held: true}"},
		{"held after all", of("{substance: lithium fluoride, not_held: true, mass: 1 g}"), "leave not_held out"},
	} {
		r, problems, _ := route.Load("r.yaml", strings.NewReader(c.text))
		said := ""
		for _, p := range problems {
			said += p.String() + p.Hint
		}
		if (r == nil) != (c.want != "") || !strings.Contains(said, c.want) {
			t.Errorf("%s: %s", c.name, said)
		}
	}
	stock := "site: etchbound/1\ntitle: t\nstock:\n  - {substance: florbide, mass: 1 g"
	_, problems, _ := route.LoadSite("s.yaml", strings.NewReader(stock+"}\n"))
	if len(problems) != 1 || !strings.Contains(problems[0].Hint, "{substance: florbide, formula: ..., not_held: true}") {
		t.Errorf("%v", problems)
	}
	s, problems, _ := route.LoadSite("s.yaml", strings.NewReader(stock+", formula: CsF, not_held: true}\n"))
	if len(problems) != 0 || len(s.Stock) != 1 || !s.Stock[0].Substance.NotHeld {
		t.Errorf("a stock of what is not held: %v, %v", s, problems)
	}
}
