package words_test

import (
	"go/ast"
	"os"
	"slices"
	"strings"
	"testing"

	"etchbound/hazards/meeting"
	"etchbound/hazards/phrase"
	"etchbound/reports/words"
)

// joined are the keys that are joined from a part and an id of a limit, a quantity or
// a fact.
var joined = []string{"material.stands.",
	"finding.", "need.", "hold.finding.", "hold.", "limit.", "document.", "upset.how.", "lever.",
	"lever.new.", "left."}

// tabled are the keys that are joined from a part and the id of a row of a table.
var tabled = map[string]string{"order.": "../../hazards/order/rules.csv", "mix.": "../../hazards/meeting/pairs.csv",
	"upset.how.": "../../hazards/upset/mistaken.csv"}

// ids are those of the rows of a table, which may bear one twice: of pairs, how they are
// mixed.
func ids(t *testing.T, file string) []string {
	if strings.HasSuffix(file, "pairs.csv") {
		return mixed()
	}
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for line := range strings.Lines(string(text)) {
		if id, _, ok := strings.Cut(line, ","); ok && !strings.HasPrefix(line, "#") && id != "id" {
			out = append(out, id)
		}
	}
	return out
}

func mixed() []string {
	var out []string
	for _, p := range meeting.Mixtures() {
		out = append(out, p.Mixed)
	}
	return out
}

// Every row of those tables has its sentence.
func TestEveryRowHasItsSentence(t *testing.T) {
	rows := words.Phrases()
	for part, file := range tabled {
		all := ids(t, file)
		if len(all) < 2 {
			t.Errorf("only %d rows in %s", len(all), file)
		}
		for _, id := range all {
			if !slices.Contains(rows, part+id) {
				t.Errorf("%s: nothing says %q", file, part+id)
			}
		}
	}
}

// Every key that the code names has its sentence, and every sentence has a key that the
// code names, whole or as what stands behind a part.
func TestEveryKeyHasItsSentence(t *testing.T) {
	all, _ := literals(t)
	rows := words.Phrases()
	for key := range keysOf(t) {
		if _, row := tabled[key]; !row && !slices.Contains(rows, key) && !slices.Contains(joined, key) {
			t.Errorf("nothing says %q", key)
		}
	}
	for _, row := range rows {
		key := row
		if one := strings.TrimSuffix(strings.TrimSuffix(row, ".each"), ".all"); slices.Contains(rows, one) {
			key = one // said of several things, in a list
		}
		named := all[key] || slices.ContainsFunc(joined, func(part string) bool {
			id, ok := strings.CutPrefix(key, part)
			return ok && all[part] && all[id]
		})
		for part, file := range tabled {
			id, ok := strings.CutPrefix(key, part)
			named = named || ok && slices.Contains(ids(t, file), id)
		}
		if !named {
			t.Errorf("no code says %q", row)
		}
	}
}

// keysOf are the keys that calls of phrase.Of are written with, or begin with.
func keysOf(t *testing.T) map[string]bool {
	t.Helper()
	out := map[string]bool{}
	inspect(t, func(_ string, n ast.Node) {
		call, ok := n.(*ast.CallExpr)
		if !ok || len(call.Args) == 0 {
			return
		}
		f, ok := call.Fun.(*ast.SelectorExpr)
		if !ok || f.Sel.Name != "Of" && f.Sel.Name != "On" {
			return
		}
		if x, ok := f.X.(*ast.Ident); !ok || x.Name != "phrase" {
			return
		}
		key := call.Args[0]
		if f.Sel.Name == "On" { // the first is the sheet
			key = call.Args[1]
		}
		if b, ok := key.(*ast.BinaryExpr); ok {
			key = b.X
		}
		if text, ok := literal(key); ok {
			out[text] = true
		}
	})
	if len(out) < 20 {
		t.Fatalf("only %d keys", len(out))
	}
	return out
}

func TestPhrasesInWords(t *testing.T) {
	for _, c := range []struct {
		says phrase.Phrase
		want string
	}{
		{phrase.Phrase{}, ""},
		{phrase.As("100 % as it stands"), "100 % as it stands"},
		{phrase.Of("fact.salt_ratio", "lithium fluoride", 1.6, phrase.Of("fact.salt_ratio_strength", 3.0), phrase.Phrase{}),
			"lithium fluoride: 1.6 g, 3 mol/L of the liquid so far."},
		{phrase.Of("limit.for_minutes", "AEGL-2", 480.0), "AEGL-2 for 8 h"},
		{phrase.Of("limit.for_minutes", "AEGL-2", 60.0), "AEGL-2 for 60 min"},
		{phrase.Of("air.until_ppm", 1.2e-7).And(phrase.Of("content.fullest", 2)),
			"near the source, from the moment it gives off so much, to 1.2 × 10⁻⁷ ppmas it is filled in step 2"},
		{phrase.Of("finding.within").And(phrase.Of("finding.judged_by", "heat.mtsr@2")),
			"Within the stated limit under the stated assumptions. Judged by heat.mtsr@2, which is higher."},
	} {
		if got := words.Say(c.says); got != c.want {
			t.Errorf("%+v: %q, want %q", c.says, got, c.want)
		}
	}
}
