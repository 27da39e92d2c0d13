package hazards_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/hazards"
	"etchbound/hazards/alone"
	"etchbound/hazards/figure"
	"etchbound/hazards/incompatible"
	"etchbound/hazards/residue"
	"etchbound/hazards/route"
	"etchbound/hazards/stock"
	"etchbound/hazards/treating"
	"etchbound/hazards/wetted"
	"etchbound/reports/words"
	"etchbound/schemas/long"
	"etchbound/schemas/quantity"
)

// source is one Go file of the module that is no test.
type source struct {
	name    string // from the root of the module
	pkg     string // folder
	file    *ast.File
	imports []string
}

func sources(t *testing.T) []source {
	t.Helper()
	var out []source
	err := filepath.WalkDir("..", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (strings.HasPrefix(d.Name(), ".") && d.Name() != ".."), d.Name() == "testdata":
			return fs.SkipDir
		case !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go"):
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		s := source{name: strings.TrimPrefix(filepath.ToSlash(name), "../"), file: f}
		s.pkg = path.Dir(s.name)
		for _, i := range f.Imports {
			p, _ := strconv.Unquote(i.Path.Value)
			s.imports = append(s.imports, p)
		}
		out = append(out, s)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(out) < 50 {
		t.Fatalf("only %d files", len(out))
	}
	return out
}

// floors are the layers of the house, the lowest first. A package imports only
// from its own layer and below.
var floors = []string{"schemas", "chemicals", "hazards", "scaling", "reports", "cmd"}

func floor(pkg string) int { return slices.Index(floors, strings.Split(pkg, "/")[0]) }

var readers = []string{"hazards/gas", "hazards/thermal", "hazards/fluoride", "hazards/air", "hazards/skin",
	"hazards/wash", "hazards/waste", "hazards/storage", "hazards/stock"}

// rooms are what stands over the readers, the lowest first: calls run down.
var rooms = []string{"hazards/assess", "hazards/verdict", "hazards/ranges", "hazards/doubt", "hazards"}

func TestImportsOfRoomsRunOneWay(t *testing.T) {
	long.NotShort(t)
	for _, s := range sources(t) {
		from := slices.Index(rooms, s.pkg)
		for _, i := range s.imports {
			to := slices.Index(rooms, strings.TrimPrefix(i, "etchbound/"))
			if to >= 0 && (from < to && floor(s.pkg) <= floor("hazards") || to == from) {
				t.Errorf("%s imports %s, which is above it", s.name, i)
			}
		}
	}
	for _, s := range sources(t) {
		if i := slices.Index(s.imports, "etchbound/hazards/assess"); i >= 0 && s.pkg == "hazards/verdict" {
			t.Errorf("%s imports %s: a verdict does not know how a figure is found", s.name, s.imports[i])
		}
	}
}

func TestImportsRunOneWay(t *testing.T) {
	long.NotShort(t)
	for _, s := range sources(t) {
		if floor(s.pkg) < 0 && s.pkg != "." {
			t.Errorf("%s is on no floor of the house", s.pkg)
		}
		for _, i := range s.imports {
			to, ours := strings.CutPrefix(i, "etchbound/")
			switch {
			case !ours:
			case s.pkg == "chemicals/working" && to == "chemicals/datum":
			case floor(to) > floor(s.pkg):
				t.Errorf("%s imports %s, which is above it", s.name, to)
			case s.pkg == "chemicals/working", s.pkg == "schemas/quantity", s.pkg == "hazards/ode", s.pkg == "hazards/roots":
				t.Errorf("%s imports %s and should import nothing of ours", s.name, to)
			case slices.Contains(readers, s.pkg) && slices.Contains(readers, to):
				t.Errorf("%s imports %s: no reader imports another", s.name, to)
			case s.pkg == "hazards/process" && to == "hazards/limit", s.pkg == "hazards/vessel" &&
				(to == "hazards/process" || to == "hazards/limit"), s.pkg == "hazards/route" &&
				(to == "hazards/process" || to == "hazards/figure"):
				t.Errorf("%s imports %s and must not know it", s.name, to)
			}
			if !ours && strings.Contains(i, ".") && (strings.Contains(i, "yaml") || strings.Contains(i, "jsonschema")) &&
				s.pkg != "schemas" {
				t.Errorf("%s imports %s: only schemas may", s.name, i)
			}
		}
	}
}

// A pure function reads no clock, no chance, no file and no environment. Draws may
// take chance from a seed that they are given, and from nothing else.
func TestAssessReadsNothingOutside(t *testing.T) {
	long.NotShort(t)
	for _, s := range sources(t) {
		if f := floor(s.pkg); f < floor("chemicals") || f > floor("scaling") {
			continue
		}
		for _, i := range s.imports {
			if s.name == "scaling/draws.go" && i == "math/rand/v2" {
				continue
			}
			if slices.Contains([]string{"os", "net", "net/http", "math/rand", "math/rand/v2", "time", "os/exec",
				"path/filepath", "log"}, i) && (s.pkg != "hazards/route" || i != "time") {
				t.Errorf("%s imports %s", s.name, i)
			}
		}
	}
}

func TestTheCommandHoldsNoNetwork(t *testing.T) {
	long.NotShort(t)
	out, err := exec.Command("go", "list", "-deps", "../cmd/etchbound").Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	deps := strings.Fields(string(out))
	if len(deps) < 50 {
		t.Fatalf("only %d dependencies", len(deps))
	}
	for _, d := range deps {
		if d == "net/http" {
			t.Errorf("the command depends on %s", d)
		}
	}
}

// Every id that code asks the store for is a row, or of a kind that there is.
func TestDataThatCodeAsksForExists(t *testing.T) {
	long.NotShort(t)
	asked := 0
	for _, s := range sources(t) {
		if f := floor(s.pkg); f < floor("chemicals") || f > floor("hazards") {
			continue
		}
		ast.Inspect(s.file, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			sel, ok := call.Fun.(*ast.SelectorExpr)
			if ok && sel.Sel.Name == "Of" && len(call.Args) == 2 && isDatum(sel.X) {
				if kind, _ := literal(call.Args[0]); kind != "" && datum.Named(kind) == nil {
					t.Errorf("%s makes the id of a datum of %q, which is no kind", s.name, kind)
				}
			}
			if !ok || len(call.Args) != 1 || sel.Sel.Name != "Num" && sel.Sel.Name != "Row" && sel.Sel.Name != "Table" {
				return true
			}
			id, begins := literal(call.Args[0])
			if id == "" {
				return true
			}
			asked++
			if !held(id, begins, sel.Sel.Name == "Table") {
				t.Errorf("%s asks for %q, which is no row", s.name, id)
			}
			return true
		})
	}
	if asked < 40 {
		t.Errorf("only %d ids were found in the code", asked)
	}
}

// literal is a string, or the beginning of one that is put together.
func literal(x ast.Expr) (text string, begins bool) {
	switch x := x.(type) {
	case *ast.BasicLit:
		if x.Kind == token.STRING {
			s, _ := strconv.Unquote(x.Value)
			return s, false
		}
	case *ast.BinaryExpr:
		if x.Op == token.ADD {
			s, _ := literal(x.X)
			return s, true
		}
	}
	return "", false
}

func isDatum(x ast.Expr) bool {
	name, ok := x.(*ast.Ident)
	return ok && name.Name == "datum"
}

func held(id string, begins, table bool) bool {
	st := chemicals.Base()
	if table {
		return slices.ContainsFunc(st.Tables(), func(x *chemicals.Table) bool {
			return x.ID == id || begins && strings.HasPrefix(x.ID, id)
		})
	}
	_, is := st.Row(datum.ID(id))
	return is && !begins
}

var (
	quantityName = regexp.MustCompile(`^[a-z]+(\.[a-z0-9_]+)+$`)
	figureID     = regexp.MustCompile(`^[a-z0-9_.]+(@[a-z0-9_-]+)?(/([a-z0-9_]+|[0-9-]+))?(:[a-z0-9_,]+)?$`)
)

func TestCatalogueIsWellFormed(t *testing.T) {
	seen := map[string]bool{}
	for _, q := range figure.Catalogue() {
		if !quantityName.MatchString(q.Name) || seen[q.Name] {
			t.Errorf("%s: no name of a quantity, or there twice", q.Name)
		}
		seen[q.Name] = true
		if q.Label == "" || q.Unit == "" || q.Definition == "" || q.Digits < 1 || q.Digits > 9 {
			t.Errorf("%s: label %q, unit %q, digits %d, definition %q", q.Name, q.Label, q.Unit, q.Digits, q.Definition)
		}
		if !slices.Contains([]string{"sum", "worst", "only"}, q.Bare) {
			t.Errorf("%s: the bare id is formed by %q", q.Name, q.Bare)
		}
	}
	raw, err := os.ReadFile("figure/catalogue.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(string(raw), "\n") {
		if f := strings.Split(line, ","); len(f) > 5 && f[0] != "name" && f[4] != "high" && f[4] != "low" {
			t.Errorf("%s: dangerous end %q", f[0], f[4])
		}
	}
}

// coldWaste freezes what an etch left before it comes to the waste.
const coldWaste = `route: etchbound/1
title: cold
basis: {status: invented}
precursor: {phase: Ti3AlC2, mass: 1 g, impurities: none (certificate)}
places:
  pot: {kind: bottle, material: PTFE, capacity: 250 mL, closure: vented}
  can: {kind: drum, material: HDPE, capacity: 5 L, closure: vented, batches: 2}
steps:
  - {do: charge, in: pot, what: [{substance: HF, strength: 10 wt%, volume: 20 mL}], temperature: 20 degC}
  - {do: add, in: pot, what: precursor, over: 30 min, temperature: 25 degC}
  - {do: freeze, in: pot, cryogen: dry_ice, cryogen_amount: 1 kg}
  - {do: collect, in: pot, into: can}
`

// keptNitride is a nitride that is kept in water, which no bundled route does.
func keptNitride() string {
	const freeze = "{do: freeze, in: pot, cryogen: dry_ice, cryogen_amount: 1 kg}"
	return strings.NewReplacer("Ti3AlC2", "Ti3AlCN", freeze,
		"{do: store, in: pot, time: 30 d, temperature: 20 degC}").Replace(coldWaste)
}

// What the catalogue says is built comes out of some route, in the unit the
// catalogue says, and what is not built out of none.
func TestWhatIsBuiltIsThere(t *testing.T) {
	long.NotShort(t)
	made := map[string]bool{}
	site := *demoSite(t)
	site.Jurisdiction = "" // where none is stated every limit and every threshold counts
	site.Cabinet, site.Unattended = quantity.Of(200, "L"), &route.Unattended{}
	all := allRoutes(t)
	all["cold"] = load(t, coldWaste)
	all["nitride"] = load(t, keptNitride())
	for name, r := range all {
		c, err := route.NewCase(r, &site, nil)
		if err != nil {
			t.Fatal(err)
		}
		a := hazards.Assess(c, nil)
		a.Figures = append(a.Figures, alone.Read(c, nil, &a.Walk, figure.NewSet(a.Figures))...)
		held, sums := stock.Of(&c, &a.Walk, figure.NewSet(a.Figures))
		a.Figures = append(a.Figures, stock.Figures(&c, held, sums)...)
		a.Figures = append(a.Figures, residue.Read(c, nil, &a.Walk)...)
		a.Figures = append(a.Figures, incompatible.Read(c, nil, &a.Walk)...)
		a.Figures = append(a.Figures, wetted.Read(c, nil, &a.Walk)...)
		a.Figures = append(a.Figures, treating.PH(c, nil, &a.Walk)...)
		for i := range a.Figures {
			f := &a.Figures[i]
			made[f.Quantity] = true
			q, ok := figure.Lookup(f.Quantity)
			if !ok || !q.Built {
				t.Errorf("%s: %s is not catalogued as built", name, f.ID.String())
			}
			if f.Value.Unit != q.Unit {
				t.Errorf("%s: %s is in %q, the catalogue says %q", name, f.ID.String(), f.Value.Unit, q.Unit)
			}
			if !figureID.MatchString(f.ID.String()) {
				t.Errorf("%s: %s is no id", name, f.ID.String())
			}
		}
	}
	for _, q := range figure.Catalogue() {
		if q.Built && !made[q.Name] {
			t.Errorf("%s is catalogued as built, and no route gives it", q.Name)
		}
	}
}

// Ids are not given twice, and the bare quantity is always there.
func TestIdsAreOwn(t *testing.T) {
	long.Only(t)
	for name, rv := range allReviews(t) {
		seen := map[string]bool{}
		for i := range rv.Figures {
			id := rv.Figures[i].ID.String()
			if seen[id] {
				t.Errorf("%s: %s is given twice", name, id)
			}
			seen[id] = true
		}
		for i := range rv.Figures {
			f := &rv.Figures[i]
			if !seen[f.Quantity] {
				t.Errorf("%s: no bare %s", name, f.Quantity)
			}
			if !f.Place.IsZero() && !seen[f.Quantity+"@"+f.Place.String()] {
				t.Errorf("%s: no %s@%s", name, f.Quantity, f.Place)
			}
			if !f.Of().IsZero() && !seen[f.Of().String()] {
				t.Errorf("%s: %s repeats %s, which is not there", name, f.ID.String(), f.Of())
			}
		}
		ids := map[string]bool{}
		for i := range rv.Findings {
			if id := rv.Findings[i].ID(); ids[id.String()] {
				t.Errorf("%s: the finding %s is there twice", name, id)
			} else {
				ids[id.String()] = true
			}
		}
	}
}

// The same case gives the same review, figure by figure.
func TestTheSameCaseGivesTheSame(t *testing.T) {
	long.Only(t)
	text := bundledTexts(t)["demo-lif-hcl-2g.yaml"]
	if testing.Short() {
		text = inIce("10 g", "200 mL", "2 W/K")
	}
	a, b := followed(t, text), must(t, newCase(t, load(t, text)))
	if len(a.Figures) != len(b.Figures) || len(a.Findings) != len(b.Findings) || len(a.Sheet.Lines) != len(b.Sheet.Lines) {
		t.Fatal("two reviews of one case differ in length")
	}
	for i := range a.Figures {
		x, y := &a.Figures[i], &b.Figures[i]
		if x.ID.String() != y.ID.String() || !same(x.Value.V, y.Value.V) || !same(x.Low().V, y.Low().V) ||
			!same(x.High().V, y.High().V) {
			t.Errorf("%s %v (%v to %v) against %s %v (%v to %v)", x.ID.String(), x.Value.V, x.Low().V, x.High().V, y.ID.String(),
				y.Value.V, y.Low().V, y.High().V)
		}
	}
}

// Nothing a review says is a clearance.
func TestNoVerdictIsAClearance(t *testing.T) {
	long.Only(t)
	for name, rv := range allReviews(t) {
		texts := said(&rv)
		for i := range rv.Findings {
			texts = append(texts, words.Say(rv.Findings[i].Says), rv.Findings[i].Verdict.String())
		}
		for _, s := range texts {
			for _, w := range []string{"approved", "compliant", "is safe", "HF-free", "mild"} {
				if strings.Contains(strings.ToLower(s), strings.ToLower(w)) {
					t.Errorf("%s: %q says %q", name, s, w)
				}
			}
		}
	}
}
