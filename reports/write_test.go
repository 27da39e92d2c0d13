package reports

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"etchbound/reports/book"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/record"
)

var update = flag.Bool("update", false, "write the golden files anew")

var fixtureOptions = draft.Options{Version: "0.0", DataVersion: "test", DataDigest: strings.Repeat("ab", 32),
	Platform: "test/test"}

// written is the fixture in every format, by file name.
func written(t *testing.T) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	keep := func(name string, write func(*bytes.Buffer) error) {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		out[name] = b.Bytes()
	}
	brief := fixtureOptions
	brief.Brief = true
	keep("review.md", func(b *bytes.Buffer) error { return document.Markdown(b, Build(fixture.Review(), fixtureOptions)) })
	keep("review.html", func(b *bytes.Buffer) error { return document.HTML(b, Build(fixture.Review(), fixtureOptions)) })
	keep("brief.md", func(b *bytes.Buffer) error { return document.Markdown(b, Build(fixture.Review(), brief)) })
	keep("review.json", func(b *bytes.Buffer) error { return record.JSON(b, fixture.Review(), fixtureOptions) })
	keep("figures.csv", func(b *bytes.Buffer) error { return record.CSV(b, fixture.Review()) })
	keep("explain.txt", func(b *bytes.Buffer) error {
		return book.Explain(b, fixture.Review(), "gas.closed.pressure@waste_bottle")
	})
	keep("explain_rise.txt", func(b *bytes.Buffer) error {
		return book.Explain(b, fixture.Review(),
			"heat.adiabatic_rise")
	})
	return out
}

// The golden files pin what the writers do with the fixture. They are our own
// output: they catch change, they do not prove that it was right.
func TestGolden(t *testing.T) {
	for name, got := range written(t) {
		path := filepath.Join("testdata", name)
		if *update {
			if err := os.WriteFile(path, got, 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s differs from its golden file at %s", name, firstDifference(got, want))
		}
	}
}

func firstDifference(a, b []byte) string {
	la, lb := strings.Split(string(a), "\n"), strings.Split(string(b), "\n")
	for i := range min(len(la), len(lb)) {
		if la[i] != lb[i] {
			return "\n got " + la[i] + "\nwant " + lb[i]
		}
	}
	return "its length"
}

func TestSameBytesEveryTime(t *testing.T) {
	a, b := written(t), written(t)
	for name := range a {
		if !bytes.Equal(a[name], b[name]) {
			t.Errorf("%s is not the same twice", name)
		}
	}
}
