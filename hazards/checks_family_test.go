package hazards_test

import "etchbound/hazards/figure"

const (
	gram  = "precursor: {phase: Ti3AlC2, mass: 1 g, " + pure + "}\n"
	water = "[{substance: water, volume: 100 mL}]"
	more  = "places:\n  pot: {kind: vessel, closure: vented, capacity: 1 L}\n  drum: {kind: drum, closure: " +
		"vented, capacity: 5 L}\n  base: {kind: bottle, closure: vented, capacity: 500 mL}\nsteps:\n"
	begins = head + gram + more
)

// Hydrogen that comes where nobody looks for it, and the families without HF.
var laterGasChecks = []check{
	{name: "zinc chloride melt", yaml: begins + `  - {do: melt, in: pot, what: [precursor, {substance: zinc ` +
		`chloride, mass: 4.2 g}], time: 5 h, temperature: 550 degC}
  - {do: wash, in: pot, into: drum, what: ` + water + `, cycles: 3}
  - {do: wash, in: pot, into: drum, what: [{substance: hydrochloric acid, strength: 5 wt%, volume: 100 mL}], cycles: 1}
`, figures: []want{
		{id: "gas.hydrogen.total@3", value: 0.3143, from: "(3 + 2)/2 Zn a mol: 2.5/194.605*24.4654, in the acid wash " +
			"and not in the melt"},
		{id: "gas.hydrogen.total", value: 0.3143, from: "the same"},
		{id: "heat.etch.total@1", value: 0.14516, tolerance: half, from: "28.25 kJ/mol, by heats of formation"},
		{id: "heat.quench_water@1", value: unknown, from: "no water on to a melt (common practice)"}},
		absent: []string{"gas.hydrogen.total@1", "gas.hydrogen.total@2"}, holds: []string{"second_gas"},
		warns: "acid wash that gives hydrogen"},
	{name: "copper chloride melt and persulfate",
		yaml: begins + `  - {do: melt, in: pot, what: [precursor, {substance: copper chloride, mass: 2.1 g}], time: 5 ` +
			`h, temperature: 750 degC}
  - {do: wash, in: pot, into: drum, what: ` + water + `, cycles: 3}
  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 100 mL}, {substance: ammonium persulfate, ` +
			`mass: 5 g}], cycles: 2}
`,
		// persulfate that is left decays with oxygen, faster with copper
		absent: []string{"gas.hydrogen.total@1", "gas.hydrogen.total@2"}, warns: "oxidant"},
	{name: "sodium hydroxide, hot", yaml: begins +
		`  - {do: charge, in: pot, what: [{substance: sodium hydroxide, strength: 40 wt%, volume: 50 mL}], ` +
		`temperature: 20 degC}
  - {do: add, in: pot, what: [precursor], over: 5 min, temperature: 20 degC}
  - {do: heat_closed, in: pot, time: 12 h, temperature: 270 degC}
`, figures: []want{
		{id: "gas.hydrogen.total", value: 0.37715, low: 0.31430, high: 0.44001, from: "the same electron count, OH " +
			"and O: 2.5 to 3.5 mol/mol; 11.6 bar a gram in 50 mL"},
		{id: "heat.etch.total", value: 3.55592, low: 2.35862, high: 4.08520, from: "692 (459 to 795)/194.605 by " +
			"stand-ins: 413 + 372 - 43 - 50"}}},
	{name: "organic base after an opening", yaml: begins + charges(hf10) + addsIt +
		`  - {do: wash, in: pot, into: drum, what: ` + water + `, cycles: 4}
  - {do: charge, in: base, what: [{substance: TMAOH, strength: 25 wt%, volume: 10 mL}], temperature: 20 degC}
  - {do: transfer, in: pot, into: base}
  - {do: hold, in: base, time: 24 h, temperature: 25 degC}
`, figures: []want{
		{id: "gas.hydrogen.total@2", value: 0.37715, low: 0.31430, high: 0.44001, from: "whole powder, by whatever time"},
		{id: "gas.hydrogen.total", value: 0.37715, low: 0.31430, high: 0.44001, from: "what is left gives its gas " +
			"once, in acid or in base"},
		{id: "fluoride.hf_strength", value: 10, low: 10, high: 10, from: "the bath; traces after washing are known too"}},
		verdicts: map[string]figure.Verdict{"fluoride.hf_strength@1+specialist_50_wt": withinLimit},
		holds:    []string{"second_gas"}, warns: "brings base to the etched powder"},
}

var familyChecks = []check{
	{name: "peroxide in the bath", yaml: begins + charges(hf10, "{substance: hydrogen peroxide, strength: 30 wt%, "+
		"volume: 2 mL}") + addsIt,
		figures: []want{{id: "gas.hydrogen.total", value: unknown, from: "electrons go to the oxidant"},
			{id: "heat.etch.total", value: unknown, from: "not modelled"},
			{id: "account.error", value: 0, from: "closes while the figure is unknown"}},
		holds: []string{"oxidant"}, warns: "oxidant"},
	{name: "nitric acid in the bath", yaml: begins + charges(hf10, "{substance: nitric acid, strength: 20 wt%, "+
		"volume: 5 mL}") + addsIt,
		figures: []want{{id: "gas.hydrogen.total", value: unknown, from: "electrons go to the oxidant"}},
		holds:   []string{"oxidant"}, warns: "nitrogen oxides"},
	{name: "iron(III) chloride in the bath", yaml: begins + charges(hf10, "{substance: iron(III) chloride, mass: 5 g}") +
		addsIt,
		figures: []want{{id: "gas.hydrogen.total", value: unknown, from: "Fe(III) takes electrons"}},
		holds:   []string{"oxidant"}},
	{name: "current", yaml: begins + charges("{substance: water, volume: 100 mL}", "{substance: ammonium chloride, "+
		"strength: 1 mol/L}") + charges("precursor") +
		"  - {do: electrolyse, in: pot, time: 5 h, temperature: 25 degC, current: 1 A}\n",
		figures: []want{{id: "gas.hydrogen.total@3", value: 2.282, tolerance: half, from: "7.6 mL/min an ampere: " +
			"1*18000/96485.33212/2*24.4654 L at the cathode, whatever the powder takes of it"}},
		holds: []string{"anode", "nitrogen_trichloride"}},
	{name: "a melt in a shut crucible", yaml: head + gram + "places:\n  pot: {kind: crucible, closure: closed, " +
		"capacity: 25 mL}\nsteps:\n  - {do: melt, in: pot, what: [precursor, {substance: zinc chloride, mass: 4.2 g}], " +
		"time: 5 h, temperature: 550 degC, gas: argon}\n",
		figures: []want{{id: "gas.closed.pressure@pot:heated", value: unknown,
			from: "what the salt adds is held nowhere, and no water is in it"}},
		holds: []string{"melt_shut", "melt_gas"}},
	{name: "elements sintered in a shut crucible, in air", yaml: head + gram + "places:\n  pot: {kind: vessel, " +
		"closure: vented, capacity: 1 L}\n  boat: {kind: crucible}\nsteps:\n  - {do: sinter, in: boat, what: " +
		"[{substance: titanium, amount: 30 mmol}, {substance: aluminium, amount: 10 mmol}, {substance: graphite, " +
		"amount: 20 mmol}], time: 2 h, temperature: 1300 degC}\n  - {do: sieve, in: boat}\n  - {do: mill, in: boat, " +
		"time: 1 h, gas: argon}\n" + charges(hf10) + addsIt,
		figures:  []want{{id: "sinter.heat", value: 4.70, tolerance: half, from: "470 kJ/mol, enthalpy of formation"}},
		verdicts: map[string]figure.Verdict{"sinter.rise@1+runs_through": exceeds},
		holds:    []string{"powder_in_air", "sintered_shut", "runs_through", "sieved", "jar_opened"}},
	{name: "bifluoride names its acid", yaml: etches("phase: Ti3AlC2, mass: 1 g, "+pure, "{substance: water, "+
		"volume: 20 mL}", "{substance: ammonium bifluoride, mass: 1.14 g}"),
		figures: []want{{id: "gas.hydrogen.total", value: 0.37715, low: 0.31430, high: 0.44001, from: "electron count"},
			{id: "heat.etch.per_gram@2", value: 3.905, low: 3.520, high: 4.291, from: "counted from HF(aq)"}},
		warns: "hydrofluoric acid"},
	{name: "fluoride without acid still etches",
		yaml: etches("phase: Ti3AlC2, mass: 1 g, "+pure, "{substance: water, volume: 20 mL}", "{substance: ammonium "+
			"fluoride, mass: 1.14 g}"),
		figures: []want{{id: "gas.hydrogen.total", value: 0.37715, low: 0.31430, high: 0.44001, from: "electron count"},
			{id: "heat.etch.total", value: unknown, from: "no data"}}},
	{name: "a prewash in acid takes the metals off", yaml: head + "precursor: {phase: Ti3AlC2, mass: 1 g, " +
		"impurities: [{formula: Al, share: 3 wt%}, {formula: TiAl3, share: 10 wt%}]}\n" + more +
		charges("precursor") + `  - {do: prewash, in: pot, into: drum, what: [{substance: hydrochloric acid, strength: ` +
		`9 mol/L, volume: 20 mL}], temperature: 20 degC}
  - {do: charge, in: base, what: [` + hf10 + `], temperature: 20 degC}
  - {do: transfer, in: pot, into: base}
`, figures: []want{
		{id: "gas.hydrogen.impurities@2", value: 0.15476, from: "41 and 114 mL, in the prewash"},
		{id: "gas.hydrogen.total@2", value: 0.15476, from: "the phase does not react there"},
		{id: "gas.hydrogen.total@4", value: 0.87 * 0.377155, low: 0.87 * 0.314296, high: 0.87 * 0.440014,
			from: "0.87 g of the phase"}}},
	{name: "carbide gives methane", yaml: etches("phase: Ti3AlC2, mass: 1 g, impurities: [{formula: Al4C3, share: "+
		"2 wt%}]", hf10),
		figures: []want{{id: "gas.hydrogen.total@2", value: 0.98 * 0.377155, from: "no hydrogen from the carbide"},
			{id: "account.error", value: 0, from: "conservation"}},
		warns: "methane"},
	{name: "twice the impurity lists what to measure", yaml: etches("phase: Ti3AlC2, mass: 1 g, impurities: "+
		"[{formula: CrSi2, share: 2 wt%}]", hf10),
		figures: []want{{id: "gas.hydrogen.total@2", value: unknown, from: "nothing is held on chromium silicide"},
			{id: "account.error", value: 0, from: "closes while the figure is unknown"}},
		measures: []string{"hydrogen.impurity.CrSi2"}},
	{name: "acid washed out, then fluoride and powder", yaml: head + gram + more + charges("{substance: HF, "+
		"strength: 5 wt%, volume: 3 mL}") +
		"  - {do: exchange, in: pot, into: drum, what: [{substance: water, volume: 5 mL}], cycles: 1}\n" +
		charges("{substance: lithium fluoride, mass: 1 g}", "{substance: water, volume: 10 mL}") + addsIt,
		figures: []want{{id: "account.error", value: 0, from: "conservation; nothing is left of the acid, and that is " +
			"no fault"}}},
}
