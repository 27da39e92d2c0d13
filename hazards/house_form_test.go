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
	"unicode/utf8"

	"etchbound/schemas/long"
)

// Code that does not fit the eye is not read: a line has 120 characters at most and a
// function sixty lines, tests included.
func TestLinesAndFunctionsFitTheEye(t *testing.T) {
	long.NotShort(t)
	const widest, longest = 120, 60
	files := 0
	err := filepath.WalkDir("..", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && strings.HasPrefix(d.Name(), ".") && d.Name() != "..":
			return fs.SkipDir
		case !strings.HasSuffix(name, ".go"):
			return nil
		}
		raw, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		files++
		for i, line := range strings.Split(string(raw), "\n") {
			if n := utf8.RuneCountInString(line); n > widest {
				t.Errorf("%s:%d has %d characters", name, i+1, n)
			}
		}
		set := token.NewFileSet()
		f, err := parser.ParseFile(set, name, raw, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		for _, decl := range f.Decls {
			fn, is := decl.(*ast.FuncDecl)
			if !is {
				continue
			}
			if n := set.Position(fn.End()).Line - set.Position(fn.Pos()).Line + 1; n > longest {
				t.Errorf("%s: %s has %d lines", name, fn.Name.Name, n)
			}
		}
		return nil
	})
	if err != nil || files < 300 {
		t.Fatalf("%d files, %v", files, err)
	}
}

// What is integrated is the same on every processor: a product that is added to something is
// rounded first, by a conversion that no compiler fuses across (Go specification, "Floating-point
// operators"). Numbers of rows and columns are no such products.
func TestNoIntegratedProductIsFused(t *testing.T) {
	long.NotShort(t)
	product := func(x ast.Expr) bool {
		for {
			switch y := x.(type) {
			case *ast.ParenExpr:
				x = y.X
			case *ast.UnaryExpr:
				x = y.X
			case *ast.BinaryExpr:
				return y.Op == token.MUL
			default:
				return false
			}
		}
	}
	set, seen := token.NewFileSet(), 0
	for _, dir := range [...]string{"ode", "vessel"} {
		files, err := filepath.Glob(filepath.Join(dir, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range files {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			file, err := parser.ParseFile(set, name, nil, parser.SkipObjectResolution)
			if err != nil {
				t.Fatal(err)
			}
			seen++
			ast.Inspect(file, func(n ast.Node) bool {
				parts, inside := added(n)
				if slices.ContainsFunc(parts, product) {
					t.Errorf("%s: a product is added that is not rounded first", set.Position(n.Pos()))
				}
				return inside
			})
		}
	}
	if seen < 20 {
		t.Errorf("%d files", seen)
	}
}

// added are the expressions that a piece of code adds or takes off; false of one in which only
// rows and columns are counted.
func added(n ast.Node) (parts []ast.Expr, inside bool) {
	switch n := n.(type) {
	case *ast.IndexExpr, *ast.SliceExpr:
		return nil, false
	case *ast.CallExpr:
		f, named := n.Fun.(*ast.Ident)
		return nil, !named || f.Name != "make"
	case *ast.BinaryExpr:
		if n.Op == token.ADD || n.Op == token.SUB {
			return []ast.Expr{n.X, n.Y}, true
		}
	case *ast.AssignStmt:
		if n.Tok == token.ADD_ASSIGN || n.Tok == token.SUB_ASSIGN {
			return n.Rhs, true
		}
	}
	return nil, true
}
