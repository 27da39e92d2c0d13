package process_test

import (
	"fmt"
	"strings"
	"testing"

	"etchbound/hazards/process"
	"etchbound/hazards/route"
)

// walked is the walk of an etch in a pot, with a drum for its waste. Both are as the
// test writes them.
func walked(t *testing.T, pot, drum, liquor string) process.Walk {
	t.Helper()
	yaml := fmt.Sprintf("route: etchbound/1\ntitle: check\nbasis: {status: invented}\n"+
		"places:\n  pot: {kind: bottle, %s}\n  drum: {kind: drum, %s}\nsteps:\n"+
		"  - {do: charge, in: pot, what: [%s], temperature: 25 degC}\n  - {do: collect, in: pot, into: drum}\n", pot, drum,
		liquor)
	r, problems, err := route.Load("check.yaml", strings.NewReader(yaml))
	if err != nil || r == nil {
		t.Fatalf("%v %v\n%s", err, problems, yaml)
	}
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	k, err := process.Go(c, nil)
	if err != nil {
		t.Fatal(err)
	}
	return k
}

const (
	hf10  = "{substance: hydrofluoric acid, strength: 10 wt%, volume: 20 mL}"
	fits  = "closure: vented, capacity: 1 L, material: HDPE, lid_material: HDPE"
	naoh  = "{substance: sodium hydroxide, strength: 10 wt%, volume: 20 mL}"
	dmso  = "{substance: DMSO, volume: 20 mL}"
	water = "{substance: water, volume: 20 mL}"
)

// What is said of a pot and its lid in a liquor.
func TestWhatMeetsTheLiquor(t *testing.T) {
	for _, c := range []struct{ pot, liquor, want string }{
		{fits, hf10, ""},
		{"material: HDPE, closure: open", hf10, ""}, // it has no lid
		{"material: borosilicate glass, closure: open", hf10, "attacked"},
		{"material: fused silica, closure: open", hf10, "attacked"},
		{"material: Brandname glass, closure: open", hf10, "attacked material_unknown"},
		{"material: Brandname, closure: open", hf10, "material_unknown"},
		{"material: tantalum, closure: open", hf10, "attacked"},
		{"material: brass, closure: open", hf10, "attacked"},
		{"material: nylon, closure: open", hf10, "attacked"},
		{"material: unobtainium, closure: open", hf10, "material_unknown"},
		{"closure: open", hf10, "material_unknown"},
		{"material: enamelled steel, closure: open", hf10, "attacked"},
		{"material: PTFE-lined steel, closure: open", hf10, ""},
		{"material: polymer-lined steel, closure: open", hf10, "material_unknown"},
		{"material: HDPE, closure: vented", hf10, "lid_unknown"},
		{"material: unobtainium, closure: vented", hf10, "material_unknown lid_unknown"}, // both in one step
		{"material: HDPE, closure: vented, lid_material: glass", hf10, "attacked"},
		{"material: HDPE, closure: vented, lid_material: unobtainium", hf10, "material_unknown"},
		{"material: glass, closure: open", water, ""},
		{"closure: open", water, ""},
		{"material: aluminium, closure: open", naoh, "attacked"},
		{"material: polycarbonate, closure: open", naoh, "attacked"},
		{"material: PVDF, closure: open", dmso, "attacked"},
		{"material: unobtainium, closure: open", naoh, "material_unknown"},
		{"material: PP, closure: open", naoh, ""},
	} {
		k := walked(t, c.pot, fits, c.liquor)
		got := ""
		for _, f := range k.Facts {
			if f.ID == "attacked" || f.ID == "material_unknown" || f.ID == "lid_unknown" {
				got = strings.TrimSpace(got + " " + string(f.ID))
				if says := fmt.Sprint(f.Says); !strings.Contains(says, "pot") || strings.Contains(says, "drum") {
					t.Errorf("%s: %s", c.pot, says)
				}
			}
		}
		if got != c.want {
			t.Errorf("%s in %s: %q, want %q", c.pot, c.liquor, got, c.want)
		}
	}
}

// Two places that do not stand it in one step are both named.
func TestBothPlacesAreNamed(t *testing.T) {
	k := walked(t, "material: glass, closure: open", "material: brass, closure: open", hf10)
	n := 0
	for _, f := range k.Facts {
		if f.ID == "attacked" {
			n++
		}
	}
	if n != 2 {
		t.Errorf("%d of 2 named", n)
	}
	if len(k.Contacts) != 4 { // two media in two open places
		t.Errorf("%+v", k.Contacts)
	}
}

// One matter is said once, with all places of it.
func TestWhatIsNotStatedIsSaidOnce(t *testing.T) {
	k := walked(t, "closure: open", "closure: open", hf10)
	var said []string
	for _, f := range k.Facts {
		if f.ID == "material_unknown" {
			said = append(said, fmt.Sprint(f.Says))
		}
	}
	if len(said) != 1 || !strings.Contains(said[0], "pot, drum") || !strings.Contains(said[0], "acid fluoride") {
		t.Errorf("%q", said)
	}
}
