package reports

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"etchbound/hazards"
	"etchbound/reports/document"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

// Who stands before a door is told what is inside, until when and whom to call, and
// nothing that has to be done inside: no rule of the bench, no minutes that read as time
// allowed.
func TestTheDoorAsksNobodyIn(t *testing.T) {
	long.Only(t)
	minutes := regexp.MustCompile(`[0-9]+(\.[0-9]+)? (min|s)\b`)
	for _, c := range together(t, "demo-lif-hcl-2g.yaml", "tmaoh-half-gram.yaml", "hf-50-10g.yaml") {
		name := c.Route.Title
		r, err := hazards.Make(c)
		if err != nil {
			t.Fatal(err)
		}
		d := Build(r, Options{})
		for _, s := range d.Sections {
			if s.Key != "door" {
				continue
			}
			var b bytes.Buffer
			if err := document.Markdown(&b, document.Document{Title: "door", Sections: []document.Section{s}}); err != nil {
				t.Fatal(err)
			}
			text := b.String()
			for key, rule := range words.Fixed() {
				if (strings.HasPrefix(key, "first.") || strings.HasPrefix(key, "ready.")) && len(rule) > 20 &&
					!strings.Contains(rule, "%") && strings.Contains(text, rule) {
					t.Errorf("%s: the door says %q", name, rule)
				}
			}
			if found := minutes.FindString(text); found != "" {
				t.Errorf("%s: the door says %s", name, found)
			}
			if strings.Contains(name, "tetramethylammonium") != strings.Contains(text, "TMAOH") {
				t.Errorf("%s: the door does not tell of TMAOH", name)
			}
			for _, key := range []string{"door.alarm", "door.end", "door.person", "contacts.emergency"} {
				if !strings.Contains(text, words.Of(key)) {
					t.Errorf("%s: the door lacks %q", name, words.Of(key))
				}
			}
		}
	}
}
