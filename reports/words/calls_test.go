package words_test

import (
	"go/ast"
	"slices"
	"strings"
	"testing"

	"etchbound/hazards/phrase"
	"etchbound/reports/words"
)

// Every call gives a sentence as many things as stand in it.
func TestCallsGiveWhatTheSentenceTakes(t *testing.T) {
	rows, n := words.Phrases(), 0
	inspect(t, func(file string, node ast.Node) {
		key, args := said(node)
		if !slices.Contains(rows, key) {
			return
		}
		n++
		given := make([]any, args)
		for i := range given {
			given[i] = "x" // of the wrong kind, perhaps: the number is looked at
		}
		if text := words.Say(phrase.Of(key, given...)); strings.Contains(text, "MISSING") ||
			strings.Contains(text, "EXTRA") {
			t.Errorf("%s: %s is given %d things: %q", file, key, args, text)
		}
	})
	if n < 100 {
		t.Fatalf("only %d calls", n)
	}
}

// said is the key that a call of phrase.Of or phrase.On is written with, and how many
// things it gives; no key where that is no such call or not all is written out.
func said(n ast.Node) (key string, args int) {
	call, ok := n.(*ast.CallExpr)
	if !ok || call.Ellipsis.IsValid() {
		return "", 0
	}
	f, ok := call.Fun.(*ast.SelectorExpr)
	if !ok {
		return "", 0
	}
	if x, ok := f.X.(*ast.Ident); !ok || x.Name != "phrase" {
		return "", 0
	}
	at := map[string]int{"Of": 0, "On": 1}
	i, ok := at[f.Sel.Name]
	if !ok || len(call.Args) <= i {
		return "", 0
	}
	key, _ = literal(call.Args[i])
	return key, len(call.Args) - i - 1
}
