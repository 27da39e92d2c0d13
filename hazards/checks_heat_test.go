package hazards_test

import (
	"slices"
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/reports/words"
	"etchbound/schemas/long"
	"etchbound/schemas/quantity"
)

// mixes gives what step 1 of a bottle releases, and how much warmer it gets.
func mixes(kj, tolerance float64, from string) []want {
	return []want{{id: "heat.mix.total@1", value: kj, tolerance: tolerance, from: from},
		{id: "heat.mix.total", value: kj, tolerance: tolerance, from: from}}
}

var heatChecks = []check{
	{name: "etch of Ti3AlC2 in 10 wt% HF", yaml: etches("phase: Ti3AlC2, mass: 1 g, "+pure, hf10), figures: []want{
		{id: "heat.etch.per_gram@2", value: 3.905, low: 3.520, high: 4.291, from: "760 (685 to 835) kJ/mol over " +
			"194.605: 3.9 +- 0.4"},
		{id: "heat.adiabatic_rise@2", value: 94.5, low: 85.2, high: 103.9, from: "10.36 g at 4.18 - 2.5*0.10 and " +
			"0.601 J/K of powder: 41.31 J/K"},
		{id: "heat.mtsr@2", value: 114.5, low: 105.2, high: 123.9, from: "20 degC more"},
		{id: "heat.boiling_point@2", value: 102.7, low: 100.7, high: 104.7, from: "10 wt%: partial pressures of " +
			"Chemical Encyclopedia (in Russian) vol. 5; +-2 K"}},
		verdicts: map[string]figure.Verdict{"heat.adiabatic_rise@2+severity_medium": exceeds,
			"heat.mtsr@2+boiling_point": exceeds}},
	{name: "etch under a sonicator", yaml: etches("phase: Ti3AlC2, mass: 1 g, "+pure, hf10) +
		"  - {do: sonicate, in: pot, time: 10 min, temperature: 20 degC, power: 100 W}\n", figures: []want{
		{id: "sonicate.heating@3", value: 145.2, tolerance: 0.02, from: "6000 J a minute over the 41.31 J/K above"},
		{id: "sonicate.minutes@3", value: 0.0689, tolerance: 0.02, from: "10 K at that rate"}}},
	{name: "one gram in lithium fluoride and acid", yaml: etches("phase: Ti3AlC2, mass: 1 g, "+pure, hcl9, lif),
		figures: []want{
			{id: "heat.adiabatic_rise@2", value: 63.1, low: 56.9, high: 69.3, tolerance: 0.003, from: "22.79 g of 28.80 " +
				"wt% HCl at 0.975*(4.18 - 6.9 w + 5.4 w2), 61.69 mmol LiF at 41.6 and 5.139 mmol at 117 J/mol/K"},
			{id: "heat.etch.per_gram@2", value: 3.905, low: 3.520, high: 4.291, from: "counted from HF(aq): the salt " +
				"takes nothing off"},
			{id: "heat.mix.total@1", value: -1.092, tolerance: 0.01, from: "61.686 mmol, +17.7 kJ/mol absorbed (+4.73 " +
				"NSRDS-NBS 2, +13.0 for H+ and F-)"},
			{id: "fluoride.hf_equivalent@1", value: 1.2341, from: "1.6/25.938*20.006 g"}},
		absent: []string{"heat.mix.total@2"}},
	{name: "nothing subtracted on a later step", yaml: etches("phase: Ti3AlC2, mass: 1 g, "+pure, hcl9, lif) +
		"  - {do: hold, in: pot, time: 24 h, temperature: 35 degC}\n", figures: []want{
		{id: "heat.adiabatic_rise@3", value: 63.1, low: 56.9, high: 69.3, tolerance: 0.003, from: "full accumulation " +
			"at every later step with that liquor"},
		{id: "heat.mtsr@3", value: 98.1, low: 91.9, high: 104.3, tolerance: 0.003, from: "35 degC and the rise"},
		{id: "heat.mtsr", value: 98.1, low: 91.9, high: 104.3, tolerance: 0.003, from: "the bare id is the worst"},
		{id: "heat.etch.total", value: 3.905, from: "generated once"}},
		absent: []string{"heat.etch.total@3", "gas.hydrogen.total@3"}},

	{name: "D26 hydrofluoric acid 48 to 10 wt%", yaml: bottle("{substance: HF, strength: 48 wt%, mass: 100 g}",
		"{substance: water, mass: 380 g}"),
		figures: append(mixes(7.1, 0.03, "2.399 mol, integral heats 19.16 - 16.21 kJ/mol (NSRDS-NBS 2 to 20 mol/kg)"),
			want{id: "heat.mix.rise@1", value: 3.75, tolerance: 0.03, from: "480 g at 3.99"})},
	{name: "D27 hydrofluoric acid 20 to 1 mol/kg", yaml: bottle("{substance: HF, strength: 20 mol/kg, mass: 70.006 g}",
		"{substance: water, mass: 950 g}"),
		figures: mixes(1.58, half, "1 mol, 14.88 - 13.30 (NSRDS-NBS 2)")},
	{name: "D28 hydrochloric acid 37 to 10 wt%", yaml: bottle("{substance: hydrochloric acid, strength: 37 wt%, "+
		"mass: 100 g}", "{substance: water, mass: 270 g}"),
		figures: mixes(13.03, half, "1.0149 mol, 16.39 - 3.55 (NSRDS-NBS 2)")},
	{name: "D29 hydrochloric acid 37 wt% to 1 mol/kg", yaml: bottle("{substance: hydrochloric acid, strength: 37 "+
		"wt%, mass: 100 g}", "{substance: water, mass: 951.9 g}"),
		figures: mixes(14.91, half, "1.0149 mol, 16.39 - 1.695 (NSRDS-NBS 2)")},
	{name: "D30 hydrochloric acid 12 to 9 mol/L", yaml: bottle("{substance: hydrochloric acid, strength: 12 mol/L, "+
		"volume: 1 L}", "{substance: water, mass: 338.3 g}"),
		figures: mixes(60.6, 0.01, "12 mol, 16.42 - 11.37 (NSRDS-NBS 2); densities 1.1809 and 1.1394")},
	{name: "D31 sulfuric acid 98 to 10 wt%", yaml: bottle("{substance: sulfuric acid, strength: 98 wt%, mass: 100 g}",
		"{substance: water, mass: 880 g}"),
		figures: mixes(68.8, 0.01, "0.999 mol, 73.3 - 4.5 (memory, +-3 %)")},
	{name: "D32 sodium hydroxide to 10 wt%", yaml: bottle("{substance: water, mass: 900 g}", "{substance: sodium "+
		"hydroxide, mass: 100 g}"),
		figures: append(mixes(107, 0.01, "2.50 mol at 42.8 (memory; infinite dilution 44.51 NSRDS-NBS 2)"),
			want{id: "heat.mix.rise@1", value: 28, tolerance: 0.03, from: "1000 g at 3.79; heat capacities are counted " +
				"as charged, water and solid apart, 3914 J/K"})},
	{name: "sodium fluoride in acid", yaml: bottle(hcl9, "{substance: sodium fluoride, mass: 1 g}"),
		figures: mixes(-0.3310, half, "23.816 mmol, +13.9 absorbed")},
	{name: "potassium fluoride in acid", yaml: bottle(hcl9, "{substance: potassium fluoride, mass: 1 g}"),
		figures: mixes(0.0809, half, "17.213 mmol, 4.7 released")},
	{name: "bifluoride in water", yaml: bottle("{substance: water, volume: 20 mL}", "{substance: ammonium "+
		"bifluoride, mass: 1 g}"),
		figures: mixes(-0.298, 0.25, "17.531 mmol, +17.0 to NH4+, F- and HF or +20.5 to NH4+ and HF2- absorbed")},
	{name: "nothing to mix", yaml: etches("phase: Ti3AlC2, mass: 1 g, "+pure, "{substance: HF, strength: 10 wt%, "+
		"volume: 10 mL}", "{substance: hydrochloric acid, strength: 6 mol/L, volume: 10 mL}"),
		figures: mixes(0.146, 3, "two dilute acids: small, sign not checked"), // only that step 1 has one
		absent:  []string{"heat.mix.total@2", "heat.mix.rise@2"}},
	{name: "a mixture boils as its most volatile acid",
		yaml: etches("phase: Ti3AlC2, mass: 1 g, "+pure, "{substance: HF, strength: 30 wt%, volume: 2 mL}",
			"{substance: hydrochloric acid, strength: 36 wt%, volume: 20 mL}"),
		figures: []want{{id: "heat.boiling_point@2", value: 71, low: 69, high: 73, tolerance: 0.03,
			from: "8.49 g HCl in all the water, 33.8 wt%: printed table 34 wt% 71 degC, 32 wt% 84; +-2 K"}}},
	{name: "sulfuric acid mixtures do not say where they boil",
		yaml: etches("phase: Ti3AlC2, mass: 1 g, "+pure, "{substance: HF, strength: 30 wt%, volume: 2 mL}",
			"{substance: sulfuric acid, strength: 30 wt%, volume: 10 mL}"),
		figures:  []want{{id: "heat.boiling_point@2", value: unknown, from: "no vapour data"}},
		verdicts: map[string]figure.Verdict{"heat.mtsr@2+boiling_point": unknownVerdict}},
}

// The technical limit is the lowest of boiling point, wall and lid: PTFE 260,
// HDPE 65 degC (service temperatures of the data, with their sources there); a
// lid nobody stated counts as the weakest, 60 degC.
func TestTheLidCounts(t *testing.T) {
	long.Only(t)
	for lid, want := range map[string]float64{"": 60, "lid_material: PTFE, ": 0, "lid_material: HDPE, ": 65,
		"lid_material: cork, ": 60} {
		rv := review(t, strings.Replace(inIce("10 g", "200 mL", "2 W/K"), "closure: vented,", lid+"closure: vented,", 1))
		if want == 0 {
			want = figureOf(&rv, "heat.boiling_point@2").Value.V
		}
		if f := figureOf(&rv, "heat.technical_limit@2"); f == nil || f.Value.V != want {
			t.Errorf("%q: %+v, want %g degC", lid, f, want)
		}
	}
}

// A jacket stands on the shared cooling: 10 g of Ti3AlC2 in 10 min give at most
// 10/194.605 mol x 835 kJ/mol in 600 s, 71.5 W (by hand, on the enthalpy of the
// data). A bath does not, and where nothing is said of power or of cooling the
// finding is unknown.
func TestTheSharedCoolingIsHeldToItsPower(t *testing.T) {
	long.Only(t)
	const id = "heat.cooling.required@2+site_cooling"
	jacket := strings.Replace(inIce("10 g", "200 mL", "2 W/K"), "kind: ice_bath, temperature: 0 degC, ice: 100 kg",
		"kind: jacket, temperature: 0 degC", 1)
	for _, x := range []struct {
		name, yaml string
		power      quantity.Value
		others     string
		want       string
	}{
		{"more than it takes", jacket, quantity.Of(71, "W"), "0 W", "exceeds"},
		{"just what it takes", jacket, quantity.Of(72, "W"), "0 W", "near"},
		{"half of what it takes", jacket, quantity.Of(144, "W"), "0 W", "within"},
		{"half of it taken by others", jacket, quantity.Of(144, "W"), "70 (60 to 73) W", "exceeds"},
		{"nothing said of others", jacket, quantity.Of(144, "W"), "", "unknown"},
		{"no power stated", jacket, quantity.Value{}, "0 W", "unknown"},
		{"a bath", inIce("10 g", "200 mL", "2 W/K"), quantity.Of(71, "W"), "0 W", ""},
		{"nothing said of cooling", strings.Replace(jacket, ", cooling: {kind: jacket, temperature: 0 degC, ua: 2 W/K}", "",
			1), quantity.Of(500, "W"), "0 W", "unknown"},
	} {
		c := newCase(t, load(t, x.yaml))
		c.Brief, c.Site = true, demoSite(t)
		c.Site.CoolingPower, c.Site.CoolingPoint = x.power, quantity.Of(5, "degC")
		c.Site.CoolingTaken, _ = quantity.Parse(x.others, quantity.Power)
		rv := must(t, c)
		got := ""
		for i := range rv.Findings {
			if rv.Findings[i].ID().String() == id {
				got = rv.Findings[i].Verdict.String()
			}
		}
		if got != x.want {
			t.Errorf("%s: %q, want %q", x.name, got, x.want)
		}
		colder := slices.ContainsFunc(words.SayAll(rv.Warnings),
			func(s string) bool { return strings.HasPrefix(s, "The jacket of pot is written at 0 degC") })
		if colder != strings.Contains(x.yaml, "kind: jacket") {
			t.Errorf("%s: warnings %q", x.name, words.SayAll(rv.Warnings))
		}
	}
}
