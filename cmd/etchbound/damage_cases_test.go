package main

import (
	"strings"
	"unicode/utf16"
)

// Texts of the good route that the cases replace.
const (
	acid      = "{substance: hydrochloric acid, strength: 9 mol/L, volume: 40 mL}"
	fluoride  = "{substance: lithium fluoride, mass: 3.2 g}"
	mass      = "mass: 2 g\n"
	phaseLine = "phase: Ti3AlC2"
	etchIn    = "in: etch\n"
)

func whole(text string) func(string) string { return func(string) string { return text } }

func wide(order [2]int, mark bool) func(string) string {
	return func(good string) string {
		var b strings.Builder
		units := utf16.Encode([]rune(good))
		if mark {
			units = append([]uint16{0xfeff}, units...)
		}
		for _, u := range units {
			pair := [2]byte{byte(u), byte(u >> 8)}
			b.WriteByte(pair[order[0]])
			b.WriteByte(pair[order[1]])
		}
		return b.String()
	}
}

// without leaves out the block that begins with a key at the margin.
func without(key string) func(string) string {
	return func(good string) string {
		from := strings.Index(good, "\n"+key+":") + 1
		to := from + strings.IndexByte(good[from:], '\n') + 1
		for to < len(good) && (good[to] == ' ' || good[to] == '\n') {
			to += strings.IndexByte(good[to:], '\n') + 1
		}
		return good[:from] + good[to:]
	}
}

var damages = []damage{
	// The file as bytes.
	{name: "empty", make: whole(""), want: "empty", line: 1},
	{name: "only comments", make: whole("# nothing yet\n\n# nor here\n"), want: "empty", line: 1},
	{name: "UTF-16 little endian", make: wide([2]int{0, 1}, true), want: "UTF-16", line: 1},
	{name: "UTF-16 big endian", make: wide([2]int{1, 0}, true), want: "UTF-16", line: 1},
	{name: "UTF-16 without a mark", make: wide([2]int{0, 1}, false), want: "UTF-16", line: 1},
	{name: "Latin-1", old: "title: Two", new: "title: Zw\xf6lf", want: "UTF-8"},
	{name: "NUL", old: "title: Two", new: "title: T\x00wo", want: "control character"},
	{name: "escape character", old: "title: Two", new: "title: \x1b[31mTwo", want: "control character"},
	{name: "text turned round", old: "title: Two", new: "title: \u202eTwo", want: "direction"},
	{name: "above one MiB", make: func(good string) string { return good + "#" + strings.Repeat("x", 1<<20) + "\n" },
		want: "1 MiB", line: 1},
	{name: "no-break space after a colon", old: mass, new: "mass:\u00a02 g\n",
		want: "no-break.*\n(.*\n)*.*ordinary space"},
	{name: "no-break space before a unit", old: mass, new: "mass: 2\u00a0g\n", want: "no-break"},

	// YAML that a route does not need, or that hides what is meant.
	{name: "top-level list", make: whole("- route: etchbound/1\n- title: x\n"), want: "list", line: 1},
	{name: "top-level text", make: whole("just some words\n"), want: "title:", line: 1},
	{name: "tab", old: "  mass: 2 g", new: "\tmass: 2 g", want: "tab.*\n(.*\n)*.*spaces"},
	{name: "anchor", old: mass, new: "mass: &m 2 g\n", want: "anchor"},
	{name: "alias", old: mass, new: "mass: *m\n", want: `\*`},
	{name: "tag", old: mass, new: "mass: !!str 2 g\n", want: "tag"},
	{name: "tag of one's own", old: mass, new: "mass: !grams 2 g\n", want: "tag"},
	{name: "merge key", old: mass, new: mass + "  <<: {purity: 90 wt%}\n", want: "<<"},
	{name: "second document", make: func(good string) string { return good + "---\ntitle: another\n" },
		want: "second document", line: -1},
	{name: "deep nesting", make: func(good string) string {
		return good + "data: " + strings.Repeat("[", 40) + strings.Repeat("]", 40) + "\n"
	}, want: "deep", line: -1},
	{name: "very deep nesting", make: func(good string) string {
		return good + "data: " + strings.Repeat("[", 20000) +
			"\n"
	}, want: "deep|bracket", line: -1},
	{name: "duplicate key", old: mass, new: mass + "  mass: 3 g\n", want: "twice"},
	{name: "null by nothing", old: mass, new: "mass:\n", want: "nothing"},
	{name: "null by tilde", old: mass, new: "mass: ~\n", want: "nothing"},
	{name: "null by word", old: mass, new: "mass: null\n", want: "nothing"},
	{name: "quote not closed", old: "title: Two", new: "title: \"Two", want: "quote that is not closed"},
	{name: "bracket not closed", old: fluoride, new: strings.TrimSuffix(fluoride, "}"), want: "bracket", line: -1},
	{name: "indented wrongly", old: "  purity:", new: "   purity:", want: "indent|same column|quotes"},
	{name: "two colons", old: "title: Two", new: "title: etch: Two", want: "quotes"},
	{name: "key is a number", old: mass, new: mass + "  5: 3 g\n", want: "key"},

	// Keys.
	{name: "unknown key", old: "particle_size:", new: "partical_size:", want: "particle_size"},
	{name: "key with a capital", old: "title:", new: "Title:", want: "did you mean title"},
	{name: "key of another block", old: mass, new: mass + "  capacity: 3 L\n", want: "capacity"},
	{name: "no format", make: without("route"), want: "etchbound/1", line: -1},
	{name: "other format", old: "route: etchbound/1", new: "route: etchbound/2", want: "etchbound/1"},
	{name: "no title", make: without("title"), want: "title", line: -1},
	{name: "no basis", make: without("basis"), want: "basis", line: -1},
	{name: "no places", make: without("places"), want: "the key places is missing", line: -1},
	{name: "no steps", make: without("steps"), want: "steps", line: -1},
	{name: "steps are a text", make: func(good string) string { return without("steps")(good) + "steps: stir\n" },
		want: "list|dash", line: -1},
	{name: "no steps in the list", make: func(good string) string { return without("steps")(good) + "steps: []\n" },
		want: "step", line: -1},
	{name: "a site file", make: whole("site: etchbound/1\ntitle: Workshop\n"), want: "site file", line: 1},

	// Numbers and units.
	{name: "bare number", old: mass, new: "mass: 2\n", want: "unit"},
	{name: "unit without a number", old: mass, new: "mass: g\n", want: "number"},
	{name: "octal", old: "count: 4", new: "count: 04", want: "04"},
	{name: "octal, new spelling", old: "count: 4", new: "count: 0o4", want: "decimal"},
	{name: "hexadecimal", old: "count: 4", new: "count: 0x4", want: "decimal"},
	{name: "binary", old: "count: 4", new: "count: 0b100", want: "decimal"},
	{name: "underscore", old: "count: 4", new: "count: 1_0", want: "1_0"},
	{name: "half a tube", old: "count: 4", new: "count: 4.5", want: "whole"},
	{name: "no tube", old: "count: 4", new: "count: 0", want: "1"},
	{name: "number in quotes", old: "cycles: 8", new: "cycles: \"8\"", want: "quotes|number"},
	{name: "NaN", old: "target_ph: 5.5", new: "target_ph: .nan", want: "nan"},
	{name: "NaN by word", old: "target_ph: 5.5", new: "target_ph: NaN", want: "finite|number"},
	{name: "infinity", old: "target_ph: 5.5", new: "target_ph: .inf", want: "inf"},
	{name: "1e400", old: "target_ph: 5.5", new: "target_ph: 1e400", want: "too large"},
	{name: "1e-400", old: "target_ph: 5.5", new: "target_ph: 1e-400", want: "too small"},
	{name: "pH above 14", old: "target_ph: 5.5", new: "target_ph: 15", want: "14"},
	{name: "decimal comma", old: "target_ph: 5.5", new: "target_ph: 5,5", want: "decimal (point|comma)|5\\.5"},
	{name: "decimal comma in an amount", old: "mass: 3.2 g", new: "mass: 3,2 g", want: "decimal (comma|point)|3\\.2"},
	{name: "decimal comma in a block", old: mass, new: "mass: 2,5 g\n", want: "2\\.5 g"},
	{name: "thousands", old: mass, new: "mass: 1,000 mg\n", want: "1000 mg"},
	{name: "NaN amount", old: mass, new: "mass: nan g\n", want: "nan"},
	{name: "infinite amount", old: mass, new: "mass: inf g\n", want: "inf"},
	{name: "1e400 amount", old: mass, new: "mass: 1e400 g\n", want: "too large"},
	{name: "1e-400 amount", old: mass, new: "mass: 1e-400 g\n", want: "too small"},
	{name: "hexadecimal amount", old: mass, new: "mass: 0x2 g\n", want: "0x2"},
	{name: "underscore in an amount", old: mass, new: "mass: 1_000 mg\n", want: "1_000|1000"},
	{name: "unknown unit", old: "volume: 40 mL", new: "volume: 40 mLs", want: "mL"},
	{name: "unit of another kind", old: "volume: 40 mL", new: "volume: 40 g", want: "volume"},
	{name: "unit in capitals", old: "volume: 40 mL", new: "volume: 40 ML", want: "mL"},
	{name: "plain C", old: "temperature: 35 degC", new: "temperature: 35 C", want: "degC"},
	{name: "plain percent for a strength", old: "strength: 9 mol/L", new: "strength: 30 %", want: "wt%"},
	{name: "range upside down", old: mass, new: "mass: 2 (3 to 1) g\n", want: "low|range|order"},
	{name: "value outside of its range", old: mass, new: "mass: 2 (3 to 4) g\n", want: "between|range|outside"},
	{name: "year with a fraction", old: "  status: invented", new: "  status: invented\n  year: 2017.5",
		want: "year|whole"},
	{name: "day that is none", old: "2026-11-25", new: "2026-02-30", want: "calendar"},

	// Amounts that cannot be.
	{name: "negative mass", old: mass, new: "mass: -2 g\n", want: "negative|less than"},
	{name: "negative volume", old: "volume: 40 mL", new: "volume: -40 mL", want: "negative|less than"},
	{name: "negative time", old: "time: 24 h", new: "time: -24 h", want: "negative|less than"},
	{name: "below absolute zero", old: "temperature: 35 degC", new: "temperature: -300 degC", want: "absolute zero|-273"},
	{name: "hotter than a furnace", old: "temperature: 35 degC", new: "temperature: 3000 degC", want: "2000"},
	{name: "two tonnes", old: mass, new: "mass: 2000 kg\n", want: "1000 kg"},
	{name: "a swimming pool", old: "volume: 40 mL", new: "volume: 200 m3", want: "100 m3"},
	{name: "six years", old: "time: 24 h", new: "time: 2200 d", want: "year|1826|1825"},
	{name: "above a hundred per cent", old: "purity: 96 wt%", new: "purity: 120 wt%", want: "100"},
	{name: "no powder", old: mass, new: "mass: 0 g\n", want: "zero"},
	{name: "purity and impurities", old: "purity: 96 wt%", new: "purity: 99 wt%", want: "103", line: -1},
	{name: "relief above the rating", old: "    vent: 3 mm", new: "    rating: 100 kPa\n    relief: 200 kPa\n    " +
		"vent: 3 mm", want: "rating", line: -1},
	{name: "all stays with the solid", old: "retained: 5 mL/g", new: "retained: 100 %", want: "100 %"},

	// Words.
	{name: "yes", old: "attended: true", new: "attended: yes", want: "true"},
	{name: "on", old: "stirred: true", new: "stirred: on", want: "true"},
	{name: "no where a word is meant", old: "closure: closed", new: "closure: no", want: "open"},
	{name: "true where text is meant", old: "title: Two", new: "title: true #", want: "quotes"},
	{name: "number where text is meant", old: "material: PTFE", new: "material: 316", want: "quotes"},
	{name: "unknown verb", old: "do: hold", new: "do: holdd", want: "hold"},
	{name: "unknown kind", old: "kind: bottle", new: "kind: botle", want: "bottle"},

	// The powder.
	{name: "not layered", old: phaseLine, new: "phase: NaCl", want: "layer"},
	{name: "no formula", old: phaseLine, new: "phase: titanium carbide", want: "Ti3AlC2"},
	{name: "formula in small letters", old: phaseLine, new: "phase: ti3alc2", want: "capital|Ti3AlC2"},
	{name: "a layer that is not in it", old: phaseLine, new: phaseLine + "\n  layers: [Ga]", want: "Ga"},
	{name: "bare none", make: func(good string) string {
		return strings.Replace(strings.Replace(strings.Replace(good,
			"  impurities:\n", "  impurities: none\n", 1),
			"    - {formula: TiC, share: 3 wt%} # inert in the bath, only dead weight\n", "", 1),
			"    - {formula: Al, share: 1 wt%} # free metal gives hydrogen and heat at once\n", "", 1)
	}, want: `none \(source\)`},
	{name: "the phase as impurity", old: "formula: TiC,", new: "formula: Ti3AlC2,", want: "phase"},
	{name: "impurity twice", old: "formula: TiC,", new: "formula: Al,", want: "twice", line: -1},
	{name: "precursor twice", old: fluoride, new: "precursor", want: "second time", line: -1},
	{name: "precursor without its block", make: without("precursor"), want: "precursor", line: -1},

	// Places and steps.
	{name: "unknown place", old: etchIn, new: "in: ech\n", want: "etch"},
	{name: "same place", old: "into: tubes\n", new: "into: etch\n", want: "same place"},
	{name: "reserved place", old: "  product:\n", new: "  spill:\n", want: "spill", line: -1},
	{name: "place in capitals", old: "  product:\n", new: "  Product:\n", want: "small letter|lower", line: -1},
	{name: "no time of addition", old: "    over: 20 min\n", new: "", want: "over", line: -1},
	{name: "no place to go", old: "    into: tubes\n", new: "", want: "into", line: -1},
	{name: "no time to hold", old: "    time: 24 h\n", new: "", want: "time", line: -1},
	{name: "key of another verb", old: "    time: 24 h\n", new: "    time: 24 h\n    cycles: 3\n", want: "cycles"},
	{name: "temperature of a transfer", old: "    into: tubes\n", new: "    into: tubes\n    temperature: 20 degC\n",
		want: "temperature"},
	{name: "material of a hold", old: "    time: 24 h\n", new: "    time: 24 h\n    what: [precursor]\n", want: "what",
		line: -1},

	// Materials.
	{name: "unknown substance", old: "substance: hydrochloric acid", new: "substance: hydrocloric acid",
		want: "hydrochloric acid"},
	{name: "acid without strength", old: "strength: 9 mol/L, volume", new: "volume", want: "strength"},
	{name: "how much is not said", old: acid, new: "{substance: hydrochloric acid, strength: 9 mol/L}", want: "volume"},
	{name: "said twice", old: "mass: 3.2 g}", new: "mass: 3.2 g, amount: 0.1 mol}", want: "more than one"},
	{name: "volume of a solid", old: "mass: 3.2 g}", new: "volume: 3 mL}", want: "mass"},
	{name: "strength of water", old: "{substance: water, volume: 160 mL}",
		new: "{substance: water, strength: 1 mol/L, volume: 160 mL}", want: "no strength"},
	{name: "lithium fluoride 5 mol/L", old: fluoride, new: "{substance: lithium fluoride, strength: 5 mol/L}",
		want: `ratio: 5 mol/mol`},
	{name: "lithium fluoride 12 mol/L", old: fluoride, new: "{substance: LiF, strength: 12 mol/L}",
		want: `ratio: 12 mol/mol`},
	{name: "sodium fluoride 5 mol/L", old: fluoride, new: "{substance: sodium fluoride, strength: 5 mol/L}",
		want: `ratio: 5 mol/mol`},
	{name: "more fluoride than acid", make: func(good string) string {
		return strings.Replace(strings.Replace(good, "strength: 9 mol/L", "strength: 2 mol/L", 1), fluoride,
			"{substance: lithium fluoride, strength: 3 mol/L}", 1)
	}, want: `more than the acid`, line: -1},
	{name: "HF 80 wt%", old: acid, new: "{substance: hydrofluoric acid, strength: 80 wt%, volume: 40 mL}", want: "70 wt%"},
	{name: "HF 45 mol/L", old: acid, new: "{substance: hydrofluoric acid, strength: 45 mol/L, volume: 40 mL}",
		want: "70 wt%"},
	{name: "HF without water", old: acid, new: "{substance: anhydrous hydrogen fluoride, mass: 10 g}", want: "specialist"},
	{name: "HCl 50 wt%", old: acid, new: "{substance: hydrochloric acid, strength: 50 wt%, volume: 40 mL}",
		want: "45 wt%"},
	{name: "H2SO4 99.9 wt%", old: acid, new: "{substance: sulfuric acid, strength: 99.9 wt%, volume: 40 mL}",
		want: "98.5 wt%"},
	{name: "NaOH 80 wt%", old: fluoride, new: "{substance: sodium hydroxide, strength: 80 wt%, volume: 4 mL}",
		want: "75 wt%"},

	// What replaces data.
	{name: "measured without powder", make: func(good string) string {
		good = strings.Replace(without("precursor")(good), "      - precursor\n", "", 1)
		return strings.Replace(good, "what: [precursor]", "what: [{substance: water, volume: 1 mL}]", 1) +
			"measured: {etch_heat: 720 kJ/mol}\n"
	}, want: "precursor", line: -1},
	{name: "unknown datum", make: func(good string) string {
		return good + "data:\n  - {id: etch_heat.Ti3AlC3, value: 700 kJ/mol, source: own}\n"
	}, want: "etch_heat.Ti3AlC2", line: -1},
	{name: "datum without source", make: func(good string) string {
		return good + "data:\n  - {id: etch_heat.Ti3AlC2, value: 700 kJ/mol}\n"
	}, want: "source", line: -1},
	{name: "datum in another unit", make: func(good string) string {
		return good + "data:\n  - {id: etch_heat.Ti3AlC2, value: 700 kg, source: own}\n"
	}, want: "kJ/mol", line: -1},
}

var sound = []damage{
	{name: "byte order mark", make: func(good string) string { return "\ufeff" + good }},
	{name: "CR LF", make: func(good string) string { return strings.ReplaceAll(good, "\n", "\r\n") }},
	{name: "no last line end", make: func(good string) string { return strings.TrimRight(good, "\n") }},
	{name: "one document mark", make: func(good string) string { return "---\n" + good }},
	{name: "lithium fluoride 2.5 mol/L", old: fluoride, new: "{substance: lithium fluoride, strength: 2.5 mol/L}"},
	{name: "potassium fluoride 5 mol/L", old: fluoride, new: "{substance: potassium fluoride, strength: 5 mol/L}"},
	{name: "mole ratio 12", old: fluoride, new: "{substance: lithium fluoride, ratio: 12 mol/mol}"},
	{name: "by formula", old: fluoride, new: "{substance: LiF, mass: 3.2 g}"},
	{name: "by CAS number", old: fluoride, new: "{substance: 7789-24-4, mass: 3.2 g}"},
	{name: "HF 70 wt%", old: acid, new: "{substance: hydrofluoric acid, strength: 70 wt%, volume: 40 mL}"},
	{name: "capital M for mol/L", old: "strength: 9 mol/L", new: "strength: 9 M"},
	{name: "below freezing", old: "temperature: 4 degC", new: "temperature: -18 degC"},
	{name: "a range", old: mass, new: "mass: 2 (1.9 to 2.1) g\n"},
	{name: "a title of other letters", old: "title: Two", new: "title: Ätzen mit Säure, 二克, Two"},
	{name: "a title in quotes", old: "title: Two", new: "title: \"yes\" # Two"},
	{name: "a longer list of numbers in a note", old: "note: In portions", new: "note: 1,5 or 0x4 or -1; in portions"},
}

// aroundDamage damages a file that a flag names.
type aroundDamage struct {
	flag string
	damage
}

var damagedAround = []aroundDamage{
	{"site", damage{name: "bare number", old: "flow: 800 m3/h", new: "flow: 800", want: "unit"}},
	{"site", damage{name: "unknown key", old: "containment:", new: "containement:", want: "containment"}},
	{"site", damage{name: "unknown jurisdiction", old: "jurisdiction: eu", new: "jurisdiction: mars",
		want: "us_california"}},
	{"site", damage{name: "unknown substance", old: "substance: lithium fluoride", new: "substance: litium fluoride",
		want: "lithium fluoride"}},
	{"site", damage{name: "negative flow", old: "flow: 800 m3/h", new: "flow: -800 m3/h", want: "negative|less than"}},
	{"site", damage{name: "a route", make: whole("route: etchbound/1\ntitle: x\n"), want: "route file"}},
	{"limits", damage{name: "bare number", old: "value: 40 K", new: "value: 40", want: "unit"}},
	{"limits", damage{name: "unknown quantity", old: "heat.adiabatic_rise", new: "heat.adiabatic_raise",
		want: "heat.adiabatic_rise"}},
	{"limits", damage{name: "unit of another quantity", old: "value: 40 K", new: "value: 40 kPa", want: "K"}},
	{"limits", damage{name: "unknown key", old: "near: 50 %", new: "margin: 50 %", want: "near"}},
	{"limits", damage{name: "no document", old: "    document: House rules for trial batches (invented)\n    " +
		"section: \"3\"\n    edition", new: "    edition", want: "document", line: -1}},
	{"limits", damage{name: "id twice", old: "id: house_temperature", new: "id: house_rise", want: "house_rise"}},
	{"limits", damage{name: "unknown agent", old: "agent: hydrogen fluoride", new: "agent: hydrogen floride",
		want: "hydrofluoric acid"}},
}
