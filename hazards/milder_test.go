package hazards_test

import (
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/schemas/long"
)

const ownHeat = "route: etchbound/1\ntitle: t\nbasis: {status: invented}\nprecursor: {phase: Ti3AlC2, mass: 1 g}\n" +
	"places: {a: {kind: bottle, capacity: 100 mL, closure: vented, material: PTFE}}\nsteps:\n" +
	"  - {do: charge, in: a, what: [{substance: HF, strength: 10 wt%, volume: 20 mL}], temperature: 25 degC}\n" +
	"  - {do: add, in: a, what: precursor, over: 10 min, temperature: 25 degC}\n"

// 1 g of Ti3AlC2 (194.6 g/mol) in 20 mL of 10 % HF (about 80 J/K) warms it by some 50 K
// with 760 kJ/mol at its high end, more than the 50 K of low severity, and by 20 K with
// 300 kJ/mol: the writer's own heat makes that milder, and the review says so.
func TestWhatTheWriterReplacedIsSaidToBeMilder(t *testing.T) {
	long.Only(t)
	for _, row := range []struct {
		own    string
		milder bool
	}{
		{"", false}, {"measured: {etch_heat: 300 (290 to 310) kJ/mol}\n", true},
		{"measured: {etch_heat: 900 kJ/mol}\n", false},
		{"data:\n  - {id: etch_heat.Ti3AlC2, value: 300, low: 290, high: 310, source: own}\n", true},
		{"measured: {td24: 90 degC}\n", false},
	} {
		c := newCase(t, load(t, ownHeat+row.own))
		c.Brief = true
		rv, err := hazards.Make(c)
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, m := range rv.Milder {
			found = found || m.ID.String() == "heat.adiabatic_rise@2+severity_medium" && m.Was == figure.Exceeds
			if m.Was.Rank() <= m.Is.Rank() && !m.Gone {
				t.Errorf("%q: %s from %s to %s is not milder", row.own, m.ID, m.Was, m.Is)
			}
		}
		if found != row.milder || strings.HasPrefix(row.own, "measured: {td24") && len(rv.Milder)+len(rv.Applied) > 0 {
			t.Errorf("%q: milder %v", row.own, rv.Milder)
		}
	}
}
