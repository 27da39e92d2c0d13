package scaling

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/schemas"
	"etchbound/schemas/long"
	"etchbound/schemas/quantity"
)

// written is a file as a tree, of which one value may be written otherwise or a key
// left out.
type written struct {
	kind string // route, site or limits
	root *schemas.Node
	keys map[string]schemas.Described
}

func readWritten(t *testing.T, kind, name string) (w written, text []byte) {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	root, _, problems, err := schemas.Read(name, bytes.NewReader(text), kind)
	if err != nil || root == nil {
		t.Fatal(err, problems)
	}
	w = written{kind, root, map[string]schemas.Described{}}
	for _, d := range schemas.Describe(kind) {
		w.keys[d.Path] = d
	}
	return w, text
}

// with is the file with the value at a path written as text; empty: left out.
func (w *written) with(path, text string) []byte {
	var b bytes.Buffer
	w.write(&b, w.root, path, text)
	return b.Bytes()
}

func (w *written) write(b *bytes.Buffer, n *schemas.Node, path, text string) {
	switch {
	case n.Path == path && n != w.root:
		b.WriteString(text)
	case n.Kind == schemas.Map:
		b.WriteByte('{')
		for _, k := range n.Keys {
			if k.Value.Path == path && text == "" {
				continue
			}
			b.WriteString(k.Name + ": ")
			w.write(b, k.Value, path, text)
			b.WriteString(", ")
		}
		b.WriteByte('}')
	case n.Kind == schemas.List:
		b.WriteByte('[')
		for _, x := range n.Items {
			w.write(b, x, path, text)
			b.WriteString(", ")
		}
		b.WriteByte(']')
	case n.Kind == schemas.Text:
		b.WriteString(strconv.Quote(n.Text))
	default:
		b.WriteString(n.Text)
	}
}

// each shows every value below a node with its path as the schema has it.
func (w *written) each(n *schemas.Node, path string, visit func(n *schemas.Node, path string)) {
	if n.Path != "" {
		visit(n, path)
	}
	for _, k := range n.Keys {
		in := strings.TrimPrefix(path+"."+k.Name, ".")
		if path == "places" {
			in = "places.*"
		}
		w.each(k.Value, in, visit)
	}
	for _, x := range n.Items {
		w.each(x, path+"[]", visit)
	}
}

// otherwise are other things that could stand at a node.
func (w *written) otherwise(n *schemas.Node, path string) []string {
	d := w.keys[strings.TrimSuffix(path, "[]")]
	switch {
	case n.Kind == schemas.Bool:
		return []string{strconv.FormatBool(n.Text != "true")}
	case n.Kind == schemas.Number && d.Dimensions == nil:
		return []string{quantity.Number(n.Number+0.5, 0), quantity.Number(n.Number+1, 0)}
	case n.Kind == schemas.Number:
		return []string{quantity.Number(n.Number+1, 0)}
	case n.Kind != schemas.Text:
		return nil
	case d.Words != nil:
		return quoted(slices.Clone(d.Words)...)
	case d.Dimensions != nil || strings.HasSuffix(path, ".value") || path == "triggers.mass_bands[]":
		return quoted(shifted(n.Text)...)
	}
	switch d.Key {
	case "phase":
		return quoted("Ti2AlC")
	case "formula":
		return quoted("Fe")
	case "substance":
		return quoted("nitric acid", "sodium chloride", "sulfuric acid")
	case "agent":
		return quoted("hydrogen chloride")
	case "in", "into":
		return quoted("pot", "drum", "tubes", "etch", "elsewhere")
	case "date", "tested":
		return quoted("2026-01-31")
	case "layers":
		return quoted("Ti")
	case "id":
		return quoted("density.TiC(s)", "another")
	case "impurities":
		return quoted("none (another certificate)")
	}
	return quoted(n.Text + " more")
}

// differing are the texts but for the one that is there already.
func differing(n *schemas.Node, list []string) []string {
	return slices.DeleteFunc(list, func(x string) bool { return x == n.Text || x == strconv.Quote(n.Text) })
}

func quoted(list ...string) []string {
	for i := range list {
		list[i] = strconv.Quote(list[i])
	}
	return list
}

// shifted is a quantity with its value and, if it has one, each end of its range moved.
func shifted(text string) []string {
	p, err := quantity.Split(text)
	if err != nil {
		return nil
	}
	write := func(x, low, high float64) string {
		s := quantity.Number(x, 0)
		if low < high {
			s += " (" + quantity.Number(low, 0) + " to " + quantity.Number(high, 0) + ")"
		}
		return s + " " + p.Unit
	}
	if p.Low < p.High {
		return []string{write(p.X+(p.High-p.X)/3, p.Low, p.High), write(p.X, p.Low+(p.X-p.Low)/3, p.High),
			write(p.X, p.Low, p.High-(p.High-p.X)/3), write(p.X, 1, 0)}
	}
	return []string{write(p.X*1.03+0.01, 1, 0), write(p.X*0.97, 1, 0)}
}

// loadedAs reads a file into the case of nothing else, nil where it is refused, which
// is told in words.
func loadedAs(t *testing.T, kind string, text []byte) *route.Case {
	t.Helper()
	var problems []schemas.Problem
	var err error
	c := &route.Case{Route: &route.Route{}}
	there := false
	switch kind {
	case "route":
		c.Route, problems, err = route.Load("f.yaml", bytes.NewReader(text))
		there = c.Route != nil
	case "site":
		c.Site, problems, err = route.LoadSite("f.yaml", bytes.NewReader(text))
		there = c.Site != nil
	default:
		c.Limits, problems, err = limit.Load("f.yaml", bytes.NewReader(text), figure.Units{})
		there = c.Limits != nil
	}
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	if there {
		return c
	}
	if !slices.ContainsFunc(problems, func(p schemas.Problem) bool { return p.What != "" && p.Line > 0 }) {
		t.Errorf("refused without a word: %v\n%s", problems, text)
	}
	return nil
}

// Whatever single key of a file is written otherwise or left out, the file is refused
// in words or the change shows, and the rules can be asked. A measured curve, a range
// under data:, a stated lid, layers and a title did not show, and cooling that only one
// of two routes states ended the program.
func TestEveryKeyShows(t *testing.T) {
	long.Only(t)
	names, err := filepath.Glob("../testdata/*/*.yaml")
	if err != nil || len(names) < 10 {
		t.Fatal(names, err)
	}
	shown, tried := map[string]bool{}, 0
	for _, name := range names {
		kind := kindOfFile(name)
		whole := filepath.Base(filepath.Dir(name)) == "keys" // those that state every key
		w, text := readWritten(t, kind, name)
		before := loadedAs(t, kind, text)
		w.each(w.root, "", func(n *schemas.Node, path string) {
			for _, x := range append(differing(n, w.otherwise(n, path)), "") {
				if x == "" && strings.HasSuffix(path, "]") {
					continue // an item and no key
				}
				if tried++; !whole && (!long.Form() || tried%25 != 0) || !long.Form() && tried%8 != 0 {
					continue // the long form changes every key
				}
				changed := w.with(n.Path, x)
				after := loadedAs(t, kind, changed)
				if after == nil {
					continue
				}
				for _, pair := range [2][2]*route.Case{{before, after}, {after, before}} {
					d := differences(pair[0], pair[1])
					triggers().fire(&Change{}, &d, &beside{was: &hazards.Review{}, is: &hazards.Review{}})
					if len(d.found) == 0 || len(d.inputs()) == 0 {
						t.Errorf("%s: %s as %q does not show", filepath.Base(name), n.Path, x)
					}
				}
				shown[kind+" "+path] = true
			}
		})
	}
	if len(shown) < 110 && long.Form() || len(shown) < 10 {
		t.Errorf("%d keys were changed", len(shown))
	}
}

// kindOfFile is what a file of the project is, by its name.
func kindOfFile(name string) string {
	for _, kind := range []string{"site", "limits"} {
		if strings.HasPrefix(filepath.Base(name), kind) {
			return kind
		}
	}
	return "route"
}
