package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"etchbound/schemas/long"
)

// addedRow is one row put into a table of the program, and nothing else.
type addedRow struct{ table, row string }

// addedRows are a substance that is an agent too, a material, a precursor, a
// limit, a pair and a quantity, each as DEVELOPERS.md says how to add one.
var addedRows = []addedRow{
	{"chemicals/data/substances.csv", "caesium_hydroxide,caesium hydroxide,,CsOH,21351-79-1,s,-1,base,,,,,,,,,,,,memory"},
	{"chemicals/data/materials.csv", "testium,testium,testium,metal,91,12,,,,yes,yes,yes,,yes,,own,assumed"},
	{"chemicals/data/etching.csv", `etch_heat.Ti4AlN3,q_etch,800,700,900,kJ/mol,normal,,25 degC,own,test,assumed,`},
	{"hazards/limit/limits.csv", "few_cycles,wash.cycles,,cycles a test allows,0.5,1,,A test,1,1,assumed,"},
	{"reports/pairs.csv", `test_pair,hf,strong_base,HF with a strong base,a row that a test added,2,a test,assumed`},
	{"hazards/figure/catalogue.csv", "dust.cloud,dust,Dust cloud,g,high,worst,3,,,,,,,,largest mass that can be " +
		"stirred up"},
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
	instead := map[string]string{}
	for i, r := range rows {
		text, err := os.ReadFile(filepath.Join(top, filepath.FromSlash(r.table)))
		if err != nil {
			t.Fatal(err)
		}
		instead[filepath.Join(top, filepath.FromSlash(r.table))] = put(t, dir, string('a'+rune(i))+".csv",
			string(text)+r.row+"\n")
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
  pot: {kind: beaker, material: testium, capacity: 250 mL, closure: open}
  bin: {kind: bottle, material: HDPE, capacity: 2 L, closure: vented}
steps:
  - {do: charge, in: pot, what: [{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 mL}], temperature: 20 degC}
  - {do: add, in: pot, what: [precursor], over: 10 min, temperature: 20 degC}
  - {do: wash, in: pot, into: bin, what: [{substance: water, volume: 40 mL}], cycles: 4, target_ph: 6}
  - {do: neutralise, in: bin, what: [{substance: caesium hydroxide, mass: 40 g}]}
`

// A row is all that a substance, an agent, a material, a precursor, a limit, a
// pair or a quantity takes.
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
	for what, id := range map[string]string{"a substance and agent": "neutralise.mass@4/caesium_hydroxide",
		"a precursor": "heat.etch.total"} {
		if !known[id] {
			t.Errorf("%s: %s is not known", what, id)
		}
	}
	if !slices.ContainsFunc(r.Findings, func(f struct{ ID string }) bool {
		return strings.HasSuffix(f.ID,
			"+few_cycles")
	}) {
		t.Error("a limit: no finding is held against it")
	}
	if !slices.Contains(r.NotAssessed, "dust.cloud") {
		t.Error("a quantity: it is not listed as not assessed")
	}
	page, err := exec.Command(program, "review", name).Output()
	if err != nil || !strings.Contains(string(page), "a row that a test added") {
		t.Errorf("a pair: the review does not say it (%v)", err)
	}
}
