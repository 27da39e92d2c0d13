package hazards_test

import (
	"strings"
	"testing"

	"etchbound/schemas/long"
)

const shelf = "{substance: liquid of the shelf, not_held: true, formula: "

// What a step does not say, and what the data do not hold in the place of what it says,
// keeps the finding, as unknown: a pour into a shut place stands open while it is poured,
// solvent that goes on nobody knows how often may be in what receives it, what freezes
// without a word of how may do so with dry ice, and a wash of no time may go on.
func TestWhatIsNotSaidOrNotHeldKeepsItsFindings(t *testing.T) {
	long.Only(t)
	const (
		shut   = places + "  tubes: {kind: tube, closure: closed, capacity: 50 mL, count: 2}\nsteps:\n"
		powder = "precursor: {phase: Ti3AlC2, mass: 1 g, " + pure + "}\n"
		bomb   = places + "  bomb: {kind: autoclave, closure: closed, capacity: 200 mL}\nsteps:\n" +
			"  - {do: charge, in: bomb, what: [precursor, {substance: sodium hydroxide, strength: 27 mol/kg, " +
			"volume: 60 mL}]}\n  - {do: heat_closed, in: bomb, temperature: 270 degC, time: 12 h}\n" +
			"  - {do: cool, in: bomb, temperature: 25 degC, time: 4 h}\n"
		rinse = "  - {do: wash, in: bomb, into: drum, what: [{substance: water, volume: 60 mL}], cycles: 6}\n"
		etch  = places + "steps:\n"
	)
	etched := charges(hf10) + addsIt
	for _, c := range []struct{ name, text, was, is string }{
		{"acid poured into shut tubes", shut + etched + "  - {do: transfer, in: pot, into: tubes}\n",
			"{substance: hydrofluoric acid, strength: 10 wt%", shelf + "HF, strength: 10 wt%"},
		{"solvent of no number of cycles", etch + etched + "  - {do: exchange, in: pot, into: drum, what: " +
			"[{substance: isopropanol, volume: 50 mL}], cycles: 3}\n  - {do: neutralise, in: drum, what: " +
			"[{substance: calcium hydroxide, mass: 3 g}], temperature: 20 degC}\n", ", cycles: 3", ""},
		{"a step that freezes", etch + etched + "  - {do: freeze, in: pot, temperature: -80 degC, time: 2 h, " +
			"cryogen: dry_ice, cryogen_amount: 2 kg}\n", ", cryogen: dry_ice, cryogen_amount: 2 kg", ""},
		{"acid to alkaline waste", bomb + rinse + "  - {do: neutralise, in: drum, what: [{substance: hydrochloric acid, " +
			"strength: 1 mol/L, volume: 1 L}]}\n", "{substance: hydrochloric acid", shelf + "HCl"},
		{"the water of a wash", bomb + rinse, "{substance: water", shelf + "H2O"},
		{"a wash before the etch", etch + "  - {do: charge, in: pot, what: [precursor], temperature: 20 degC}\n" +
			"  - {do: prewash, in: pot, into: drum, what: [" + hf10 + "], cycles: 1, time: 10 min}\n",
			", time: 10 min", ""},
		{"acid of a shut pot that is nearly full", head + "precursor: {phase: Ti2AlC, mass: 2.72 g}\nplaces: {pot: " +
			"{kind: beaker, material: polypropylene, capacity: 38.5 mL, closure: closed, rating: 400 kPa, relief: 200 kPa}, " +
			"drum: {kind: drum}}\nsteps:\n" + charges("{substance: potassium fluoride, mass: 3 g}, {substance: "+
			"hydrochloric acid, strength: 10.6 mol/L, volume: 25.68 mL}") + addsIt +
			"  - {do: decant, in: pot, into: drum, retained: 3 mL/g}\n", "{substance: hydrochloric acid", shelf + "HCl"},
		{"base that a current goes through", head + "precursor: {phase: Ti2AlC, mass: 11.719 g, impurities: none " +
			"(certificate)}\n" + places + "steps:\n" + charges("{substance: ammonium bifluoride, mass: "+
			"1.393 g}, {substance: sodium hydroxide, strength: 0.505 mol/L, volume: 100 mL}") + addsIt + "  - {do: " +
			"electrolyse, in: pot, time: 1 min, current: 1 A, temperature: 20 degC}\n", "{substance: sodium hydroxide",
			"{substance: base of the shelf, not_held: true"},
		{"solvent poured to powder and water", etch + "  - {do: charge, in: pot, what: [{substance: ethanol, " +
			"volume: 24 mL}], temperature: 0 degC}\n  - {do: charge, in: drum, what: [precursor, {substance: water, " +
			"volume: 2 mL}], temperature: 0 degC}\n  - {do: wash, in: pot, into: drum, what: [{substance: water, " +
			"volume: 6 mL}], retained: 5 mL/g, cycles: 5}\n", "{substance: water, volume: 2", shelf + "H2O, volume: 2"},
	} {
		text := c.text
		if !strings.HasPrefix(text, head) {
			text = head + powder + text
		}
		less := strings.Replace(text, c.was, c.is, 1)
		if less == text {
			t.Fatalf("%s: nothing to leave out", c.name)
		}
		full, bare := reviewed(t, text, true), reviewed(t, less, true)
		neverBetter(t, &full, &bare, c.name)
	}
}

// Hydrochloric acid of which the data hold nothing can still be taken for another bottle: the
// failure stays, and how far it goes is not known. So does a stronger bottle of it.
func TestAcidThatIsNotHeldIsMistakenToo(t *testing.T) {
	long.Only(t)
	for _, formula := range []string{"formula: HCl, ", ""} {
		rv := followed(t, strings.Replace(salty, "{substance: hydrochloric acid, ",
			"{substance: acid of the shelf, not_held: true, "+formula, 1))
		for _, id := range []string{"heat.temperature_peak@2:nitric_for_hydrochloric",
			"gas.evolved.bound@2/nitrogen_dioxide:nitric_for_hydrochloric",
			"heat.temperature_peak@2:sulfuric_for_hydrochloric", "heat.temperature_peak@2:stronger_acid"} {
			if f := figureOf(&rv, id); f == nil || !f.Value.Unknown() {
				t.Errorf("%q: %s is %v", formula, id, f)
			}
		}
	}
}
