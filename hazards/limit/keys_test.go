package limit_test

import (
	"bytes"
	"os"
	"slices"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/schemas"
	"etchbound/schemas/field"
)

// Every key of the schema stands in the table and the other way round.
func TestKeysAreThoseOfTheSchema(t *testing.T) {
	want, got := []string{}, []string{}
	for _, d := range schemas.Describe("limits") {
		want = append(want, d.Path)
	}
	for _, f := range limit.Fields() {
		got = append(got, f.Path)
	}
	slices.Sort(want)
	slices.Sort(got)
	if len(want) < 13 || !slices.Equal(want, got) {
		t.Errorf("the schema has %v\nthe table has %v", want, got)
	}
}

// Every key of a file is kept, and can be taken out.
func TestEveryKeyIsKept(t *testing.T) {
	text, err := os.ReadFile("../../testdata/keys/limits.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s, problems, err := limit.Load("l.yaml", bytes.NewReader(text), figure.Units{})
	if err != nil || s == nil {
		t.Fatalf("%v %v", err, problems)
	}
	local := limit.Base().With(s).OwnFile()
	local.Limits = local.Limits[:1]
	n := 0
	local.Visit(func(x field.Seen) {
		if n++; !x.Value.Stated() {
			t.Errorf("%s is lost", x.At)
		}
		if x.Path == "limits" || x.Path == "entries" || x.Path == "entries[].value" {
			return
		}
		if x.Value.Clear(); x.Value.Stated() && x.Path != "entries[].document" {
			t.Errorf("%s is still %q", x.At, x.Value)
		}
	})
	if n != len(limit.Fields()) {
		t.Errorf("%d keys of %d are shown", n, len(limit.Fields()))
	}
}
