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
	"etchbound/chemicals/material"
	"etchbound/hazards/figure"
	"etchbound/hazards/meeting"
	"etchbound/hazards/phrase"
	"etchbound/hazards/upset"
	"etchbound/reports/number"
	"etchbound/reports/words"
)

// Every sentence the code asks for exists, and every one that exists is asked
// for, outright or by a key made from data.
func TestSentences(t *testing.T) {
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
		`signoff|values|upset|col|first|prevent|ignition|part|measure|worn|curve|growth|change|compare|sampling|` +
		`stock)\.|^values\.none_`)
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

// The rows of the rules have statuses and known tags.
func TestRules(t *testing.T) {
	for _, p := range meeting.Pairs() {
		if p.Status == "" || p.Source == "" || !words.Has("severity."+p.Severity) {
			t.Errorf("pair %s: %+v", p.ID, p)
		}
	}
	for _, m := range material.Media() {
		if !words.Has("medium." + m) {
			t.Errorf("no word for the medium %s", m)
		}
	}
	for v := material.Yes; v <= material.No; v++ {
		if !words.Has("suited." + v.String()) {
			t.Errorf("no word for the verdict %s", v)
		}
	}
	for _, g := range safeguardRules() {
		if g.status == "" || g.source == "" || !words.Has("order."+g.order) {
			t.Errorf("safeguard %+v", g)
		}
	}
}

// Pairs that reviewers expect to be raised, from the check list in the rules of
// the committee: salt and acid give HF, DMSO meets acid, an ammonium salt meets
// lime, persulfate meets hydrochloric acid.
func TestExpectedPairs(t *testing.T) {
	for _, c := range []struct{ a, b, want string }{
		{"lithium fluoride", "hydrochloric acid", "acid_fluoride_salt"},
		{"dmso", "hydrochloric acid", "dmso_acid"},
		{"ammonium bifluoride", "calcium hydroxide", "base_ammonium"},
		{"ammonium persulfate", "hydrochloric acid", "persulfate_chloride"},
		{"sodium hydrogencarbonate", "hydrofluoric acid", "carbonate_acid"},
		{"hydrogen peroxide", "ethanol", "oxidant_organic"},
	} {
		x := meeting.Contents{Tags: meeting.Tags{}}
		for _, name := range []string{c.a, c.b} {
			s, ok := chemicals.Library().Find(name)
			if !ok {
				t.Fatalf("the library lacks %s", name)
			}
			x.Tags.Add(1, s.Classes()...)
		}
		found := false
		for _, p := range meeting.Pairs() {
			found = found || x.Tags.Has(p.A) && x.Tags.Has(p.B) && p.ID == c.want
		}
		if !found {
			t.Errorf("%s with %s does not raise %s: tags %v", c.a, c.b, c.want, x.Tags)
		}
	}
	if s, _ := chemicals.Library().Find("water"); len(s.Classes()) != 0 {
		t.Errorf("water is of %v", s.Classes())
	}
}

func TestCSVGuard(t *testing.T) {
	for in, want := range map[string]string{"=1+1": "'=1+1", "+x": "'+x", "-x": "'-x", "@x": "'@x", "\t=x": "'=x",
		"a=b": "a=b", "": ""} {
		if got := guard(in); got != want {
			t.Errorf("guard(%q) = %q", in, got)
		}
	}
	r := fixture()
	r.Figures[1].Conditions = phrase.As("=HYPERLINK(1)\nx")
	var b bytes.Buffer
	if err := CSV(&b, r); err != nil {
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
	err := Explain(&bytes.Buffer{}, fixture(), "heat.adiabatic_rize@3")
	if err == nil || !strings.Contains(err.Error(), "heat.adiabatic_rise@3") {
		t.Errorf("%v", err)
	}
}

func TestWriteData(t *testing.T) {
	for query, want := range map[string]string{"weight.Ti": "47.867 g/mol", "weight": "weight.Al",
		"etch_heat.Ti3AlC2": "685 to 835"} {
		var b bytes.Buffer
		if err := WriteData(&b, chemicals.Base(), query); err != nil {
			t.Errorf("%s: %v", query, err)
		}
		if !strings.Contains(b.String(), want) || !strings.Contains(b.String(), "\nSources\n") {
			t.Errorf("%s: %s", query, b.String())
		}
	}
	if err := WriteData(&bytes.Buffer{}, chemicals.Base(), "weight.Tj"); err == nil ||
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
