package main

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"etchbound/reports"
)

// The version that runs is the newest of the list, versions stand together, and
// a format that is not the first of its name has a row.
func TestChangesAreListed(t *testing.T) {
	all := allChanges()
	if all[0].version != version {
		t.Errorf("the newest change is of %s, this is %s", all[0].version, version)
	}
	done, told := map[string]bool{}, map[string]bool{}
	for i, c := range all {
		if i > 0 && c.version != all[i-1].version {
			done[all[i-1].version] = true
		}
		if done[c.version] {
			t.Errorf("%s stands apart from the rest of %s", c.name, c.version)
		}
		if c.kind == "format" {
			told[c.name] = true
		}
	}
	for _, name := range reports.Outputs() {
		text, _, err := reports.Schema(name)
		if err != nil {
			t.Fatal(err)
		}
		var s struct {
			Properties struct{ Format struct{ Const string } }
		}
		if err := json.Unmarshal(text, &s); err != nil {
			t.Fatal(err)
		}
		format := s.Properties.Format.Const
		if format != "" && !strings.HasSuffix(format, "/1") && !told[format] {
			t.Errorf("no row says what %s changed", format)
		}
	}
}

func TestVersionPrintsTheChanges(t *testing.T) {
	var out, msg bytes.Buffer
	if code := run([]string{"version", "--changes"}, streams{out: &out, err: &msg}); code != exitDone || msg.Len() > 0 {
		t.Fatalf("exit code %d: %s", code, msg.String())
	}
	for _, c := range allChanges() {
		if !strings.Contains(out.String(), c.name+": "+c.what+"\n") {
			t.Errorf("%s is not printed", c.name)
		}
	}
}
