package meeting

import (
	"strings"
	"testing"

	"etchbound/hazards/route"
)

const twoBottles = `route: etchbound/1
title: check
basis: {status: invented}
places:
  one: {kind: bottle, material: glass, capacity: 1 L, closure: vented}
  two: {kind: bottle, material: %s, capacity: 1 L, closure: closed}
steps:
  - {do: charge, in: one, what: [{substance: ethanol, volume: 10 mL}], temperature: 20 degC}
  - {do: collect, in: one, into: two}
  - {do: charge, in: two, what: [{substance: %s, strength: 20 wt%%, volume: 10 mL}], temperature: 20 degC}
`

func contentsOf(t *testing.T, material, substance string) *Contents {
	t.Helper()
	text := strings.Replace(strings.ReplaceAll(strings.Replace(twoBottles, "%s", material, 1), "%%", "%"), "%s",
		substance, 1)
	r, problems, err := route.Load("r.yaml", strings.NewReader(text))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	all := Of(r)
	return &all[1]
}

// A residue that came over is enough: nitric acid meets the ethanol of a bottle in the
// step that brings the acid (public notes of waste bottles that burst, common practice).
func TestAResidueMeetsWhatComesLater(t *testing.T) {
	c := contentsOf(t, "glass", "nitric acid")
	from := map[string]int{}
	for i := range Pairs() {
		if step, met := c.Meets(&Pairs()[i]); met {
			from[Pairs()[i].ID] = step
		}
	}
	if from["nitric_organic"] != 3 || from["oxidant_organic"] != 3 {
		t.Errorf("nitric acid and ethanol meet in %v, want step 3", from)
	}
	if _, met := from["hf_glass"]; met {
		t.Error("there is no fluoride on the glass")
	}
}

// Fluoride meets the glass it stands in from the start of it (common practice).
func TestTheWallIsOneOfThePair(t *testing.T) {
	for wall, want := range map[string]bool{"glass": true, "PTFE": false, "PTFE-lined glass": false} {
		c, met := contentsOf(t, wall, "hydrofluoric acid"), false
		for i := range Pairs() {
			if p := &Pairs()[i]; p.ID == "hf_glass" {
				_, met = c.Meets(p)
			}
		}
		if met != want {
			t.Errorf("hydrofluoric acid in %s: %v", wall, met)
		}
	}
}

// Salts that are held hot lie as dry as in a melt step: water on them flashes (definition).
func TestSaltsHeldHotAreAMelt(t *testing.T) {
	for temperature, want := range map[string]bool{"550 degC": true, "60 degC": false} {
		text := "route: etchbound/1\ntitle: check\nbasis: {status: invented}\nplaces:\n" +
			"  pot: {kind: crucible, capacity: 50 mL, closure: open}\nsteps:\n" +
			"  - {do: charge, in: pot, what: [{substance: zinc chloride, mass: 4 g}], temperature: 20 degC}\n" +
			"  - {do: hold, in: pot, time: 5 h, temperature: " + temperature + "}\n" +
			"  - {do: add, in: pot, what: [{substance: water, volume: 9 mL}], over: 1 min, temperature: " + temperature + "}\n"
		r, problems, err := route.Load("r.yaml", strings.NewReader(text))
		if err != nil || len(problems) > 0 {
			t.Fatal(err, problems)
		}
		met := false
		for i := range Pairs() {
			if Pairs()[i].ID == "melt_water" {
				_, met = Of(r)[0].Meets(&Pairs()[i])
			}
		}
		if met != want {
			t.Errorf("water on salts at %s: %v", temperature, met)
		}
	}
}
