package hazards_test

import (
	"strings"

	"etchbound/hazards/figure"
)

func holds(g, molar float64, from string) []want {
	return []want{{id: "fluoride.hf_equivalent@1", value: g, from: from},
		{id: "fluoride.hf_concentration@1", value: molar, from: from},
		{id: "fluoride.total@1", value: g * 18.998 / 20.006, from: from}}
}

var fluorideChecks = []check{
	{name: "lithium fluoride and acid", yaml: bottle(hcl9, "{substance: lithium fluoride, mass: 1 g}"),
		figures: append(holds(0.7713, 1.9277, "1/25.938*20.006; over 20 mL of acid, the salt adds none"),
			want{id: "fluoride.hf_strength@1", value: 3.2424, from: "over 20*1.1394 g of acid and 1 g of salt"})},
	{name: "sodium fluoride and acid", yaml: bottle(hcl9, "{substance: NaF, mass: 1 g}"),
		figures: holds(0.47647, 1.19082, "1/41.988")},
	{name: "potassium fluoride and acid", yaml: bottle(hcl9, "{substance: KF, mass: 1 g}"),
		figures: holds(0.34436, 0.86064, "1/58.096")},
	{name: "ammonium fluoride and acid", yaml: bottle(hcl9, "{substance: NH4F, mass: 1 g}"),
		figures: append(holds(0.54016, 1.35, "1/37.037"),
			want{id: "neutralise.ammonia@waste", value: 0.66056, from: "27.00 mmol of ammonium, all as NH3"})},
	{name: "bifluoride and water", yaml: bottle("{substance: water, volume: 20 mL}", "{substance: ammonium "+
		"bifluoride, mass: 1 g}"),
		figures: append(holds(0.70144, 1.75306, "2/57.043"),
			want{id: "neutralise.mass@waste/calcium_hydroxide", value: 0.00129886, tolerance: half, from: "F less alkali " +
				"ions; ammonium is no alkali ion here: 35.06 mmol of F, 2 to one Ca(OH)2 of 74.092"})},
	{name: "hydrofluoric in hydrochloric acid", yaml: bottle("{substance: HF, strength: 50 wt%, volume: 2 mL}",
		"{substance: hydrochloric acid, strength: 12 mol/L, volume: 12 mL}", "{substance: water, volume: 6 mL}"),
		figures: holds(1.155, 2.8866, "2 mL at 1.155 g/mL (Technical Encyclopaedia 1.157*0.9982) in 20 mL")},
	{name: "hydrofluoric in sulfuric acid", yaml: bottle("{substance: HF, strength: 40 wt%, volume: 5 mL}",
		"{substance: sulfuric acid, strength: 30 wt%, volume: 10 mL}"),
		figures: append(holds(2.256, 7.5177, "5 mL at 1.128 g/mL in 15 mL"),
			want{id: "neutralise.mass@waste/calcium_hydroxide", value: 0.0069408, from: "112.77 mmol F and " +
				"2*(12.16*0.3/98.072*1000 = 37.29) mmol, halved, 74.092"})},
	{name: "free fluoride of a salt liquor", yaml: etches("phase: Ti3AlC2, mass: 1 g, "+pure, hcl9, lif), figures: []want{
		{id: "fluoride.free_hf@2", value: 0.87424, tolerance: 0.001, from: "61.686 mmol less 3.5*5.139 bound to " +
			"aluminium, 20.006 g/mol; nothing is taken off for what the product holds"}}},
	{name: "free fluoride of a liquor of one acid", yaml: etches("phase: Ti3AlC2, mass: 1 g, "+pure, hf10),
		figures: []want{
			{id: "fluoride.free_hf@2", value: 0.65035, tolerance: 0.001, from: "51.784 mmol; F:Al 10.08, n 3.751 " +
				"between 3.75 at 10 and 3.85 at 20; less 5.139*3.751; nothing taken off for the product"}}},
	{name: "other dissolved metals leave it unknown", yaml: etches("phase: Mo2Ga2C, mass: 1 g, "+pure, hf10),
		figures: []want{
			{id: "fluoride.free_hf@2", value: unknown, from: "no table for gallium"}}},
	{name: "above half", yaml: bottle("{substance: HF, strength: 60 wt%, volume: 10 mL}"),
		figures:  []want{{id: "fluoride.hf_strength@1", value: 60, from: "as written"}},
		verdicts: map[string]figure.Verdict{"fluoride.hf_strength@1+specialist_50_wt": exceeds},
		holds:    []string{"hf_strong"}},
	{name: "fluoride and acid in two steps are the acid too",
		yaml: head + places + "steps:\n" + charges("{substance: water, volume: 10 mL}", "{substance: KF, mass: 1 g}") +
			charges("{substance: hydrochloric acid, strength: 6 mol/L, volume: 10 mL}"),
		figures: []want{{id: "fluoride.hf_equivalent@2", value: 0.34436, from: "1/58.096*20.006"},
			{id: "fluoride.hf_concentration@2", value: 0.86064, from: "over 20 mL"}},
		warns: "hydrofluoric acid, whatever bottles they came from"},
}

const litre = "{substance: HF, strength: 48 wt%, volume: 1 L}"

// 1 L of 48 wt%: 1150 g * 0.48/20.006 = 27.592 mol. Reaction heats from the
// 1989 fluoride family: 2 HF + Ca(OH)2 169.8, CaCO3 55.0, NaHCO3 -16.8 a mol.
var wasteChecks = []check{
	{name: "a litre of 48 wt%", yaml: bottle(litre), figures: []want{
		{id: "fluoride.hf_concentration@1", value: 27.6, from: "27.592 mol in 1 L"},
		{id: "neutralise.mass@waste/calcium_hydroxide", value: 1.0222, from: "27.592/2*74.092"},
		{id: "neutralise.mass@waste/calcium_carbonate", value: 1.3808, from: "27.592/2*100.086"},
		{id: "neutralise.mass@waste/sodium_hydrogencarbonate", value: 2.3179, from: "27.592*84.006"},
		{id: "neutralise.mass@waste/sodium_hydroxide", value: 1.1036, from: "27.592*39.997"},
		{id: "neutralise.carbon_dioxide@waste/calcium_carbonate", value: 337.5, from: "13.796*24.4654"},
		{id: "neutralise.carbon_dioxide@waste/sodium_hydrogencarbonate", value: 675.0, from: "27.592*24.4654"},
		{id: "neutralise.heat@waste/calcium_hydroxide", value: 2342.5, from: "84.9 kJ/mol"},
		{id: "neutralise.heat@waste/calcium_carbonate", value: 758.8, from: "27.5 kJ/mol"},
		{id: "neutralise.heat@waste/sodium_hydrogencarbonate", value: -463.5, from: "-16.8 kJ/mol"},
		{id: "neutralise.heat@waste/sodium_hydroxide", value: 3126.2, from: "113.3 kJ/mol, D4"},
		{id: "neutralise.temperature_rise@waste/calcium_hydroxide", value: 75, low: 75, high: 75, from: "937 K on its " +
			"own water: capped at boiling from 25 degC"},
		{id: "neutralise.temperature_rise@waste/calcium_carbonate", value: 75, low: 75, high: 75, from: "303 K on its " +
			"own water: capped"},
		{id: "neutralise.dilution_water@waste/calcium_hydroxide", value: 37.47, from: "2342.5 kJ over 4.18*15, larger " +
			"than the 4.37 L to 10 wt%"},
		{id: "neutralise.dilution_water@waste/sodium_hydrogencarbonate", value: 4.383, from: "5520 g - 1150 g to 10 wt%"},
		{id: "neutralise.sludge_dry@waste/calcium_hydroxide", value: 1.0771, from: "13.796*78.074 of CaF2"},
	}, verdicts: map[string]figure.Verdict{"neutralise.temperature_rise@waste/calcium_hydroxide+bulk_40_degc": exceeds}},
	{name: "aluminium of the liquor counts", yaml: etches("phase: Ti3AlC2, mass: 1 g, "+pure, hf10), figures: []want{
		{id: "neutralise.mass@waste/calcium_hydroxide", value: 0.0017471, from: "51.784 - 5.139*0.9 mmol of F, " +
			"aluminium to its hydroxide: base is F"},
		{id: "neutralise.heat@waste/calcium_hydroxide", value: 3.320, tolerance: 0.01, from: "5.139 mmol AlF3 at " +
			"121.8 and 47.16 - 15.42 mmol HF at 84.9"},
		{id: "neutralise.sludge_dry@waste/calcium_hydroxide", value: 0.0022418, from: "23.58*78.074 + 5.139*78.003 mg"}}},
	{name: "lithium in the salt takes none", yaml: bottle(hcl9, lif), figures: []want{
		{id: "neutralise.mass@waste/calcium_hydroxide", value: 0.0066683, from: "F + Cl - Li = 180 mmol, halved, 74.092"}}},
	{name: "a step that writes too little", yaml: bottle(litre) + "  - {do: neutralise, in: pot, what: " +
		"[{substance: calcium hydroxide, mass: 500 g}]}\n",
		figures:  []want{{id: "neutralise.mass@2/calcium_hydroxide", value: 1.0222, from: "all of the fluoride"}},
		verdicts: map[string]figure.Verdict{"neutralise.mass@2/calcium_hydroxide+written_mass": exceeds},
		holds:    []string{"written_mass"}},
	{name: "boron holds its fluoride in cold lime", yaml: bottle("{substance: tetrafluoroboric acid, strength: 50 wt%, "+
		"mass: 20.02 g}") + "  - {do: neutralise, in: pot, what: [{substance: calcium hydroxide, mass: 17 g}]}\n",
		figures: []want{
			{id: "neutralise.mass@2/calcium_hydroxide", value: 0.01689, low: 0.01689, high: 0.02111, from: "0.114 mol of " +
				"four HF, 74.092 g/mol halved; a quarter more as borate"},
			{id: "neutralise.held_fluoride@2", value: 8.664, from: "0.114*4*18.998 g"},
			{id: "spill.neutraliser@spill/calcium_hydroxide", value: 0.05067, low: 0.03378, high: 0.05574, from: "three " +
				"times 16.89 g, 2 to 3.3"}},
		verdicts: map[string]figure.Verdict{"neutralise.mass@2/calcium_hydroxide+written_mass": exceeds},
		holds:    []string{"slow_fluoride", "written_mass"}},
	{name: "water before chalk", yaml: bottle("{substance: HF, strength: 40 wt%, volume: 2 mL}") + "  - {do: " +
		"neutralise, in: pot, what: [{substance: water, volume: 50 mL}, {substance: calcium carbonate, mass: 7.5 g}]}\n",
		figures: []want{
			{id: "neutralise.temperature_rise@2/calcium_carbonate", value: 5.79, low: 5.25, high: 6.34, from: "45.1 mmol " +
				"at 27.5 (24.9 to 30.1) kJ/mol on 51.2 g of water"},
			{id: "neutralise.dilution_water@waste/calcium_hydroxide", value: 0.00983, low: 0.00800, high: 0.01166,
				from: "61.0 g hold it, 51.2 g are there"}},
		verdicts: map[string]figure.Verdict{"neutralise.temperature_rise@2/calcium_carbonate+bulk_40_degc": figure.Within}},
	{name: "too little leaves acid behind", yaml: bottle(litre) + "  - {do: neutralise, in: pot, what: " +
		"[{substance: calcium hydroxide, mass: 500 g}]}\n",
		warns: "HF is in the liquor of step 2"},
}

func washes(retained, water, more string) string {
	return bottle(hcl9, lif) + "  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 180 mL}], " +
		"retained: " + retained + ", water: " + water + more + "}\n"
}

// powderWashes is the same wash after an etch.
func powderWashes(retained, water, more string) string {
	return strings.Replace(washes(retained, water, more), "  - {do: wash", addsIt+"  - {do: wash", 1)
}

var washChecks = []check{
	{name: "from 9 mol/L to pH 6 at a tenth", yaml: washes("10 %", "co2_free", ", target_ph: 6"), figures: []want{
		{id: "wash.cycles@2", value: 7, low: 7, high: 7, from: "9 mol/L * 0.1^7 = 9e-7 mol/L; equilibrium model 6.05 " +
			"after 7"},
		{id: "wash.ph@2", value: 6.05, from: "the same"},
		{id: "wash.water@2", value: 1.26, from: "7*0.18 L"}},
		absent: []string{"wash.cycles@1"}},
	{name: "from 9 mol/L to pH 6 at a fifth", yaml: washes("20 %", "co2_free", ", target_ph: 6"), figures: []want{
		{id: "wash.cycles@2", value: 10, low: 10, high: 10, from: "9 mol/L * 0.2^10 = 9.2e-7 mol/L"}}},
	{name: "open to air", yaml: washes("10 %", "open_air", ", target_ph: 6"), figures: []want{
		{id: "wash.cycles@2", value: unknown, from: "water that has met air does not pass 5.61"}}},
	{name: "open to air to 5.5", yaml: washes("10 %", "open_air", ", target_ph: 5.5"), figures: []want{
		{id: "wash.cycles@2", value: 7, tolerance: half, from: "equilibrium model 5.05 after 6, 5.53 after 7"}}},
	{name: "too few written", yaml: washes("10 %", "co2_free", ", target_ph: 6, cycles: 4"),
		verdicts: map[string]figure.Verdict{"wash.cycles@2+written_cycles": exceeds},
		figures: []want{{id: "wash.cycles@2", value: 7, from: "what the target needs"},
			{id: "wash.water@2", value: 0.72, from: "what is written"},
			{id: "wash.ph@2", value: 3.05, tolerance: 0.045, from: "9e-4 mol/L ideal; 3.17 by the equilibrium model"}}},
	{name: "target unreachable and cycles written", yaml: washes("10 %", "open_air", ", target_ph: 6, cycles: 30"),
		verdicts: map[string]figure.Verdict{"wash.cycles@2+written_cycles": unknownVerdict}},
	{name: "fluoride goes with the decants", yaml: washes("10 %", "co2_free", ", target_ph: 6"), figures: []want{
		{id: "wash.fluoride@2", value: 1.1719, from: "61.686 mmol"}}},
	{name: "cycle 0 is the etch decant", yaml: strings.Replace(powderWashes("5 mL/g", "co2_free", ", cycles: 3"),
		"places:", "precursor: {phase: Ti3AlC2, mass: 1 g, "+pure+"}\nplaces:", 1), figures: []want{
		{id: "wash.liquor@3", value: 0.555, from: "20 mL less the 5 mL that stay, and 3*180"},
		{id: "wash.water@3", value: 0.54, from: "3*180 mL"}}},
	{name: "hydrofluoric acid by its pKa", yaml: bottle("{substance: HF, strength: 10 wt%, volume: 20 mL}") +
		"  - {do: wash, in: pot, into: drum, what: [{substance: water, volume: 180 mL}], retained: 10 %, water: " +
		"co2_free, cycles: 5}\n",
		figures: []want{{id: "wash.ph@2", value: 4.32, tolerance: 0.04, from: "5.178e-5 mol/L of HF, pKa 3.18; 4.46 " +
			"by the equilibrium model for a liquor with aluminium"}}},
}
