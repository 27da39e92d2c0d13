package words_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"etchbound/chemicals/working"
	"etchbound/reports/words"
)

// inspect shows every node of the code below the reports, with the name of its file.
func inspect(t *testing.T, see func(name string, n ast.Node)) {
	t.Helper()
	for _, floor := range []string{"chemicals", "hazards", "scaling"} {
		err := filepath.WalkDir("../../"+floor, func(name string, d fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
				return err
			}
			f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
			if err != nil {
				return err
			}
			ast.Inspect(f, func(n ast.Node) bool {
				see(filepath.ToSlash(name), n)
				return true
			})
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
}

// literals are the texts that the code below the reports is written with, and of them
// the kinds of missing things that it names, with where.
func literals(t *testing.T) (all map[string]bool, kinds map[string]string) {
	t.Helper()
	all, kinds = map[string]bool{}, map[string]string{}
	inspect(t, func(name string, n ast.Node) {
		if text, ok := literal(n); ok {
			all[text] = true
		}
		if kind, ok := kindIn(n); ok {
			kinds[kind] = name
		}
	})
	return all, kinds
}

func literal(n any) (string, bool) {
	if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
		text, err := strconv.Unquote(lit.Value)
		return text, err == nil
	}
	return "", false
}

// kindIn is the kind that a call of Lacks is written with.
func kindIn(n ast.Node) (string, bool) {
	call, ok := n.(*ast.CallExpr)
	if !ok || len(call.Args) != 2 {
		return "", false
	}
	if f, ok := call.Fun.(*ast.SelectorExpr); !ok || f.Sel.Name != "Lacks" {
		return "", false
	}
	return literal(call.Args[0])
}

// Every kind of missing thing has its words, and every row is of a kind.
func TestEveryKindHasWords(t *testing.T) {
	rows := words.Kinds()
	all, kinds := literals(t)
	for kind, where := range kinds {
		if !slices.Contains(rows, kind) {
			t.Errorf("%s: nothing says what %q is", where, kind)
		}
	}
	all["end_low"], all["end_high"] = all["low"], all["high"] // joined in figure.End
	for _, kind := range rows {
		if !all[kind] {
			t.Errorf("no code knows of %q", kind)
		}
	}
}

func TestWordsOfMissingThings(t *testing.T) {
	for _, c := range []struct {
		m                   working.Missing
		name, text, settles string
	}{
		{working.Lacks(working.NotGiven, "steps[4].temperature"), "step 5: temperature",
			"temperature set in this step [step 5: temperature]", "write it in the route"},
		{working.Lacks(working.NotGiven, "places.etch.headspace"), "etch: headspace", "etch: headspace is not stated",
			"write it in the route"},
		{working.LacksDatum("etch_heat.Mo2GaC"), "etch_heat.Mo2GaC", "heat of etching this phase " +
			"[etch_heat.Mo2GaC]",
			"reaction calorimetry of this powder in this acid at small scale; state it under measured: etch_heat"},
		{working.Lacks("bath_gas", "HF").In(3), "gas of the HF etch in step 3", "gas of this step [gas of the HF etch " +
			"in step 3]",
			"gas volume and analysis at small scale"},
	} {
		text, settles := words.Named(c.m)
		if name := words.Name(c.m); name != c.name || text != c.text || settles != c.settles {
			t.Errorf("%v: %q, %q, %q", c.m, name, text, settles)
		}
	}
}
