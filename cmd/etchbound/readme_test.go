package main

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"etchbound/schemas/long"
)

var update = flag.Bool("update", false, "write the outputs in the README anew")

// printedThere finds an output in the README: a command, and what part of it is shown.
var printedThere = regexp.MustCompile(`(?s)<!-- ([a-z]+ [^\n]*?)` +
	`(?:, from "([^"]*)" to "([^"]*)"|, as it is printed) -->\n.*?<!-- end of output -->`)

// The README shows what the program says, and no milder version of it:
// `go test ./cmd/etchbound -run Readme -update` writes it.
func TestReadmeShowsWhatIsPrinted(t *testing.T) {
	long.NotShort(t)
	readme := filepath.Join(home, "..", "..", "README.md")
	text, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	is := printedThere.ReplaceAllStringFunc(string(text), func(was string) string {
		n++
		m := printedThere.FindStringSubmatch(was)
		head, _, _ := strings.Cut(was, "\n")
		return head + "\n" + excerpt(t, strings.Fields(m[1]), m[2], m[3]) + "<!-- end of output -->"
	})
	if n < 2 {
		t.Errorf("%d outputs are marked", n)
	}
	switch {
	case is == string(text):
	case !*update:
		t.Fatal("the README shows another output than is printed: go test ./cmd/etchbound -run Readme -update")
	default:
		if err := os.WriteFile(readme, []byte(is), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// excerpt is what a command prints: Markdown between two headings, or text.
func excerpt(t *testing.T, args []string, from, to string) string {
	t.Helper()
	out := call(t, filepath.Join(home, "..", ".."), nil, args...).out
	if from == "" {
		return "\n```\n" + strings.TrimSpace(out) + "\n```\n\n"
	}
	_, rest, found := strings.Cut(out, from+"\n")
	part, _, ends := strings.Cut(rest, to+"\n")
	if !found || !ends {
		t.Fatalf("%v prints nothing from %q to %q", args, from, to)
	}
	return "\n" + strings.ReplaceAll(strings.TrimSpace(part), "## Hold points", "Hold points:") + "\n\n"
}

// The starter and the slip in it that the README shows are the ones the program writes
// and refuses.
func TestReadmeShowsTheStarter(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(home, "..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	starter := call(t, dir, nil, "starter", "salt-acid", "--precursor", "Ti3AlC2", "--batch", "2 g").out
	_, rest, _ := strings.Cut(starter, "  - do: charge\n")
	charge := "  - do: charge\n" + strings.Join(strings.SplitAfterN(rest, "\n", 5)[:4], "")
	put(t, dir, "mine.yaml", strings.Replace(starter, "volume: 66 mL}", "volume: 66}", 1))
	refused := call(t, dir, nil, "check", "mine.yaml").err
	for _, want := range []string{charge, refused} {
		if len(want) < 100 || !strings.Contains(string(text), want) {
			t.Errorf("the README does not show\n%s", want)
		}
	}
}
