package schemas

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"
)

// faulty holds one instance for each keyword that the schemas use.
var faulty = []string{
	"route: etchbound/1\ntitle: T\nbasis: {status: read}\nplaces: {a: {kind: cell}}\nsteps: [{do: cool, in: a, " +
		"temperature: 1 K}]\n",
	"route: etchbound/2\ntitle: ''\nbasis: {status: guessed, more: 1}\nsteps: []\ndate: today\n",
	"route: etchbound/1\ntitle: T\nplaces: {A: {kind: tube}, waste: {kind: pot, count: 0}, b: {}}\nsteps: 7\n",
	"route: etchbound/1\ntitle: T\nprecursor: {phase: Ti3AlC2, layers: [Al, Al], impurities: none}\nmeasured: " +
		"{}\nsteps: [{}]\n",
	"route: etchbound/1\nsteps:\n  - {do: wash, in: a}\n  - {do: hold, in: a, what: precursor, cycles: 4.5, water: " +
		"open_air}\n  - {do: add, in: a, what: [7, powder, {volume: 1 L}]}\n  - {do: sample, in: a, temperature: 1 K, " +
		"retained: 1 mL, target_ph: 15, over: 1 h, current: 1 A}\n",
}

// The schema as published, read as draft 2020-12, refuses what the loader's
// lean copy refuses, and for the same keywords.
func TestPublishedSchemaSaysTheSame(t *testing.T) {
	for _, name := range schemaNames {
		d, err := document(name)
		if err != nil {
			t.Fatal(err)
		}
		published, err := compileAs(jsonschema.Draft2020, name, d.root)
		if err != nil {
			t.Fatal(err)
		}
		lean, err := d.compiled()
		if err != nil {
			t.Fatal(err)
		}
		for i, text := range faulty {
			tree := &tree{file: &File{Name: "f", lines: splitLines(text)}}
			root := tree.read(text)
			want, got := refusals(t, published, root), refusals(t, lean, root)
			if !slices.Equal(want, got) {
				t.Errorf("%s, instance %d:\npublished %q\nlean      %q", name, i, want, got)
			}
			if name == "route" && (len(got) == 0) != (i == 0) {
				t.Errorf("instance %d: %q", i, got)
			}
		}
	}
}

func refusals(t *testing.T, v *validator, root *Node) []string {
	err := v.Validate(plain(root))
	if err == nil {
		return nil
	}
	var failed *jsonschema.ValidationError
	if !errors.As(err, &failed) {
		t.Fatal(err)
	}
	var list []string
	for _, f := range leaves(failed, nil) {
		list = append(list, f.node+" "+f.schema[strings.LastIndexByte(f.schema, '/')+1:])
	}
	slices.Sort(list)
	return list
}

func TestNothingIsLoaded(t *testing.T) {
	for _, address := range []string{"https://example.org/x.json", "file:///etc/hostname", "x.json"} {
		_, err := compileAs(jsonschema.Draft2020, "x", map[string]any{"$ref": address})
		if err == nil || !strings.Contains(err.Error(), "nothing is loaded") {
			t.Errorf("%s: %v", address, err)
		}
	}
}

func BenchmarkCompile(b *testing.B) {
	for b.Loop() {
		d, err := parseDocument("route")
		if err != nil {
			b.Fatal(err)
		}
		if _, err := d.compiled(); err != nil {
			b.Fatal(err)
		}
	}
}
