package main

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"etchbound/schemas/long"
)

// Whoever reads a brief review reads the page 1 of the whole one, as the command writes
// both: nothing on it is milder because less stands behind it.
func TestABriefReviewHasTheSamePageOne(t *testing.T) {
	long.Only(t)
	list, err := filepath.Glob(filepath.Join(routes(t), "*.yaml"))
	if err != nil || len(list) == 0 {
		t.Fatal("no routes", err)
	}
	site, limits := filepath.Join(routes(t), "site-demo.yaml"), filepath.Join(routes(t), "limits-demo.yaml")
	var all [][]string
	for _, path := range list {
		if path != site && path != limits {
			all = append(all, []string{path}, []string{path, "--site", site, "--limits", limits})
		}
	}
	formats := [...]struct{ format, at string }{{"markdown", "\n## "}, {"html", `<div class="paper list">`}}
	for i := 0; i < len(all); i += 2 { // every second route at the site, and in turn in both formats
		args, ends := all[i+i/2%2], formats[i/4%2]
		whole := firstPage(t, ends.at, append([]string{"review", "--format", ends.format}, args...))
		brief := firstPage(t, ends.at, append([]string{"review", "--brief", "--format", ends.format}, args...))
		if whole != brief {
			t.Errorf("%v: page 1 as %s differs from that of the brief review: %s", args, ends.format,
				firstDifference(whole, brief))
		}
	}
}

// leads is a link to a section, which a brief review does not have.
var leads = regexp.MustCompile(`<a href="#[a-z]+">([0-9]+)</a>|\[([0-9]+)\]\(#[a-z]+\)`)

// firstPage is what a command writes from the heading of the route to behind the contacts.
func firstPage(t *testing.T, ends string, args []string) string {
	t.Helper()
	r := call(t, t.TempDir(), nil, args...)
	if r.code != exitDone {
		t.Fatalf("%v: exit code %d: %s", args, r.code, r.err)
	}
	from := 0
	if at := strings.Index(r.out, "<main>"); at >= 0 {
		from = at
	}
	last := strings.Index(r.out[from:], "Contacts")
	if last < 0 {
		t.Fatalf("%v: no page 1 in\n%.200s", args, r.out)
	}
	to := strings.Index(r.out[from+last:], ends)
	if to < 0 {
		t.Fatalf("%v: nothing follows page 1", args)
	}
	return leads.ReplaceAllString(r.out[from:from+last+to], "$1$2")
}
