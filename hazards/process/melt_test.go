package process_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/hazards/bench"
	"etchbound/hazards/process"
	"etchbound/schemas/nearly"
)

// salts are a gram of powder with dry salts, and what is done with them.
func salts(salt, then string) []string {
	return []string{"  - {do: charge, in: pot, what: [precursor, {substance: " + salt + ", mass: 4 g}], " +
		"temperature: 20 degC}\n", then}
}

// A gram of Ti3AlC2, 1/194.605 mol, drives off as much AlCl3 whatever the word for making
// it hot is (by hand); a salt of which no melt is modelled gives nobody knows what.
func TestDrySaltMeltsWhateverTheVerb(t *testing.T) {
	for _, then := range []string{"melt, in: pot, time: 5 h, temperature: 550 degC",
		"hold, in: pot, time: 5 h, temperature: 550 degC", "heat, in: pot, time: 5 h, temperature: 550 degC",
		"heat_closed, in: pot, time: 5 h, temperature: 550 degC"} {
		b := bench.Steps(t, salts("zinc chloride", "  - {do: "+then+"}\n")...)
		n := slices.IndexFunc(b.Walk.Evolved, func(e process.Evolved) bool {
			return e.Gas != nil && e.Gas.Slug == "aluminium_chloride"
		})
		if n < 0 || b.Walk.Evolved[n].Step != 2 || !nearly.Share(b.Walk.Evolved[n].N.V, 1/194.605, 1e-4) {
			t.Errorf("%s: %+v", then, b.Walk.Evolved)
		}
		if !b.Walk.Steps[1].Melts {
			t.Errorf("%s: no melt", then)
		}
		// (645 + 514 - 43 - 50 - 2.5*415.1) kJ/mol, of heats of formation of handbooks (memory)
		if q := b.Walk.Etches[0].Heat; !nearly.Share(q.V, 28.25/194.605, 1e-3) {
			t.Errorf("%s: heat %v kJ", then, q)
		}
		other := bench.Steps(t, salts("sodium chloride", "  - {do: "+then+"}\n")...)
		if e := other.Walk.Etches; len(e) != 1 || !e[0].Heat.Unknown() || !e[0].Hydrogen.Unknown() {
			t.Errorf("%s of a salt without a model: %+v", then, e)
		}
	}
}

// Fluoride that is hot and dry gives hydrogen fluoride with the moisture of the air, nobody
// knows how much (pyrohydrolysis, common practice); in argon, cold or as chloride it gives none.
func TestHotFluorideGivesGasInAir(t *testing.T) {
	for _, c := range []struct {
		salt, then string
		want       bool
	}{
		{"sodium fluoride", "melt, in: pot, time: 5 h, temperature: 550 degC, gas: air", true},
		{"sodium fluoride", "hold, in: pot, time: 5 h, temperature: 550 degC", true},
		{"sodium fluoride", "melt, in: pot, time: 5 h, temperature: 550 degC, gas: argon", false},
		{"sodium fluoride", "hold, in: pot, time: 5 h, temperature: 25 degC", false},
		{"zinc chloride", "melt, in: pot, time: 5 h, temperature: 550 degC, gas: air", false},
	} {
		b := bench.Steps(t, salts(c.salt, "  - {do: "+c.then+"}\n")...)
		is := slices.ContainsFunc(b.Walk.Evolved, func(e process.Evolved) bool {
			return e.Step == 2 && e.Gas != nil && e.Gas.Slug == "hf" && e.N.Unknown() && len(e.N.Missing()) > 0
		})
		if is != c.want {
			t.Errorf("%s, %s: hydrogen fluoride %v, want %v", c.salt, c.then, is, c.want)
		}
	}
}

// What is wet, cold or powder alone is no melt (definition).
func TestWhatIsNoMelt(t *testing.T) {
	for _, steps := range [][]string{
		salts("zinc chloride", "  - {do: hold, in: pot, time: 5 h, temperature: 60 degC}\n"),
		salts("zinc chloride", "  - {do: add, in: pot, what: [{substance: water, volume: 20 mL}], over: 1 min, "+
			"temperature: 101 degC}\n"),
		{"  - {do: charge, in: pot, what: [precursor], temperature: 20 degC}\n",
			"  - {do: hold, in: pot, time: 5 h, temperature: 550 degC}\n"},
	} {
		if b := bench.Steps(t, steps...); b.Walk.Steps[1].Melts || len(b.Walk.Etches) > 0 {
			t.Errorf("%s: a melt", strings.Join(steps, ""))
		}
	}
}
