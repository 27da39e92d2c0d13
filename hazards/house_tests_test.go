package hazards_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"etchbound/schemas/long"
)

// testFile is one test file of the module.
type testFile struct {
	name string // from the root of the module
	set  *token.FileSet
	file *ast.File
}

func testFiles(t *testing.T) []testFile {
	t.Helper()
	var out []testFile
	err := filepath.WalkDir("..", func(name string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(name, "_test.go") {
			return err
		}
		x := testFile{name: strings.TrimPrefix(filepath.ToSlash(name), "../"), set: token.NewFileSet()}
		x.file, err = parser.ParseFile(x.set, name, nil, parser.SkipObjectResolution)
		out = append(out, x)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(out) < 50 {
		t.Fatalf("only %d test files", len(out))
	}
	return out
}

// onlyTests are the packages that help tests, and that nothing else imports.
var onlyTests = []string{"etchbound/schemas/nearly", "etchbound/schemas/long", "etchbound/hazards/bench",
	"etchbound/reports/fixture"}

func TestHelpersOfTestsStayWithTests(t *testing.T) {
	long.NotShort(t)
	for _, s := range sources(t) {
		if slices.Contains(onlyTests, "etchbound/"+s.pkg) {
			continue
		}
		for _, i := range s.imports {
			for _, helper := range onlyTests {
				if i == helper {
					t.Errorf("%s imports %s, which is for tests", s.name, i)
				}
			}
		}
	}
}

// A NaN is not greater than any tolerance, so a test that fails where
// math.Abs(got-want) > tolerance passes with one: package nearly does not.
func TestNoTestPassesWithNaN(t *testing.T) {
	for _, x := range testFiles(t) {
		ast.Inspect(x.file, func(n ast.Node) bool {
			b, ok := n.(*ast.BinaryExpr)
			if ok && (b.Op == token.GTR || b.Op == token.GEQ) && calls(b.X, "math", "Abs") ||
				ok && (b.Op == token.LSS || b.Op == token.LEQ) && calls(b.Y, "math", "Abs") {
				at := x.set.Position(b.Pos())
				t.Errorf("%s:%d: a NaN passes: compare with package nearly", x.name, at.Line)
			}
			return true
		})
	}
}

// calls tells whether an expression is a call of a function of a package.
func calls(x ast.Expr, pkg, name string) bool {
	c, ok := x.(*ast.CallExpr)
	if !ok {
		return false
	}
	s, ok := c.Fun.(*ast.SelectorExpr)
	if !ok || name != "" && s.Sel.Name != name {
		return false
	}
	id, ok := s.X.(*ast.Ident)
	return ok && id.Name == pkg
}

// Nothing leaves the tests by a skip without a line in .ci/run that runs it: what
// can skip itself is named there. Draws that a property throws away are none.
func TestWhatSkipsIsRunByCI(t *testing.T) {
	ci, err := os.ReadFile("../.ci/run")
	if err != nil {
		t.Fatal(err)
	}
	// What long.NotShort leaves out needs no name: nothing there asks for the short form.
	if strings.Contains(string(ci), "-short") {
		t.Error(".ci/run asks for the short form somewhere, which leaves tests out")
	}
	found := 0
	for _, x := range testFiles(t) {
		for _, d := range x.file.Decls {
			f, ok := d.(*ast.FuncDecl)
			if !ok || f.Body == nil || !skips(f) {
				continue
			}
			found++
			if !strings.Contains(string(ci), f.Name.Name) {
				t.Errorf("%s: %s can skip itself, and .ci/run does not name it", x.name, f.Name.Name)
			}
		}
	}
	if found < 2 {
		t.Errorf("only %d tests that can skip themselves were found", found)
	}
}

// skips tells whether a function asks for the long form or skips the test it is
// part of: the function that it passes to a property has a T of its own.
func skips(f *ast.FuncDecl) bool {
	found := false
	if f.Recv != nil || f.Name.Name == "TestOnly" || f.Name.Name == "TestNotShort" { // which test what skips
		return false
	}
	ast.Inspect(f.Body, func(n ast.Node) bool {
		if c, ok := n.(*ast.CallExpr); ok {
			s, method := c.Fun.(*ast.SelectorExpr)
			switch {
			case method && s.Sel.Name == "Check" && calls(c, "rapid", "Check"):
				return false
			case calls(c, "long", "Only"), method && strings.HasPrefix(s.Sel.Name, "Skip") &&
				len(c.Args) < 3 &&
				!calls(c, "fs", ""):
				found = true
			}
		}
		return true
	})
	return found
}
