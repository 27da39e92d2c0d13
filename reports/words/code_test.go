package words_test

import (
	"go/ast"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// sentencesIn are where code below the reports may still hold words of its own, by the
// beginning of the name of a file or folder, each with the reason.
var sentencesIn = map[string]string{
	"hazards/route/":     "messages of the loader, which tell a chemist what to write",
	"hazards/limit/load": "messages of the loader",
	"hazards/limit/keys": "messages of the loader",
	"hazards/vessel/":    "errors of a plan that no route makes",
	"hazards/ode/":       "errors of plain mathematics",
	"hazards/roots/":     "errors of plain mathematics",
	"hazards/bench/":     "a route for tests",
	"chemicals/":         "errors of data and formulas, and names of lines",
	"scaling/":           "errors of the command line, and names of lines",
}

// namesIn are names of three words and more that code below the reports may hold, by
// where.
var namesIn = map[string][]string{
	"hazards/process/": {"fluorine taken up", "chlorine taken up", "oxygen taken up", "hydroxyl taken up (O)",
		"hydroxyl taken up (H)", "chlorine driven off", "CO2 given off", "share of the carbonate that has met acid"},
	"hazards/course/": {"first-order law", "law of contracting grains", "self-accelerating law",
		"heat and mass balance, %s, tolerance %s, %d steps, energy closes to %s"},
	"hazards/thermal/": {"HF per Ti to TiF3", "HF per Ti to TiF6(2-)"},
	"hazards/limit/":   {" that it makes"}, // in the name of a limit
	"hazards/upset/":   {"assessed again with this done wrong", "the failure looked at"},
}

// lines are the functions that put a line on a sheet: what they are given beside numbers
// is its formula, or the name of a table, a model or an exact number.
// An error is no part of a review.
var lines = map[string]bool{"New": true, "Errorf": true, "Line": true, "Sum": true, "Table": true, "Model": true,
	"Exact": true}

// What the calculation says stands in the table of phrases: no text in its code is a
// sentence, nor the half of one.
func TestNoSentencesInCode(t *testing.T) {
	words := regexp.MustCompile(`[A-Za-z]{2,}`)
	const most = 2 // words of a name
	used := map[string]bool{}
	named := map[ast.Node]bool{} // what stands on a line, and what is imported
	inspect(t, func(file string, n ast.Node) {
		switch x := n.(type) {
		case *ast.ImportSpec:
			named[x.Path] = true
		case *ast.CallExpr:
			if f, ok := x.Fun.(*ast.SelectorExpr); ok && lines[f.Sel.Name] {
				markAll(x, named)
			}
		}
		text, ok := literal(n)
		if !ok || named[n] || !strings.Contains(text, " ") || len(words.FindAllString(text, -1)) <= most {
			return
		}
		file = strings.TrimPrefix(file, "../../")
		for part, names := range namesIn {
			if strings.HasPrefix(file, part) && slices.Contains(names, text) {
				used[text] = true
				return
			}
		}
		allowed := false
		for part := range sentencesIn {
			if strings.HasPrefix(file, part) {
				used[part], allowed = true, true
			}
		}
		if allowed {
			return
		}
		t.Errorf("%s: %q is a sentence: it belongs in phrases.csv", file, text)
	})
	var listed []string
	for part := range sentencesIn {
		listed = append(listed, part)
	}
	for _, names := range namesIn {
		listed = append(listed, names...)
	}
	for _, x := range listed {
		if !used[x] {
			t.Errorf("%q does not stand there any more: leave it out of the list", x)
		}
	}
}

// markAll marks the texts a call is given, not those of calls inside of it.
func markAll(call *ast.CallExpr, named map[ast.Node]bool) {
	for _, arg := range call.Args {
		ast.Inspect(arg, func(n ast.Node) bool {
			if _, inner := n.(*ast.CallExpr); inner {
				return false
			}
			if lit, ok := n.(*ast.BasicLit); ok {
				named[lit] = true
			}
			return true
		})
	}
}
