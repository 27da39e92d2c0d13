package route_test

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/schemas"
)

// corpus are files as people wrote them at some time; none is changed later.
const corpus = "../../testdata/corpus"

// refusedSince are files of the corpus that are refused today, with what has
// become of them; each problem then has to give the line to write instead.
var refusedSince = map[string]string{}

// loadAny reads a file of any kind, by the key that names its format.
func loadAny(t *testing.T, name string, text []byte) (whole bool, problems []schemas.Problem) {
	t.Helper()
	kind := regexp.MustCompile(`(?m)^(route|site|limits): etchbound/`).FindSubmatch(text)
	if kind == nil {
		t.Fatalf("%s does not name its format", name)
	}
	var err error
	switch string(kind[1]) {
	case "route":
		var r *route.Route
		if r, problems, err = route.Load(name, bytes.NewReader(text)); r != nil {
			_, err = route.NewCase(r, nil, nil)
			whole = true
		}
	case "site":
		var s *route.Site
		s, problems, err = route.LoadSite(name, bytes.NewReader(text))
		whole = s != nil
	case "limits":
		var l *limit.Set
		l, problems, err = limit.Load(name, bytes.NewReader(text), figure.Units{})
		whole = l != nil
	}
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return whole, problems
}

// What loaded once loads, or is refused with what to write instead.
func TestCorpusLoads(t *testing.T) {
	names, err := filepath.Glob(filepath.Join(corpus, "*", "*.yaml"))
	if err != nil || len(names) < 30 {
		t.Fatalf("only %d files in %s: %v", len(names), corpus, err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		at := filepath.Base(filepath.Dir(name)) + "/" + filepath.Base(name)
		whole, problems := loadAny(t, at, text)
		if whole == schemas.Refused(problems) {
			t.Errorf("%s: loaded %v with the problems %v", at, whole, problems)
		}
		if why := refusedSince[at]; whole != (why == "") {
			t.Errorf("%s: loaded %v, said to be refused for %q: %v", at, whole, why, problems)
		}
		for _, p := range problems {
			if p.Severity == schemas.Error && !strings.Contains(p.Hint, "write") {
				t.Errorf("%s is refused without the line to write instead: %v", at, p)
			}
		}
	}
}
