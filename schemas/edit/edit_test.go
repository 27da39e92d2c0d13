package edit_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"etchbound/schemas"
	"etchbound/schemas/edit"
	"etchbound/schemas/long"
)

const small = `# what stands first
route: etchbound/1
title: "A # in quotes" # and a comment

places: # all of them
  etch:
    kind: bottle
    capacity: 250 mL # room
    # the last comment of the place
  drum: {kind: drum, closure: "vented", count: 2} # shut

steps:
- do: add
  what: [precursor]
  over: 5 min
- do: charge
  in: etch
  what:
    - {substance: water, volume: 40 mL} # cold
  note: >-
    runs over
    two lines

measured:
  curve:
    temperature: 35 degC
    # a point a line
    points:
      - {time: 2 h}

  td24: 130 degC
`

func TestOneValueIsChangedWhereItStands(t *testing.T) {
	tests := []struct {
		path, to, note, was, is string
	}{
		{"places.etch.capacity", "500 mL", "", "capacity: 250 mL # room\n", "capacity: 500 mL # room\n"},
		{"places.etch.capacity", "500 mL", "was 250 mL", "capacity: 250 mL # room\n",
			"capacity: 500 mL # room; was 250 mL\n"},
		{"steps[0].over", "20 min", "was 5 min", "over: 5 min\n", "over: 20 min # was 5 min\n"},
		{"title", `"B # in quotes"`, "", `title: "A # in quotes" # and`, `title: "B # in quotes" # and`},
		{"places.etch.vent", "3 mm", "new", "250 mL # room\n", "250 mL # room\n    vent: 3 mm # new\n"},
		{"places.drum.vent", "3 mm", "new", "count: 2} # shut", "count: 2, vent: 3 mm} # shut; new"},
		{"places.drum.closure", "open", "", `closure: "vented"`, "closure: open"},
		{"places.drum.count", "3", "shut; count was 2", "count: 2} # shut", "count: 3} # shut; count was 2"},
		{"places.drum.count", "3", "shut", "count: 2} # shut", "count: 3} # shut"},
		{"places.drum.closure", "", "", `, closure: "vented"`, ""},
		{"places.drum.kind", "", "", "kind: drum, ", ""},
		{"places.etch.capacity", "", "", "    capacity: 250 mL # room\n", ""},
		{"steps[1].what[0].volume", "80 mL", "", "volume: 40 mL", "volume: 80 mL"},
		{"steps[1].what[1]", "{substance: water}", "", "# cold\n", "# cold\n    - {substance: water}\n"},
		{"steps[0].what[1]", "precursor", "", "[precursor]", "[precursor, precursor]"},
		{"steps[0].what", "[]", "", "[precursor]", "[]"},
		{"steps[1].what", "[precursor]", "", "what:\n    - {substance: water, volume: 40 mL} # cold",
			"what: [precursor]"},
		{"measured.curve", "", "", "  curve:\n    temperature: 35 degC\n    # a point a line\n    points:\n" +
			"      - {time: 2 h}\n", ""},
		{"notes", "none", "", "  td24: 130 degC\n", "  td24: 130 degC\nnotes: none\n"},
	}
	for _, ending := range []string{"\n", "\r\n"} {
		for _, x := range tests {
			in := strings.ReplaceAll(small, "\n", ending)
			want := strings.ReplaceAll(strings.Replace(small, x.was, x.is, 1), "\n", ending)
			got, err := edit.Apply([]byte(in), edit.Edit{Path: x.path, To: x.to, Note: x.note})
			if err != nil || string(got) != want {
				t.Errorf("%s to %q: %v\n%s", x.path, x.to, err, got)
			}
		}
	}
}

func TestWhatCannotBeEditedIsRefused(t *testing.T) {
	for _, x := range []struct{ path, to string }{
		{"places.vial.capacity", "1 mL"}, {"steps[9].over", "1 min"}, {"steps[1].what[2]", "precursor"},
		{"steps[0].do", ""}, {"nothing", ""}, {"steps[1].note", "one"}, {"steps[0]", "x"},
		{"title", "a: b: c"}, {"title", "x\nplaces: y"}, {"steps[0].over", "5 min\n  time: 1 h"},
	} {
		got, err := edit.Apply([]byte(small), edit.Edit{Path: x.path, To: x.to})
		if err == nil {
			t.Errorf("%s to %q:\n%s", x.path, x.to, got)
		} else if !errors.Is(err, edit.ErrPlace) {
			t.Errorf("%s: %v", x.path, err)
		}
	}
}

// scalars are the values of a tree that stand on their own, and maps its maps.
func scalars(n *schemas.Node, leaves, maps *[]*schemas.Node) {
	switch n.Kind {
	case schemas.Map:
		*maps = append(*maps, n)
		for i := range n.Keys {
			scalars(n.Keys[i].Value, leaves, maps)
		}
	case schemas.List:
		for _, x := range n.Items {
			scalars(x, leaves, maps)
		}
	default:
		*leaves = append(*leaves, n)
	}
}

// Of every file that is bundled or has to load for ever, each value can be changed
// alone, and what is added and taken out again leaves the file as it was.
func TestEveryValueOfEveryFileIsEditedAlone(t *testing.T) {
	long.Only(t)
	files, _ := filepath.Glob("../../testdata/routes/*.yaml")
	more, _ := filepath.Glob("../../testdata/keys/*.yaml")
	seen, refused := 0, 0
	for _, name := range append(files, more...) {
		raw, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		root, problems := schemas.Places(name, raw)
		if root == nil {
			t.Fatalf("%s: %v", name, problems)
		}
		var leaves, maps []*schemas.Node
		scalars(root, &leaves, &maps)
		for _, n := range leaves {
			seen++
			got, err := edit.Apply(raw, edit.Edit{Path: n.Path, To: "other words"})
			if err != nil {
				refused++
				continue
			}
			if err := oneLine(string(raw), string(got), n.Line); err != nil {
				t.Errorf("%s, %s: %v", name, n.Path, err)
			}
		}
		for _, m := range maps {
			path := strings.TrimPrefix(m.Path+".added", ".")
			got, err := edit.Apply(raw, edit.Edit{Path: path, To: "x"}, edit.Edit{Path: path})
			if err != nil || string(got) != string(raw) {
				t.Errorf("%s, %s: %v", name, path, err)
			}
		}
	}
	if seen < 500 || refused > seen/20 {
		t.Errorf("%d values, of which %d were refused", seen, refused)
	}
}

func oneLine(was, is string, line int) error {
	a, b := strings.Split(was, "\n"), strings.Split(is, "\n")
	if len(a) != len(b) {
		return fmt.Errorf("%d lines, were %d", len(b), len(a))
	}
	for i := range a {
		if (a[i] != b[i]) != (i == line-1) {
			return fmt.Errorf("line %d: %q, was %q", i+1, b[i], a[i])
		}
	}
	return nil
}

func TestHeadStandsBeforeEverything(t *testing.T) {
	got := string(edit.Head([]byte("\ufeffroute: x\r\n"), "one", ""))
	if got != "\ufeff# one\r\n#\r\nroute: x\r\n" {
		t.Errorf("%q", got)
	}
}
