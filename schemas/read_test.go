package schemas_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"etchbound/schemas"
)

// mark stands in a test file just before the place where a problem is expected
// and is taken out before the file is read, so that nobody counts columns.
const mark = "\u00b6"

// place takes the first mark out and gives its line and column.
func place(text string) (clean string, line, column int) {
	before, after, found := strings.Cut(text, mark)
	if !found {
		return text, 0, 0
	}
	line = 1 + strings.Count(before, "\n")
	column = 1 + utf8.RuneCountInString(before[strings.LastIndexByte(before, '\n')+1:])
	return before + after, line, column
}

func read(t testing.TB, text, schema string) (*schemas.Node, []schemas.Problem) {
	t.Helper()
	root, _, problems, err := schemas.Read("f.yaml", strings.NewReader(text), schema)
	if err != nil {
		t.Fatal(err)
	}
	return root, problems
}

const bare = "route: etchbound/1\ntitle: T\nbasis: {status: invented}\n"

const start = bare + "places: {a: {kind: bottle}, b: {kind: drum}}\n"

const steps = "steps:\n  - {do: cool, in: a, temperature: 20 degC}\n"

// step is a file whose one step has the given keys.
func step(keys string) string { return start + "steps:\n  - " + keys + "\n" }

// material is a file with one step that puts in the given materials.
func material(m string) string {
	return start + "steps:\n  - do: charge\n    in: a\n    what:\n      - " + m + "\n"
}

// with is a whole file with further keys before the steps.
func with(keys string) string {
	if strings.HasPrefix(strings.TrimPrefix(keys, mark), "places:") {
		return bare + keys + "\n" + steps
	}
	return start + keys + "\n" + steps
}

var malformed = []struct {
	name, text string
	message    string // part of what is printed
}{
	// encoding
	{"not UTF-8", with("purpose: caf" + mark + "\xe9"), "0xE9 is not UTF-8"},
	{"control character", with("purpose: a" + mark + "\x07b"), "U+0007"},
	{"NUL", with("purpose: a" + mark + "\x00b"), "U+0000"},
	{"no-break space", with("purpose:" + mark + "\u00a0text"), "U+00A0"},
	{"no-break space behind umlauts", with("purpose: \u00e4\u00f6\u00fc" + mark + "\u00a0x"), "ordinary space"},
	{"narrow no-break space in a quantity", step("{do: cool, in: a, temperature: 20" + mark + "\u202fdegC}"),
		"ordinary space"},
	{"zero-width space", with("purpose: a" + mark + "\u200bb"), "invisible"},
	{"direction of text", with("purpose: a" + mark + "\u202eb"), "direction"},
	{"lost letter", with("purpose: a" + mark + "\ufffdb"), "U+FFFD"},
	{"line separator", with("purpose: a" + mark + "\u2028b"), "U+2028"},

	// shape
	{"empty file", mark, "empty"},
	{"only comments", mark + "# nothing\n\n", "empty"},
	{"list at the top", mark + "- a\n- b\n", "list at its top"},
	{"one text", mark + "just text\n", "one text at its top"},
	{"second document", start + steps + mark + "---\ntitle: x\n", "second document"},
	{"tab in the indentation", start + "steps:\n" + mark + "\t- do: cool\n", "tab"},
	{"second colon", start + "purpose: the aim" + mark + ": a film\n" + steps, "put the text in quotes"},
	{"quote not closed", start + "purpose: " + mark + "\"open\n" + steps, "not closed"},
	{"quote not closed before others", start + "purpose: " + mark + "\"open\ndate: \"2026-11-25\"\n" + steps,
		"not closed"},
	{"decimal comma in braces", with("precursor: {phase: Ti3AlC2, mass: " + mark + "3,2 g}"), "point: 3.2 g"},
	{"decimal comma where a number is meant", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 " +
		"L}], target_ph: " + mark + "\"5,5\"}"), "5.5"},
	{"year with a unit", strings.Replace(start, "{status: invented}", "{status: invented, year: "+mark+"2017 d}", 1) +
		steps, "a year such as"},
	{"three digits behind a comma in braces", with("precursor: {phase: Ti3AlC2, mass: " + mark + "1,000 mg}"),
		"write 1000 mg, or 1.000 mg if"},
	{"decimal commas in a range in braces", with("precursor: {phase: Ti3AlC2, mass: " + mark + "3,2 (3,1 to 3,3) g}"),
		"write a decimal point: 3.2 (3.1 to 3.3) g"},
	{"decimal comma and a blank in braces", with("precursor: {phase: Ti3AlC2, mass: " + mark + "3, 2 g, purity: " +
		"96 wt%}"), "3.2 g"},
	{"decimal comma of a count", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], cycles: " +
		mark + "\"4,0\"}"), "4.0"},
	{"quote not closed in braces", strings.Replace(start, "{status: invented}",
		"{status: invented, title: "+mark+"\"Etching, year: 2017}", 1) + steps, "not closed"},
	{"quote not closed behind one of two lines", start + "purpose: 'one\n  two'\nnotes: " + mark + "\"open\ndate: " +
		"\"2026-11-25\"\n" + steps, "not closed"},
	{"second colon behind a quote of two lines", start + "purpose: \"one\n  two\"\nnotes: a" + mark + ": b: c\n" + steps,
		"second colon"},
	{"bracket not closed", step(mark + "{do: cool, in: a, temperature: 20 degC"), "bracket"},
	{"line without a colon", start + "purpose: x\n" + mark + "precursor\n" + steps, "colon"},
	{"at sign", start + "purpose: " + mark + "@home\n" + steps, "cannot begin a value"},
	{"wrong kind of file", mark + "site: etchbound/1\ntitle: x\n", "this is a site file"},

	// what YAML allows and no file needs
	{"anchor", with("purpose: " + mark + "&p text"), "anchor (&p)"},
	{"alias", with("precursor: {phase: &p Ti3AlC2, mass: 1 g}\nnotes: " + mark + "*p"), "alias (*p)"},
	{"alias without an anchor", with("purpose: " + mark + "*nobody"), "quotes"},
	{"alias of itself", with("places: " + mark + "&a [*a]"), "anchor"},
	{"merge key", with("places:\n  a:\n    " + mark + "<<: {kind: tube}"), "merge"},
	{"tag", with("purpose: " + mark + "!!binary aGk="), "tag"},
	{"own tag", with("purpose: " + mark + "!foo bar"), "tag (!foo)"},
	{"number as a key", with("places:\n  " + mark + "1: {kind: tube}"), "the key 1 is no text"},
	{"truth as a key", with("places:\n  " + mark + "true: {kind: tube}"), "the key true is no text"},
	{"list as a key", with("places:\n  " + mark + "[a, b]: {kind: tube}"), "in the place of a key"},
	{"key twice", with("purpose: a\n" + mark + "purpose: b"), "first in line 5, column 1"},
	{"nothing after a key", with(mark + "purpose:"), "nothing is written"},
	{"tilde", with("purpose: " + mark + "~"), "stands for nothing"},
	{"null", with("purpose: " + mark + "null"), "stands for nothing"},
	{"nothing after a key that has to be there", with("precursor:\n  phase: Ti3AlC2\n  " + mark + "mass:"),
		"has to be there: write your own value and its unit: g, mg, kg"},
	{"nan for a key that may be left out", with("precursor: {phase: Ti3AlC2, mass: 1 g, particle_size: " + mark +
		"nan um}"), "leave the key out"},
	{"empty item", with("precursor: {phase: Ti3AlC2, mass: 1 g, layers: [Al, " + mark + "~]}"), "stands for nothing"},

	// numbers
	{"octal", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], cycles: " + mark + "010}"),
		"write 10"},
	{"leading zero that is no octal", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], " +
		"cycles: " + mark + "08}"), "leading zeros"},
	{"hexadecimal", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], target_ph: " + mark +
		"0x6}"), "hexadecimal"},
	{"underscore", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], cycles: " + mark + "1_0}"),
		"underscore"},
	{"not a number", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], target_ph: " + mark +
		".nan}"), "not a finite number"},
	{"infinite", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], target_ph: " + mark +
		"-.inf}"), "not a finite number"},
	{"overflow", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], target_ph: " + mark +
		"1e400}"), "too large"},
	{"underflow", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], target_ph: " + mark +
		"1e-400}"), "too small"},
	{"half a cycle", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], cycles: " + mark +
		"4.5}"), "whole number"},
	{"no cycle", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], cycles: " + mark + "0}"),
		"the least is 1"},
	{"pH of 15", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], target_ph: " + mark + "15}"),
		"the most is 14"},
	{"number in quotes", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], cycles: " + mark +
		"\"7\"}"), "without quotes"},

	// quantities
	{"bare number", material("{substance: water, volume: " + mark + "40}"), "write the unit that is meant: mL, L, uL, m3"},
	{"unit of something else", material("{substance: water, volume: 40 " + mark + "g}"), "unit of a mass"},
	{"unit of another key", material("{substance: HCl, strength: 9 mol/L, volume: 40 " + mark + "g}"),
		"write mass: 40 g, or give a volume and its unit: mL, L"},
	{"unit without a number", with("precursor: {phase: Ti3AlC2, mass: " + mark + "g}"), "write your own number before it"},
	{"unit nobody knows", material("{substance: water, volume: 40 " + mark + "mLs}"), "did you mean mL"},
	{"unit behind a micro sign", material("{substance: \"\u00b5-water\", volume: 40 " + mark + "\u00b5LL}"),
		"did you mean uL"},
	{"decimal comma", material("{substance: water, volume: \"" + mark + "1,5 mL\"}"), "1.5 mL"},
	{"negative amount", material("{substance: water, volume: " + mark + "-40 mL}"), "less than nothing"},
	{"percent of what", with("precursor: {phase: Ti3AlC2, mass: 1 g, purity: 98 " + mark + "%}"),
		"a share by mass is written in wt%"},
	{"more than all", with("precursor: {phase: Ti3AlC2, mass: 1 g, purity: " + mark + "101 wt%}"), "100 wt%"},
	{"a truth where a mass is meant", with("precursor: {phase: Ti3AlC2, mass: " + mark + "true}"), "a mass is meant"},
	{"a list where a mass is meant", with("precursor: {phase: Ti3AlC2, mass: " + mark + "[1 g]}"), "mass is a list"},
	{"range that misses its value", with("precursor: {phase: Ti3AlC2, mass: " + mark + "10 (11 to 12) g}"), "range"},

	// words
	{"no where text is meant", with("purpose: " + mark + "no"), "\"no\""},
	{"on where text is meant", with("purpose: " + mark + "on"), "in quotes"},
	{"number where text is meant", with("purpose: " + mark + "2024"), "\"2024\""},
	{"truth where text is meant", with("purpose: " + mark + "true"), "\"true\""},
	{"yes where a truth is meant", step("{do: cool, in: a, temperature: 20 degC, stirred: " + mark + "yes}"),
		"write true"},
	{"True where a truth is meant", step("{do: cool, in: a, temperature: 20 degC, stirred: " + mark + "True}"),
		"write true"},
	{"none without a source", with("precursor: {phase: Ti3AlC2, mass: 1 g, impurities: " + mark + "none}"),
		"none (source)"},
	{"none with an empty source", with("precursor: {phase: Ti3AlC2, mass: 1 g, impurities: " + mark + "none ( )}"),
		"none (source)"},
	{"verb nobody knows", step("{do: " + mark + "whash, in: a}"), "did you mean wash"},
	{"another word for a verb", step("{do: " + mark + "neutralize, in: a}"), "did you mean neutralise"},
	{"closure nobody knows", with("places: {a: {kind: tube, closure: " + mark + "sealed}}"), "did you mean closed"},
	{"another format", strings.Replace(start, "etchbound/1", mark+"etchbound/2", 1) + steps, "etchbound/1"},
	{"date in words", with("date: " + mark + "25 Nov 2026"), "year-month-day"},

	// keys
	{"key misspelt", step("{do: cool, in: a, " + mark + "temprature: 20 degC, temperature: 20 degC}"),
		"did you mean temperature"},
	{"key cut short", step("{do: cool, in: a, " + mark + "temp: 20 degC, temperature: 20 degC}"),
		"did you mean temperature"},
	{"another word for a key", material("{substance: HCl, " + mark + "concentration: 9 mol/L, volume: 1 mL}"),
		"did you mean strength"},
	{"capitals in a key", with("precursor: {" + mark + "Phase: Ti3AlC2, mass: 1 g}"), "did you mean phase"},
	{"key missing", mark + strings.Replace(start, "basis: {status: invented}\n", "", 1) + steps,
		"add basis: {status: ...}"},
	{"no places", mark + bare + steps, "add places: {etch: {"},
	{"places with nothing in them", with("places: " + mark + "{}"), "places is empty"},
	{"no steps at all", mark + start, "indented, - {do: ..., in: ..., what: ["},
	{"steps are a text", start + "steps: " + mark + "stir\n", "accepted: a list"},
	{"place with a capital", with("places: {" + mark + "Etch: {kind: tube}}"), "write it as etch"},
	{"place with a name of the review", with("places: {" + mark + "waste: {kind: drum}}"), "such as waste_container"},
	{"step without its verb", step(mark + "{in: a}"), "the key do is missing"},
	{"wash without what", step(mark + "{do: wash, in: a, into: b}"), "a wash step needs the key what"},
	{"wash without into", step(mark + "{do: wash, in: a, what: [{substance: water, volume: 1 L}]}"),
		"a wash step needs the key into"},
	{"addition without its time", step(mark + "{do: add, in: a, what: precursor, temperature: 20 degC}"),
		"an add step needs the key over"},
	{"temperature of a transfer", step("{do: transfer, in: a, into: b, " + mark + "temperature: 20 degC}"),
		"temperature is for steps such as add, hold"},
	{"keys that a transfer takes", step("{do: transfer, in: a, into: b, " + mark + "temperature: 20 degC}"),
		"the keys attended, cryogen, cryogen_amount, do, gas, gas_flow, in, into, label, note, part, stirred, time"},
	{"hold with material", step("{do: hold, in: a, time: 1 h, temperature: 20 degC, " + mark + "what: precursor}"),
		"a hold step takes no what"},
	{"cycles of a hold", step("{do: hold, in: a, time: 1 h, temperature: 20 degC, " + mark + "cycles: 3}"),
		"cycles is for steps of prewash, wash, exchange"},
	{"one material without its list", step("{do: charge, in: a, what: " + mark + "{substance: water, volume: 1 L}}"),
		"brackets around the braces"},
	{"one material below what", start + "steps:\n  - do: charge\n    in: a\n    what:\n      " + mark +
		"substance: water\n      volume: 1 L\n", "write a list"},
	{"another word for the powder", step("{do: charge, in: a, what: " + mark + "MAX phase}"),
		"write precursor for the powder"},
	{"precursor with a capital", step("{do: charge, in: a, what: [" + mark + "Precursor]}"), "small letters: precursor"},
	{"impurities as a text", with("precursor: {phase: Ti3AlC2, mass: 1 g, impurities: " + mark + "3 % TiC}"),
		"list them, each {formula: ..., share: ...}"},
	{"impurity without its share", with("precursor: {phase: Ti3AlC2, mass: 1 g, impurities: [" + mark + "TiC]}"),
		"written as {formula: ..., share: ...}"},
	{"impurity as a key", with("precursor: {phase: Ti3AlC2, mass: 1 g, impurities: [{" + mark + "NbC: 5 wt%}]}"),
		"write {formula: ..., share: ...}"},
	{"precursor with a mass", material("{" + mark + "precursor, mass: 1 g}"), "the word precursor, or a map"},
	{"key of a place in a step", step("{do: cool, in: a, temperature: 20 degC, " + mark + "cooling: {kind: jacket}}"),
		"cooling is a key of a place"},
	{"key of the file in a step", step("{do: cool, in: a, temperature: 20 degC, " + mark + "family: hf}"),
		"family is a key of the file itself"},
	{"key that nothing takes", step("{do: cool, in: a, temperature: 20 degC, " + mark + "rpm: 300}"), "belongs in note"},
	{"duration of an addition", step("{do: add, in: a, what: precursor, temperature: 20 degC, " + mark +
		"duration: 10 min}"), "did you mean over"},
	{"duration of a hold", step("{do: hold, in: a, temperature: 20 degC, " + mark + "duration: 10 min}"),
		"did you mean time"},
	{"into of a charge", step("{do: charge, in: a, what: [{substance: water, volume: 1 L}], " + mark + "into: b}"),
		"into is for steps of quench, sample, transfer"},
	{"two words for a kind", with("places: {a: {kind: " + mark + "centrifuge tube}}"), "did you mean tube"},
	{"one word for cooling", with("places: {a: {kind: tube, cooling: " + mark + "ice bath}}"), "write {kind: ice_bath}"},
	{"words for a number", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], cycles: " + mark +
		"until neutral}"), "belongs in note"},
	{"more than a number", step("do: wash\n    in: a\n    into: b\n    what: [{substance: water, volume: 1 L}]\n   " +
		" target_ph: " + mark + ">6"), "write a number alone"},
	{"more than a length", start + "precursor:\n  phase: Ti3AlC2\n  mass: 1 g\n  particle_size: " + mark + ">38 um\n" +
		steps, "write a number alone"},
	{"range where one number is meant", step("{do: wash, in: a, into: b, what: [{substance: water, volume: 1 L}], " +
		"target_ph: " + mark + "7 - 9}"), "without a range"},
	{"share of one", with("precursor: {phase: Ti3AlC2, mass: 1 g, purity: " + mark + "0.96}"),
		"a share of one is written in percent"},
	{"stop of a hold", step("{do: hold, in: a, time: 1 h, temperature: 20 degC, " + mark + "not_above: 30 degC}"),
		"not_above is for steps of charge, mix, dilute, add, quench, neutralise"},
	{"stop under another name", step("{do: add, in: a, what: precursor, over: 1 h, temperature: 20 degC, " + mark +
		"stop_above: 30 degC}"), "did you mean not_above?"},
	{"stop by a difference", step("{do: add, in: a, what: precursor, over: 1 h, temperature: 20 degC, not_above: " +
		mark + "30}"), "write the unit that is meant: degC, K"},
	{"wall under another name", with("places: {a: {kind: tube, " + mark + "wall_thickness: 2 mm}}"), "did you mean wall?"},
	{"wall as a volume", with("places: {a: {kind: tube, wall: 2 " + mark + "mL}}"), "or give a length"},
	{"vent line under another name", with("places: {a: {kind: tube, " + mark + "vent_length: 1 m}}"),
		"did you mean vent_line?"},
	{"bubbler under another name", with("places: {a: {kind: tube, " + mark + "dip_depth: 20 mm}}"),
		"did you mean bubbler?"},
	{"bath under another name", with("places: {a: {kind: tube, cooling: {kind: ice_bath, " + mark +
		"bath_volume: 2 L}}}"), "did you mean bath?"},
	{"bath by its mass", with("places: {a: {kind: tube, cooling: {kind: ice_bath, bath: 2 " + mark + "kg}}}"),
		"write ice: 2 kg"},
	{"law under another name", with("measured: {" + mark + "rate_law: first_order}"), "did you mean kinetics?"},
	{"law by another word", with("measured: {kinetics: " + mark + "sigmoidal}"), "did you mean self_accelerating?"},
	{"law with a blank", with("measured: {kinetics: " + mark + "first order}"), "did you mean first_order?"},
	{"decomposition as a time", with("measured: {td24: 24 " + mark + "h}"), "a temperature"},
	{"decomposition under another name", with("measured: {" + mark + "tmr24: 85 degC}"), "did you mean td24?"},
	{"curve without its temperature", with("measured: {curve: " + mark + "{points: [{time: 2 h, conversion: 12 %}, " +
		"{time: 24 h, conversion: 97 %}]}}"), "the key temperature is missing"},
	{"curve of one point", with("measured: {curve: {temperature: 35 degC, points: " + mark +
		"[{time: 24 h, conversion: 97 %}]}}"), "belongs in conversion"},
	{"curve as a list", with("measured: {curve: " + mark + "[{time: 2 h, conversion: 12 %}, {time: 24 h, " +
		"conversion: 97 %}]}"), "the keys points, temperature"},
	{"point without its time", with("measured: {curve: {temperature: 35 degC, points: [" + mark +
		"{conversion: 12 %}, {time: 24 h, conversion: 97 %}]}}"), "the key time is missing"},
	{"point as a pair", with("measured: {curve: {temperature: 35 degC, points: [" + mark + "[2 h, 12 %], {time: 24 " +
		"h, conversion: 97 %}]}}"), "{conversion: ..., time: ...}"},
	{"yes where true is meant", step("{do: hold, in: a, time: 1 h, temperature: 20 degC, stirred: " + mark + "\"yes\"}"),
		"write true"},
	{"no steps", start + "steps: " + mark + "[]\n", "steps is empty"},
	{"element twice", with("precursor: {phase: Ti3AlC2, mass: 1 g, layers: " + mark + "[Al, Al]}"), "twice"},
}

func TestMalformed(t *testing.T) {
	for _, tt := range malformed {
		t.Run(tt.name, func(t *testing.T) {
			text, line, column := place(tt.text)
			_, problems := read(t, text, "route")
			if !schemas.Refused(problems) {
				t.Fatalf("accepted:\n%s\n%v", text, problems)
			}
			for _, p := range problems {
				if p.Accepted == "" && p.Hint == "" {
					t.Errorf("neither what is accepted nor what to try: %v", p)
				}
				if strings.Contains(p.Accepted, "**") {
					t.Errorf("stars of a page in a message: %v", p)
				}
				if p.Line == line && p.Column == column && strings.Contains(p.String(), tt.message) {
					return
				}
			}
			t.Errorf("want %d:%d %q, got\n%v", line, column, tt.message, problems)
		})
	}
}

// A map that needs no key is not shown as one with nothing in it.
func TestNobodyIsToldToWriteNothing(t *testing.T) {
	text, line, column := place(with("measured: {" + mark + "zzz: 3 mL}"))
	_, problems := read(t, text, "route")
	if len(problems) != 1 || problems[0].Line != line || problems[0].Column != column ||
		strings.Contains(problems[0].Hint, "{}") || !strings.Contains(problems[0].Accepted, "etch_heat") {
		t.Errorf("%v", problems)
	}
}

// One fault is told once: nothing else is said of the same file.
func TestNoFollowingFaults(t *testing.T) {
	for _, tt := range malformed {
		text, _, _ := place(tt.text)
		if _, problems := read(t, text, "route"); len(problems) > 1 && !strings.Contains(text, "&") &&
			!strings.Contains(text, "in: a}") {
			t.Errorf("%s: %d problems\n%v", tt.name, len(problems), problems)
		}
	}
}

// A key that has to be there is not to be left out.
func TestNoLeavingOutOfRequiredKeys(t *testing.T) {
	for _, text := range []string{with("precursor: {phase: Ti3AlC2, mass: nan g}"),
		with("precursor: {phase: Ti3AlC2, mass: }"),
		step("{do: hold, in: a, temperature: 20 degC, time: inf h}")} {
		_, problems := read(t, text, "route")
		if len(problems) != 1 || strings.Contains(problems[0].Hint, "leave the key out") {
			t.Errorf("%s: %v", text, problems)
		}
	}
}

func TestAllFaultsAtOnceByPosition(t *testing.T) {
	text := "route: etchbound/1\ntitle: 7\nbasis: {status: guessed}\nplaces: {a: {kind: bottle}}\nsteps:\n" +
		"  - {do: hold, in: a, time: 3, temperature: 20 degF}\n  - {do: fly, in: a}\n"
	_, problems := read(t, text, "route")
	var got []string
	for _, p := range problems {
		got = append(got, fmt.Sprintf("%d:%d", p.Line, p.Column))
	}
	if want := "2:8 3:17 6:29 6:48 7:10"; strings.Join(got, " ") != want {
		t.Errorf("problems at %v, want %s\n%v", got, want, problems)
	}
}

func TestPrintedProblem(t *testing.T) {
	text := start + "precursor: {phase: \"\u6c34e\u0301\u00b5\", mass: 1 gramm}\n" + steps
	_, problems := read(t, text, "route")
	// On a screen the first letter takes two columns and the accent none, so the
	// caret stands under the unit, which is the 36th character.
	want := "f.yaml:5:36: \"gramm\" is not a unit known here\n" +
		"    5 | precursor: {phase: \"\u6c34e\u0301\u00b5\", mass: 1 gramm}\n" +
		"      | " + strings.Repeat(" ", 35) + "^\n" +
		"  accepted: a mass with its unit (g, mg, kg, ug, t)\n" +
		"  hint: did you mean g?"
	if len(problems) != 1 || problems[0].String() != want {
		t.Errorf("got\n%v\nwant\n%s", problems[0], want)
	}
}

func TestCutByAComment(t *testing.T) {
	text, line, column := place(with("precursor: {phase: Ti3AlC2, mass: 1 g, impurities: [{formula: TiC, share: 1 " +
		"wt%}]}\nnotes: " + mark + "powder TiC #2"))
	root, problems := read(t, text, "route")
	if len(problems) != 1 || problems[0].Severity != schemas.Notice || problems[0].Line != line ||
		problems[0].Column != column {
		t.Fatalf("want one notice at %d:%d, got %v", line, column, problems)
	}
	if root.Str("notes") != "powder TiC" {
		t.Errorf("notes are %q", root.Str("notes"))
	}
	if _, problems := read(t, with("notes: powder # a remark\npurpose: \"TiC #2\""), "route"); len(problems) != 0 {
		t.Errorf("an ordinary comment gave %v", problems)
	}
}

func TestAccepted(t *testing.T) {
	good := start + "date: 2026-11-25\n" + steps
	crlf := strings.ReplaceAll(good, "\n", "\r\n")
	for name, text := range map[string]string{
		"plain": good, "byte order mark": "\ufeff" + good, "CR LF": crlf, "lone CR": strings.ReplaceAll(good, "\n", "\r"),
		"no last newline":           strings.TrimSuffix(good, "\n"),
		"no-break space in comment": "# a\u00a0b\n" + good,
		"document mark":             "---\n" + good,
		"Unicode minus":             strings.Replace(good, "20 degC", "\u221220 degC", 1),
		"quoted words":              strings.Replace(good, "title: T", "title: \"no\"", 1),
	} {
		if _, problems := read(t, text, "route"); len(problems) != 0 {
			t.Errorf("%s: %v", name, problems)
		}
	}
}

func TestPositionsWithByteOrderMarkAndCRLF(t *testing.T) {
	text := "\ufeffroute: etchbound/9\r\ntitle: T\r\nbasis: {status: invented}\r\nplaces: {a: {kind: bottle}}\r\n" +
		"steps:\r\n  - {do: cool, in: a, temperature: 20 C}\r\n"
	_, problems := read(t, text, "route")
	if len(problems) != 2 || problems[0].Column != 8 || problems[1].Line != 6 || problems[1].Column != 39 ||
		strings.Contains(problems[1].Text, "\r") {
		t.Errorf("%q", problems)
	}
}

func TestUTF16(t *testing.T) {
	for _, text := range []string{"\xff\xfer\x00o\x00", "\xfe\xff\x00r\x00o", "r\x00o\x00u\x00t\x00e\x00"} {
		_, problems := read(t, text, "route")
		if !schemas.Refused(problems) || problems[0].Line != 1 {
			t.Errorf("%q: %v", text, problems)
		}
	}
}

// The bounds hold, and a file that breaks one is refused quickly.
func TestBounds(t *testing.T) {
	var keys strings.Builder
	for i := range 1001 {
		fmt.Fprintf(&keys, "k%d: 1\n", i)
	}
	tests := map[string]string{
		"larger than 1 MiB":        strings.Repeat("# padding\n", 120000),
		"more than 32 levels deep": start + "steps: " + strings.Repeat("[", 40) + strings.Repeat("]", 40) + "\n",
		"more than 20000 values":   start + "steps: [" + strings.Repeat("x,", 25000) + "x]\n",
		"more than 1000 keys":      keys.String(),
		"more than 4096 bytes":     start + "notes: " + strings.Repeat("x", 5000) + "\n" + steps,
		"at most 32 levels":        start + "notes: " + strings.Repeat("[", 20000) + "\n",
		"nested far too deeply":    start + "steps: " + strings.Repeat("[", 20000) + strings.Repeat("]", 20000) + "\n",
		"steps has more than 200": start + "steps:\n" + strings.Repeat("  - {do: cool, in: a, temperature: 20 "+
			"degC}\n", 201),
		"a key of more than 4096":    start + "? " + strings.Repeat("k", 5000) + "\n: 1\n" + steps,
		"more problems from here on": start + "steps:\n" + strings.Repeat("  - {do: x, in: 3}\n", 199),
		"title is longer than 200":   strings.Replace(start, "title: T", "title: "+strings.Repeat("T", 201), 1) + steps,
	}
	for want, text := range tests {
		_, problems := read(t, text, "route")
		if !schemas.Refused(problems) {
			t.Errorf("%s: accepted", want)
			continue
		}
		found := false
		for _, p := range problems {
			found = found || strings.Contains(p.String(), want)
			if n := len(p.String()); n > 5000 {
				t.Errorf("%s: a problem prints as %d bytes", want, n)
			}
		}
		if !found || len(problems) > 101 {
			t.Errorf("want %q, got %d problems: %v", want, len(problems), problems[0])
		}
	}
}

func TestUnknownSchema(t *testing.T) {
	if _, _, _, err := schemas.Read("f", strings.NewReader("a: b"), "soup"); err == nil {
		t.Error("a schema that does not exist was used")
	}
}

func TestBundledFilesHaveNoProblems(t *testing.T) {
	names, err := filepath.Glob("../testdata/routes/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatal("no bundled files", err)
	}
	for _, name := range names {
		kind := "route"
		for _, k := range []string{"site", "limits"} {
			if strings.HasPrefix(filepath.Base(name), k+"-") {
				kind = k
			}
		}
		raw, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, problems := read(t, string(raw), kind); len(problems) > 0 {
			t.Errorf("%s: %v", name, problems)
		}
	}
}

// Every key of every schema says what it is and shows one.
func TestSchemasAreDescribed(t *testing.T) {
	for _, name := range []string{"route", "site", "limits"} {
		raw, ok := schemas.Schema(name + ".schema.json")
		if !ok {
			t.Fatal(name)
		}
		var doc map[string]any
		if err := json.Unmarshal(raw, &doc); err != nil {
			t.Fatal(err)
		}
		described(t, name, doc, doc)
	}
}

func described(t *testing.T, at string, doc, s map[string]any) {
	if props, ok := s["properties"].(map[string]any); ok {
		if s["additionalProperties"] != false {
			t.Errorf("%s: unknown keys are not refused", at)
		}
		for key, v := range props {
			p, ok := v.(map[string]any)
			if !ok {
				continue
			}
			if p["description"] == nil || p["examples"] == nil {
				t.Errorf("%s.%s: no description or no example", at, key)
			}
			described(t, at+"."+key, doc, p)
		}
	}
	for _, key := range []string{"items", "additionalProperties"} {
		if inner, ok := s[key].(map[string]any); ok {
			described(t, at+"."+key, doc, inner)
		}
	}
	if defs, ok := s["$defs"].(map[string]any); ok {
		for key, v := range defs {
			described(t, at+"/"+key, doc, v.(map[string]any))
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, tt := range malformed {
		text, _, _ := place(tt.text)
		f.Add([]byte(text))
	}
	names, _ := filepath.Glob("../testdata/routes/*.yaml")
	for _, name := range names {
		if raw, err := os.ReadFile(name); err == nil {
			f.Add(raw)
		}
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		for _, schema := range []string{"route", "limits"} {
			root, _, problems, err := schemas.Read("f", strings.NewReader(string(raw)), schema)
			if err != nil || root == nil && !schemas.Refused(problems) {
				t.Fatalf("%q: %v, no root and no error", raw, err)
			}
			for _, p := range problems {
				if p.Line < 1 || p.Column < 1 || p.What == "" || p.Column > utf8.RuneCountInString(p.Text)+2 && p.Text != "" {
					t.Fatalf("%q: %#v", raw, p)
				}
				_ = p.String()
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	raw, err := os.ReadFile("../testdata/routes/demo-lif-hcl-2g.yaml")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		read(b, string(raw), "route")
	}
}

func BenchmarkRead200Steps(b *testing.B) {
	text := start + "steps:\n" + strings.Repeat("  - do: wash\n    in: tubes\n    into: drum\n    what:\n"+
		"      - {substance: water, volume: 80 mL}\n    cycles: 7\n    retained: 5 mL/g\n    temperature: 25 degC\n"+
		"    attended: true\n", 200)
	for b.Loop() {
		read(b, text, "route")
	}
}
