package reports

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/fixture"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

// verdictWords are the words no generated text may give as a verdict; a source
// title or the writer's own prose is not ours, and the fixture holds none.
var verdictWords = regexp.MustCompile(`(?i)\b(safe|approved|compliant)\b`)

func TestForbiddenWords(t *testing.T) {
	long.Only(t)
	for name, b := range written(t) {
		if m := verdictWords.FindAll(b, -1); m != nil {
			t.Errorf("%s says %q", name, m)
		}
	}
	for name, r := range fixture.Bundled(t) {
		var b bytes.Buffer
		if err := document.Markdown(&b, Build(r, fixtureOptions)); err != nil {
			t.Fatal(err)
		}
		if m := verdictWords.FindAll(b.Bytes(), -1); m != nil {
			t.Errorf("%s says %q", name, m)
		}
	}
	for key, s := range words.Fixed() {
		if verdictWords.MatchString(s) {
			t.Errorf("sentence %s: %s", key, s)
		}
	}
}

// HF has to be named wherever a fluoride meets an acid.
func TestHFIsNamedOnPageOne(t *testing.T) {
	long.NotShort(t)
	for name, r := range fixture.Bundled(t) {
		b := newBuilder(&r, draft.Options{})
		_, there := b.ByID[figure.ID{Quantity: "fluoride.hf_equivalent"}]
		d := Build(r, draft.Options{Brief: true})
		var m bytes.Buffer
		if err := document.Markdown(&m, document.Document{Sections: d.Sections[:1]}); err != nil {
			t.Fatal(err)
		}
		if said := strings.Contains(m.String(), "**Hydrofluoric acid: "); said != there {
			t.Errorf("%s: fluoride figure %v, HF named %v", name, there, said)
		}
	}
}
