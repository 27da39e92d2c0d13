package route_test

import (
	"flag"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/schemas"
	"etchbound/schemas/field"
	"etchbound/schemas/long"
)

var update = flag.Bool("update", false, "write the tables of keys in the README anew")

const readme = "../../README.md"

// The tables of keys in the README are those of the schemas and of the table of keys:
// `go test ./hazards/route -run Readme -update` writes them.
func TestReadmeListsTheKeys(t *testing.T) {
	long.NotShort(t)
	text, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	marked := regexp.MustCompile(`(?s)<!-- keys of (\S+)( below \S+)? -->\n.*?<!-- end of keys -->`)
	is := marked.ReplaceAllStringFunc(string(text), func(was string) string {
		n++
		m := marked.FindStringSubmatch(was)
		head, _, _ := strings.Cut(was, "\n")
		return head + "\n" + keyTable(t, m[1], strings.TrimPrefix(m[2], " below ")) + "<!-- end of keys -->"
	})
	if n < 8 {
		t.Errorf("%d tables are marked", n)
	}
	if is == string(text) {
		return
	}
	if !*update {
		t.Fatal("the README lists other keys than there are: go test ./hazards/route -run Readme -update")
	}
	if err := os.WriteFile(readme, []byte(is), 0o644); err != nil {
		t.Fatal(err)
	}
}

// keyTable is the keys of a kind of file that stand below a path, "" for the top.
func keyTable(t *testing.T, file, below string) string {
	t.Helper()
	fields := map[string][]field.Field{"route": route.Fields(), "site": route.SiteFields(), "limits": limit.Fields()}[file]
	rules := map[string]schemas.Described{}
	for _, d := range schemas.Describe(file) {
		rules[d.Path] = d
	}
	var rows [][]string
	batch := false
	for _, f := range fields {
		if name, ok := under(f.Path, below, file); ok {
			d := rules[f.Path]
			batch = batch || f.Scale != field.Fixed
			rows = append(rows, []string{name, neededIn(d), what(d, f), grows(f)})
		}
	}
	if len(rows) < 3 {
		t.Errorf("%s below %q has %d keys", file, below, len(rows))
	}
	out, columns := "| key | needed | what it is |\n|---|---|---|\n", 3
	if batch {
		out, columns = "| key | needed | what it is | in another batch |\n|---|---|---|---|\n", 4
	}
	for _, r := range rows {
		out += "| " + strings.Join(r[:columns], " | ") + " |\n"
	}
	return out
}

// under is the name of a key in the table of a map; false where it belongs to another
// table. A map inside a map stands in the same table, a list of maps in its own.
func under(path, below, file string) (string, bool) {
	rest := path
	if below != "" {
		var ok bool
		if rest, ok = strings.CutPrefix(path, below+"."); !ok {
			return "", false
		}
	}
	parts := strings.Split(rest, ".")
	ownTable := file == "route" && below == "" && len(parts) > 1
	if ownTable || strings.Contains(rest, "[]") || strings.Contains(rest, "*") {
		return "", false
	}
	for i := range parts {
		parts[i] = "`" + parts[i] + "`"
	}
	return strings.Join(parts, ": "), true
}

func neededIn(d schemas.Described) string {
	switch {
	case d.Required:
		return "always"
	case len(d.NeededBy) > 0:
		return strings.Join(d.NeededBy, ", ")
	}
	return ""
}

func what(d schemas.Described, f field.Field) string {
	text := d.Text
	if words := d.Words; len(words) > 0 && f.Key != "do" {
		for i := range words {
			words[i] = "`" + words[i] + "`"
		}
		text += " One of " + strings.Join(words, " ") + "."
	}
	if f.Kind == field.Quantity && f.Range == field.NoRange {
		text += " Without a range."
	}
	if n := len(d.TakenBy); n > 0 && n <= 12 {
		text += " Only for " + strings.Join(d.TakenBy, ", ") + "."
	} else if refused := refusedBy(d); n > 0 && len(refused) > 0 {
		text += " Not for " + strings.Join(refused, ", ") + "."
	}
	return text
}

func refusedBy(d schemas.Described) []string {
	var out []string
	for _, x := range schemas.Describe("route") {
		if x.Path == "steps[].do" {
			out = slices.DeleteFunc(slices.Clone(x.Words), func(v string) bool { return slices.Contains(d.TakenBy, v) })
		}
	}
	return out
}

func grows(f field.Field) string {
	switch f.Scale {
	case field.Grows:
		return "grows along"
	case field.GrowsUnlessKept:
		return "grows along without `keep`"
	case field.GrowsAsVolume:
		return "a volume grows along"
	}
	return ""
}
