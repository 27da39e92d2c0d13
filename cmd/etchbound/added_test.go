package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"etchbound/schemas/long"
)

// addedRow is one row put at the end of a table of the program, or one line put
// before another of a file, and nothing else.
type addedRow struct{ file, row, before string }

// addedRows are a substance that is an agent too, a material, a precursor, a limit,
// a pair, a quantity nobody assesses and one that a reader makes and a limit is held
// against, a verb, and a key of a file, each as DEVELOPERS.md says how to add one.
var addedRows = []addedRow{
	{"chemicals/data/substances.csv",
		"caesium_hydroxide,caesium hydroxide,,CsOH,21351-79-1,s,-1,base,,,,,,,,,,,,memory", ""},
	{"chemicals/data/materials.csv", "testium,testium,testium,metal,91,12,,,,yes,yes,yes,,,yes,,,own,assumed", ""},
	{"chemicals/data/etching.csv", `etch_heat.Ti4AlN3,q_etch,800,700,900,kJ/mol,normal,,25 degC,own,test,assumed,`, ""},
	{"hazards/limit/limits.csv", "few_cycles,wash.cycles,,cycles a test allows,0.5,1,,A test,1,1,assumed,,,,,", ""},
	{"hazards/meeting/pairs.csv",
		`test_pair,hf,strong_base,,HF with a strong base,a row that a test added,2,none,,,a test,assumed`, ""},
	{"hazards/figure/catalogue.csv", "dust.cloud,dust,Dust cloud,g,high,worst,3,,,,,,,,,largest mass that can be " +
		"stirred up", ""},

	{"hazards/figure/catalogue.csv", "dust.settled,dust,Dust that settled,g,high,worst,3,,yes,,,,,,,mass a test says", ""},
	{"hazards/limit/limits.csv", "little_dust,dust.settled,,dust a test allows,1,g,,A test,1,1,assumed,,,,,", ""},
	{"hazards/wash/wash.go", `out = append(out, figure.Figure{ID: figure.ID{Quantity: "dust.settled"},
		Value: w.Line("m", "g", "2", 2), Conditions: phrase.As("a test says")})`, "for i := range k.Washes {"},

	{"reports/selection/questions.csv", "settled,,dust.settled,solids,Does dust settle?", ""},
	{"hazards/route/verbs.csv", "steep,fill,stays,stays,,,,yes,yes,,,,,,,,,,,,assumed,", ""},
	{"schemas/route.schema.json", `"steep", `, `"charge", "mix", "dilute", "add", "hold", "heat", "cool"`},

	{"schemas/route.schema.json", `"gasket": {"type": "string", "dimension": ["length"],
		"description": "How thick its gasket is.", "examples": ["2 mm"]},`, `"stirrer_heat": {"type"`},
	{"hazards/route/types.go", "Gasket quantity.Value", "KeepStated    bool"},
	{"hazards/route/load_place.go", `Gasket: n.Value("gasket"),`, `LidMaterial: n.Str("lid_material"),`},
	{"hazards/route/keys_place.go", `field.Of("gasket", func(p *Place) *quantity.Value { return &p.Gasket }),`,
		`field.Custom(field.Flag, "keep", keepOf)`},
	{"scaling/keys.csv", "route,places.*.gasket,vessel,batch,,,,", ""},
	{"scaling/keeping/conditions.csv", "cellar,store,temperature,12 degC,", ""},
}

// put is the text of a file with the row in it.
func (r *addedRow) put(t *testing.T, text string) string {
	t.Helper()
	if r.before == "" {
		return text + r.row + "\n"
	}
	at := strings.Index(text, r.before)
	if at < 0 {
		t.Fatalf("%s: nowhere %s", r.file, r.before)
	}
	return text[:at] + r.row + "\n" + text[at:]
}

// builtWith builds the program with rows added to its tables, in place of the
// files and without touching them.
func builtWith(t *testing.T, rows []addedRow) string {
	t.Helper()
	top, err := filepath.Abs(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	texts := map[string]string{}
	for i := range rows {
		name := filepath.Join(top, filepath.FromSlash(rows[i].file))
		if texts[name] == "" {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			texts[name] = string(text)
		}
		texts[name] = rows[i].put(t, texts[name])
	}
	instead := map[string]string{}
	for name, text := range texts {
		instead[name] = put(t, dir, string('a'+rune(len(instead)))+filepath.Ext(name), text)
	}
	list, err := json.Marshal(map[string]any{"Replace": instead})
	if err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(dir, "etchbound")
	build := exec.Command("go", "build", "-overlay", put(t, dir, "overlay.json", string(list)), "-o", name, ".")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return name
}

const addedRoute = `route: etchbound/1
title: What was added
basis: {status: invented}
precursor: {phase: Ti4AlN3, mass: 1 g}
places:
  pot: {kind: beaker, material: testium, gasket: 2 mm, capacity: 250 mL, closure: open}
  bin: {kind: bottle, material: HDPE, capacity: 2 L, closure: vented}
steps:
  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 mL}], temperature: 20 degC}
  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 20 degC}
  - {do: steep, in: pot, time: 2 h, temperature: 20 degC}
  - {do: wash, in: pot, into: bin, what: [{substance: water, volume: 40 mL}], cycles: 4, target_ph: 6}
  - {do: neutralise, in: bin, what: [{substance: caesium hydroxide, mass: 40 g}]}
`

// A row is all that a substance, an agent, a material, a precursor, a limit, a pair
// or a quantity takes, or a question of page 1; a verb its word beside it, a key of a file its line in five
// places.
func TestAddedRowsWork(t *testing.T) {
	long.Only(t)
	program := builtWith(t, addedRows)
	name := put(t, t.TempDir(), "added.yaml", addedRoute)
	out, err := exec.Command(program, "review", name, "--format", "json").Output()
	if err != nil {
		t.Fatal(err, string(err.(*exec.ExitError).Stderr))
	}
	var r struct {
		Figures []struct {
			ID    string
			Value *float64
		}
		Findings    []struct{ ID string }
		NotAssessed []string `json:"not_assessed"`
	}
	if err := json.Unmarshal(out, &r); err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	for _, f := range r.Figures {
		known[f.ID] = f.Value != nil
		if f.ID == "heat.technical_limit@2" && (f.Value == nil || *f.Value != 91) {
			t.Error("a material: its service temperature is not the technical limit")
		}
	}
	for what, id := range map[string]string{"a substance and agent": "neutralise.mass@5/caesium_hydroxide",
		"a precursor": "heat.etch.total", "a verb": "heat.adiabatic_rise@3", "a reader": "dust.settled"} {
		if !known[id] {
			t.Errorf("%s: %s is not known", what, id)
		}
	}
	for _, end := range []string{"+few_cycles", "dust.settled+little_dust"} {
		if !slices.ContainsFunc(r.Findings, func(f struct{ ID string }) bool { return strings.HasSuffix(f.ID, end) }) {
			t.Errorf("a limit: no finding ends in %s", end)
		}
	}
	if !slices.Contains(r.NotAssessed, "dust.cloud") {
		t.Error("a quantity: it is not listed as not assessed")
	}
	page, err := exec.Command(program, "review", name).Output()
	if err != nil || !strings.Contains(string(page), "a row that a test added") {
		t.Errorf("a pair: the review does not say it (%v)", err)
	}
	if !regexp.MustCompile(`Does dust settle\? *\| 2\b.*exceeds`).Match(page) {
		t.Error("a question: page 1 does not answer it")
	}
	addedKey(t, program, name)
	kept, err := exec.Command(program, "keep", filepath.Join("..", "..", "testdata", "routes",
		"demo-lif-hcl-2g.yaml")).Output()
	if err != nil || !regexp.MustCompile(`\| cellar *\| \d.*\d kPa`).Match(kept) {
		t.Errorf("a condition: keep does not tell of it (%v)", err)
	}
}

// addedKey looks at a key that was added: another value is a change, and grows into
// the vessel of the rules; a value of another kind is refused.
func addedKey(t *testing.T, program, name string) {
	t.Helper()
	other := func(value string) string {
		return put(t, t.TempDir(), "other.yaml", strings.Replace(addedRoute, "gasket: 2 mm", "gasket: "+value, 1))
	}
	out, _ := exec.Command(program, "change", name, other("3 mm"), "--format", "json").CombinedOutput()
	if !strings.Contains(string(out), "gasket") {
		t.Errorf("a key: a change of it is not listed: %s", out)
	}
	if out, err := exec.Command(program, "check", other("3 kg")).CombinedOutput(); err == nil {
		t.Errorf("a key: a mass is taken for its length: %s", out)
	}
}
