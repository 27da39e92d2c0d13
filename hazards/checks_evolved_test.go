package hazards_test

import "etchbound/hazards/figure"

// cell is a gram of powder in hydrochloric acid that half an ampere flows through for
// five hours.
const cell = head + "precursor: {phase: Ti3AlC2, mass: 1 g, " + pure + "}\n" + places + "steps:\n" +
	"  - {do: charge, in: pot, what: [{substance: HCl, strength: 7 wt%, volume: 100 mL}, precursor], " +
	"temperature: 20 degC}\n  - {do: electrolyse, in: pot, current: 0.5 A, time: 5 h, temperature: 20 degC}\n"

// melts is powder in a molten salt in an open crucible.
func melts(powder, salt string) string {
	return head + "precursor: {" + powder + ", " + pure + "}\n" +
		"places: {pot: {kind: crucible, closure: open, capacity: 50 mL}}\nsteps:\n" +
		"  - {do: melt, in: pot, what: [precursor, " + salt + "], time: 5 h, temperature: 750 degC}\n"
}

// Poisonous gases beside hydrogen, all of what can form, at 24.4654 L/mol.
var evolvedChecks = []check{
	{name: "silicon in HF and sulfuric acid", yaml: etches("phase: Ti3SiC2, mass: 5 g, "+pure,
		"{substance: HF, strength: 40 wt%, volume: 40 mL}", "{substance: H2SO4, strength: 50 wt%, volume: 60 mL}"),
		figures: []want{
			{id: "gas.evolved.bound@2/silicon_tetrafluoride", value: 0.62505, from: "5/195.708 mol, one SiF4 each: 0.63 L"},
			{id: "gas.evolved.mass@2/silicon_tetrafluoride", value: 2.6590, from: "5/195.708*104.08"},
			{id: "air.emission@2/silicon_tetrafluoride", value: 265.9, from: "in the ten minutes of the addition"},
		}, holds: []string{"toxic_gas"}, absent: []string{"gas.evolved.bound@3/silicon_tetrafluoride"}},
	{name: "silicon and little fluoride", yaml: etches("phase: Ti3SiC2, mass: 5 g, "+pure,
		"{substance: HF, strength: 1 wt%, mass: 100 g}"), figures: []want{
		{id: "gas.evolved.bound@2/silicon_tetrafluoride", value: 0.30573, from: "1/20.006 mol of HF over " +
			"four, less than there is silicon"}}},
	{name: "silicon shut in", yaml: head + "precursor: {phase: Ti3SiC2, mass: 1 g, " + pure + "}\nplaces:\n" +
		"  pot: {kind: bottle, capacity: 50 mL, closure: closed}\nsteps:\n" + charges(hf10) + addsIt,
		figures: []want{{id: "gas.closed.pressure@pot", value: 1436.0, from: "4.5/195.708 mol of hydrogen and SiF4 at " +
			"298.15 K in 50 - 10 - 1/4.51 mL"}},
		verdicts: map[string]figure.Verdict{"gas.closed.pressure@pot+no_rated_container": exceeds}},
	{name: "copper chloride melt", yaml: melts("phase: Ti3SiC2, mass: 1 g", "{substance: CuCl2, mass: 4 g}"),
		figures: []want{
			{id: "gas.evolved.bound@1/silicon_tetrachloride", value: 0.12501, from: "1/195.708 mol: 125 mL"},
			{id: "gas.evolved.mass@1/silicon_tetrachloride", value: 0.86805, from: "1/195.708*169.89: 0.87 g"},
			{id: "gas.evolved.bound@1/titanium_tetrachloride", value: 0.17643, from: "(2*4/134.45 - 6/195.708)/4 mol: " +
				"the chloride that is left over"},
			{id: "gas.evolved.bound@1/chlorine", value: 0.36394, from: "2 CuCl2 = 2 CuCl + Cl2: 4/134.45/2 mol"},
		}, holds: []string{"toxic_gas"}},
	{name: "a gas that is led over hot powder", yaml: head + "precursor: {phase: Ti3AlC2, mass: 1 g, " + pure +
		"}\nplaces:\n  boat: {kind: crucible, material: alumina, capacity: 25 mL, closure: open}\nsteps:\n" +
		"  - {do: charge, in: boat, what: [precursor]}\n" +
		"  - {do: heat, in: boat, time: 2 h, temperature: 700 degC, gas: hydrogen chloride, gas_flow: 0.1 L/min}\n" +
		"  - {do: cool, in: boat, time: 2 h, temperature: 25 degC, gas: argon, gas_flow: 0.1 L/min}\n",
		figures: []want{{id: "gas.evolved.bound@2", value: unknown, from: "in no table"}},
		absent:  []string{"gas.evolved.bound@3"}, holds: []string{"toxic_gas"},
		verdicts: map[string]figure.Verdict{"gas.evolved.bound@2+has_to_be_known": unknownVerdict}},
	{name: "just enough copper chloride", yaml: melts("phase: Ti3SiC2, mass: 1 g", "{substance: CuCl2, mass: 2 g}"),
		absent: []string{"gas.evolved.bound@1/titanium_tetrachloride"}},
	{name: "what leaves is in no row", yaml: melts("phase: Ti2TlC, mass: 1 g", "{substance: CuCl2, mass: 4 g}"),
		figures: []want{{id: "gas.evolved.bound@1", value: unknown, from: "thallium has no row in a melt"}},
		holds:   []string{"toxic_gas"}, measures: []string{"gas that Tl can give in step 1"}},
	{name: "chlorine at the anode", yaml: cell, figures: []want{
		{id: "gas.evolved.bound@2/chlorine", value: 1.1410, from: "0.5*18000/96485/2 mol: 1.14 L"},
		{id: "air.emission@2/chlorine", value: 11.022, from: "3.307 g over 300 min"},
	}, holds: []string{"toxic_gas"}},
	{name: "nitric acid on the powder", yaml: etches("phase: Ti3AlC2, mass: 1 g, "+pure,
		"{substance: nitric acid, strength: 20 wt%, mass: 10 g}", "{substance: HCl, strength: 20 wt%, mass: 2 g}"),
		figures: []want{
			{id: "gas.evolved.bound@2/nitrogen_dioxide", value: 0.77652, from: "2/63.013 mol, all of it"},
			{id: "gas.evolved.bound@1/nitrosyl_chloride", value: 0.26841, from: "0.4/36.46 mol of chloride"},
			{id: "gas.evolved.bound@1/chlorine", value: 0.13421, from: "half of it"},
		}, holds: []string{"toxic_gas"}},
	{name: "hydrogen chloride that sulfuric acid frees", yaml: bottle("{substance: NaCl, mass: 1 g}",
		"{substance: sulfuric acid, strength: 50 wt%, mass: 10 g}"), figures: []want{
		{id: "gas.evolved.bound@1/hcl", value: 0.41864, from: "1/58.44 mol"},
		{id: "gas.evolved.mass@1/hcl", value: 0.62388, from: "1/58.44*36.46"},
	}, holds: []string{"toxic_gas"}},
	{name: "ammonia that lye frees", yaml: bottle("{substance: NH4Cl, mass: 1 g}",
		"{substance: NaOH, strength: 20 wt%, volume: 20 mL}"), figures: []want{
		{id: "gas.evolved.bound@1/ammonia", value: 0.45739, from: "1/53.49 mol"},
	}, holds: []string{"ammonia"}},
	{name: "hydrogen cyanide", yaml: bottle("{substance: cyanide salt, formula: NaCN, not_held: true, mass: 1 g}", hcl9),
		figures: []want{
			{id: "gas.evolved.bound@1/hydrogen_cyanide", value: 0.49920, from: "1/49.008 mol"},
			{id: "gas.evolved.bound@1", value: unknown, from: "what else it gives is not held"},
		}, holds: []string{"not_held", "toxic_gas"}},
}

// zinc is powder whose melt left 37 mmol of zinc, washed with a litre of water and 100 mL
// of dilute acid.
const zinc = head + "precursor: {phase: Ti3AlC2, mass: 2.8881 g, " + pure + "}\nplaces:\n" +
	"  pot: {kind: crucible, closure: open, capacity: 50 mL}\n  cup: {kind: beaker, closure: open, capacity: 1 L}\n" +
	"  drum: {kind: drum, closure: vented, capacity: 5 L}\nsteps:\n" +
	"  - {do: melt, in: pot, what: [precursor, {substance: zinc chloride, mass: 6 g}], time: 5 h, temperature: 550 " +
	"degC}\n" +
	"  - {do: transfer, in: pot, into: cup}\n" +
	"  - {do: wash, in: cup, into: drum, what: [{substance: water, volume: 300 mL}], cycles: 3, temperature: 25 degC}\n" +
	"  - {do: wash, in: cup, into: drum, what: [{substance: HCl, strength: 5 wt%, volume: 100 mL}], cycles: 1, " +
	"time: 2 h, temperature: 25 degC}\n"

// Metal that a melt left gives its gas and heat to the acid that washes it, between
// bounds as an etch does.
var metalChecks = []check{
	{name: "zinc in an acid wash", yaml: zinc, figures: []want{
		{id: "gas.hydrogen.total@4", value: 0.908, from: "2.8881/194.605*2.5 mol of zinc: 37.1 mmol"},
		{id: "heat.etch.total@4", value: 5.69, from: "37.1 mmol at 153.4 kJ/mol"},
		{id: "heat.adiabatic_rise@4", value: 21.5, tolerance: 0.03, from: "5.69 kJ in the 53 % of 102 g of 5 wt% acid at " +
			"3.85 J/g/K that takes all the zinc, 2*37.1 of 140 mmol, and in the 12 mL of water that the solid keeps; 15 K in " +
			"all of it"},
		{id: "gas.hydrogen.peak_rate.during_addition@4:instantaneous", value: 3.43, from: "all of it in 53 % of half " +
			"a minute"},
		{id: "heat.temperature_peak@4:acid_onto_powder", value: 49, tolerance: 0.03, from: "5.69 kJ in 53 % of 444 J/K, " +
			"102 g of acid and 12 mL of water, from 25 degC"},
		{id: "heat.temperature_peak@4:base_added", value: 59.5, tolerance: 0.03, from: "5.69 kJ and 68.8 kJ/mol of the " +
			"140 mmol that were poured, in 444 J/K"},
		{id: "gas.hydrogen.peak_rate.after_addition@4:early_peak", value: 0.0166, tolerance: 0.3, from: "about twice " +
			"0.908 L over 110 min"},
	}, holds: []string{"second_gas"}, absent: []string{"gas.hydrogen.impurities@4"}},
}
