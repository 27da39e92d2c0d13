package reports

import (
	"bytes"
	"encoding/csv"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"etchbound/chemicals"
	"etchbound/hazards/figure"
	"etchbound/hazards/phrase"
	"etchbound/hazards/upset"
	"etchbound/reports/book"
	"etchbound/reports/fixture"
	"etchbound/reports/number"
	"etchbound/reports/record"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

// Every sentence the code asks for exists, and every one that exists is asked
// for, outright or by a key made from data.
func TestSentences(t *testing.T) {
	long.NotShort(t)
	var source bytes.Buffer
	err := filepath.WalkDir(".", func(name string, d fs.DirEntry, err error) error {
		kind := filepath.Ext(name)
		if err != nil || kind != ".go" && kind != ".html" || strings.HasSuffix(name, "_test.go") || strings.HasPrefix(name,
			"testdata") {
			return err
		}
		b, err := os.ReadFile(name)
		source.Write(b)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	code := source.String()
	asked := regexp.MustCompile(`(?:\bsay |words\.Of\()\s*"([a-z0-9_.-]+[a-z0-9])"`)
	for _, m := range asked.FindAllStringSubmatch(code, -1) {
		if !words.Has(m[1]) {
			t.Errorf("no sentence %s", m[1])
		}
	}
	made := regexp.MustCompile(`^(title|status|verdict|place|case|basis|verb|order|medium|suited|severity|local|` +
		`signoff|values|upset|col|first|prevent|ignition|part|measure|worn|curve|vapour|growth|change|compare|sampling|` +
		`stock|matrix|signal|rinsed|receiving|keep\.(is|brings|waste|sign|look|discard))\.|^values\.none_|` +
		`^temperatures\.room_|^pace\.(limit|kind)\.|^offgas\.(row|note|two_phase)\.|^speciated\.why\.|^campaign\.flow\.`)
	for key := range words.Fixed() {
		if !made.MatchString(key) && key != "key" && !strings.Contains(code, `"`+key+`"`) {
			t.Errorf("sentence %s is never said", key)
		}
	}
}

func TestEveryCatalogueLabelIsUnderstood(t *testing.T) {
	for _, q := range figure.Catalogue() {
		if number.LabelOf(q.Name) == q.Name || number.DigitsOf(q.Name) == 0 {
			t.Errorf("%s has no label or digits", q.Name)
		}
	}
}

func TestCSVGuard(t *testing.T) {
	for in, want := range map[string]string{"=1+1": "'=1+1", "+x": "'+x", "-x": "'-x", "@x": "'@x", "\t=x": "'=x",
		"a=b": "a=b", "": ""} {
		if got := record.Guard(in); got != want {
			t.Errorf("guard(%q) = %q", in, got)
		}
	}
	r := fixture.Review()
	r.Figures[1].Conditions = phrase.As("=HYPERLINK(1)\nx")
	var b bytes.Buffer
	if err := record.CSV(&b, r); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != len(r.Figures)+1 || rows[2][12] != "'=HYPERLINK(1) x" {
		t.Errorf("%d rows, %q", len(rows), rows[2][12])
	}
	for i, f := range r.Figures {
		if f.Value.Unknown() && rows[i+1][7] != "" {
			t.Errorf("%s: unknown prints as %q", f.ID.String(), rows[i+1][7])
		}
	}
}

func TestExplainOffersTheNearest(t *testing.T) {
	err := book.Explain(&bytes.Buffer{}, fixture.Review(), "heat.adiabatic_rize@3")
	if err == nil || !strings.Contains(err.Error(), "heat.adiabatic_rise@3") {
		t.Errorf("%v", err)
	}
}

func TestWriteData(t *testing.T) {
	for query, want := range map[string]string{"weight.Ti": "47.867 g/mol", "weight": "weight.Al",
		"etch_heat.Ti3AlC2": "685 to 835"} {
		var b bytes.Buffer
		if err := book.WriteData(&b, chemicals.Base(), query); err != nil {
			t.Errorf("%s: %v", query, err)
		}
		if !strings.Contains(b.String(), want) || !strings.Contains(b.String(), "\nSources\n") {
			t.Errorf("%s: %s", query, b.String())
		}
	}
	if err := book.WriteData(&bytes.Buffer{}, chemicals.Base(), "weight.Tj"); err == nil ||
		!strings.Contains(err.Error(), "weight.T") {
		t.Errorf("%v", err)
	}
}

// Every failure has its name and what would have kept it from happening.
func TestEveryFailureHasItsWords(t *testing.T) {
	for _, key := range upset.Keys() {
		for _, k := range []string{"case." + key, "prevent." + key} {
			if !words.Has(k) {
				t.Errorf("no sentence %s", k)
			}
		}
	}
}
