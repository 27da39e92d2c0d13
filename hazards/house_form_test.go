package hazards_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
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
