package reports

import (
	"bytes"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports/document"
	"etchbound/reports/draft"
	"etchbound/reports/words"
	"etchbound/schemas/long"
)

// bundledReviews are the reviews of every bundled route, by file name, and of two in
// the short form.
func bundledReviews(t *testing.T) map[string]hazards.Review {
	t.Helper()
	return someReviews(t, 100, 2)
}

// someReviews are as many as the form of the tests asks for.
func someReviews(t *testing.T, usual, short int) map[string]hazards.Review {
	t.Helper()
	names, err := filepath.Glob("../testdata/routes/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	heads := map[string][]byte{}
	for _, n := range names {
		head, err := os.ReadFile(n)
		if err != nil {
			t.Fatal(err)
		}
		if !regexp.MustCompile(`(?m)^route:`).Match(head) {
			continue
		}
		heads[filepath.Base(n)] = head
	}
	if len(heads) < 5 {
		t.Fatalf("only %d bundled routes", len(heads))
	}
	out := map[string]hazards.Review{}
	for _, n := range long.Some(slices.Sorted(maps.Keys(heads)), usual, short) {
		out[n] = reviewOf(t, n, heads[n])
	}
	return out
}

// reviewed are the reviews that tests have asked for, by the text of the route. Nobody
// changes what he gets.
var reviewed sync.Map

func reviewOf(t *testing.T, name string, file []byte) hazards.Review {
	t.Helper()
	if r, ok := reviewed.Load(string(file)); ok {
		return r.(hazards.Review)
	}
	r, problems, err := route.Load(name, bytes.NewReader(file))
	if err != nil || r == nil {
		t.Fatalf("%s: %v %v", name, err, problems)
	}
	c, err := route.NewCase(r, nil, nil)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	review, err := hazards.Make(c)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	reviewed.Store(string(file), review)
	return review
}

// verdictWords are the words no generated text may give as a verdict; a source
// title or the writer's own prose is not ours, and the fixture holds none.
var verdictWords = regexp.MustCompile(`(?i)\b(safe|approved|compliant)\b`)

func TestForbiddenWords(t *testing.T) {
	for name, b := range written(t) {
		if m := verdictWords.FindAll(b, -1); m != nil {
			t.Errorf("%s says %q", name, m)
		}
	}
	for name, r := range bundledReviews(t) {
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
	for name, r := range bundledReviews(t) {
		b := newBuilder(&r, draft.Options{})
		_, there := b.ByID[figure.ID{Quantity: "fluoride.hf_equivalent"}]
		d := Build(r, draft.Options{Brief: true})
		var m bytes.Buffer
		if err := document.Markdown(&m, document.Document{Sections: d.Sections[:1]}); err != nil {
			t.Fatal(err)
		}
		if said := strings.Contains(m.String(), "**HF is present: "); said != there {
			t.Errorf("%s: fluoride figure %v, HF named %v", name, there, said)
		}
	}
}

func TestEveryFigureOfEveryRouteExplains(t *testing.T) {
	for name, r := range someReviews(t, 3, 1) {
		for i := range r.Figures {
			var b bytes.Buffer
			if err := Explain(&b, r, r.Figures[i].ID.String()); err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if strings.Contains(b.String(), "NaN") || strings.Contains(b.String(), words.Of("sheets.none")) {
				t.Errorf("%s: %s has no working:\n%s", name, r.Figures[i].ID.String(), b.String())
			}
		}
	}
}
