package hazards_test

import (
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"etchbound/chemicals"
	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/schemas/long"
)

// What is not known to stand acid fluoride is a hold point and stands among what is
// not known, whatever it is called and where it is not stated at all. A wall that is
// known to stand it is neither.
func TestAMaterialThatNobodyKnowsIsNotSilent(t *testing.T) {
	long.Only(t)
	for _, x := range []struct {
		material, hold string
		open           bool
	}{
		{"material: PTFE, lid_material: PTFE", "", false},
		{"material: fused silica, lid_material: PTFE", "attacked", false},
		{"material: Brandname, lid_material: PTFE", "material_unknown", true},
		{"lid_material: PTFE", "material_unknown", true},
	} {
		rv := review(t, strings.Replace(inIce("1 g", "20 mL", "2 W/K"), "material: PTFE", x.material, 1))
		for _, id := range []string{"attacked", "material_unknown"} {
			if there := slices.ContainsFunc(rv.Holds, func(h hazards.Hold) bool { return h.ID == id }); there != (id == x.hold) {
				t.Errorf("%s: hold point %s is there: %v", x.material, id, there)
			}
		}
		open := slices.ContainsFunc(rv.Unknown,
			func(u hazards.UnknownItem) bool { return u.Missing == working.Lacks("wall_open", "pot") })
		if open != x.open {
			t.Errorf("%s: among what is not known: %v", x.material, open)
		}
	}
}

// copied is a copy of the embedded data with a row more in a table.
func copied(t *testing.T, table, row string) *chemicals.Store {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(chemicals.Files(), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(chemicals.Files(), name)
		if name == table {
			text = append(text, row+"\n"...)
		}
		files[name] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	out, err := chemicals.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// A material is one row: its words are read, what it stands is judged, its wall
// conducts heat and its temperature limits the liquor, with nothing else changed.
func TestAMaterialIsOneRow(t *testing.T) {
	long.Only(t)
	const row = "testium,testium,testium|test metal,metal,55,30,20,40,yes,no,,,,,,,,own,memory"
	yaml := strings.Replace(strings.Replace(inIce("1 g", "20 mL", "2 W/K"), ", ua: 2 W/K", "", 1), "material: PTFE",
		"material: test metal, lid_material: PTFE, capacity: 1 L", 1)
	c := newCase(t, load(t, yaml))
	held := func(rv *hazards.Review, id string) bool {
		return slices.ContainsFunc(rv.Holds, func(h hazards.Hold) bool { return h.ID == id })
	}
	before := must(t, c)
	c.Store = copied(t, "data/materials.csv", row)
	after := must(t, c)
	if !held(&before, "material_unknown") || held(&before, "attacked") || !held(&after, "attacked") || held(&after,
		"material_unknown") {
		t.Errorf("before: %v\nafter: %v", before.Holds, after.Holds)
	}
	if f := figureOf(&after, "heat.technical_limit@2"); f == nil || f.Value.V != 55 {
		t.Errorf("technical limit: %+v", f)
	}
	need := "heat.addition_time.required@2"
	if a, b := figureOf(&before, need).Value.V, figureOf(&after, need).Value.V; !(b < a/2) {
		t.Errorf("%s: %g min through a wall nobody knows, %g through 3 mm of metal", need, a, b)
	}
}

// lidded is a route of which every place that is not open has a lid of a material,
// or one that nobody stated.
func lidded(r *route.Route, material string) *route.Route {
	out := *r
	out.Places = slices.Clone(r.Places)
	for i := range out.Places {
		if p := &out.Places[i]; p.Closure != route.Open {
			p.LidMaterial = material
		}
	}
	return &out
}

// A lid of which nobody says what it is made of counts as the weakest: leaving it out
// makes no verdict better than any material that is held.
func TestALidThatIsNotStatedNeverHelps(t *testing.T) {
	long.Only(t)
	type pair struct{ name, lid string }
	routes := bundled(t)
	var pairs []pair
	for i, name := range sorted(routes) { // each material in a twelfth of them
		for j, m := range newCase(t, routes[name]).Store.Materials().Rows() {
			if (i+j)%12 == 0 {
				pairs = append(pairs, pair{name, m.Name})
			}
		}
	}
	bare := map[string]*hazards.Review{}
	for _, x := range pairs {
		if bare[x.name] == nil {
			c := newCase(t, lidded(routes[x.name], ""))
			c.Brief = true
			rv := must(t, c)
			bare[x.name] = &rv
		}
		c := newCase(t, lidded(routes[x.name], x.lid))
		c.Brief = true
		full := must(t, c)
		notBetter(t, &full, bare[x.name], x.name+" without its lid of "+x.lid)
	}
}
