package reports

import (
	"encoding/json"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"

	"etchbound/hazards"
	"etchbound/hazards/route"
	"etchbound/schemas/long"
)

// slip is what no reader should meet: a number that is none, a format that got
// the wrong arguments, a name that was not given, a place counted from 0.
var slip = regexp.MustCompile(`\bNaN\b|[+-]?\bInf\b|\bInfinity\b|%!|<nil>|\bmap\[|` +
	`a value this review needs|\bsteps \d+(?: [^ta]|[.;)<]|$)|\bundefined\b|\(\)|: ;|,,|\(, |-0(\.0+)? [a-zA-Z]`)

// countedFromZero is a path as programs have it; people count steps from 1.
var countedFromZero = regexp.MustCompile(`(steps|what|impurities|points|stock)\[\d`)

// programs read these, not people.
var programs = map[string]bool{"review": true, "upset": true, "scale": true, "change": true, "compare": true,
	"stock": true, "measure": true}

// drawn is a page's own style and script, and its pictures.
var drawn = regexp.MustCompile(`(?s)^<(style|script|svg).*?</(style|script|svg)>`)

// undrawn is a page without them.
func undrawn(page string) string {
	var b strings.Builder
	for {
		at := strings.IndexByte(page, '<')
		if at < 0 {
			return b.String() + page
		}
		b.WriteString(page[:at])
		page = page[at:]
		skip := 0
		if strings.HasPrefix(page, "<s") {
			skip = len(drawn.FindString(page))
		}
		if skip == 0 {
			b.WriteByte('<')
			skip = 1
		}
		page = page[skip:]
	}
}

// without are the lines that were found to hold no slip, by whether programs read
// them: outputs have most of their lines in common.
var without [2]sync.Map

// slipsOf are the slips of a text with some of what stands around them. A CSV
// has empty cells, and a page its own style and script.
func slipsOf(kind, text string) []string {
	if kind == "html" {
		text = undrawn(text)
	}
	looks, clean := []*regexp.Regexp{slip}, &without[0]
	if !programs[kind] {
		looks, clean = append(looks, countedFromZero), &without[1]
	}
	var out []string
	for line := range strings.Lines(text) {
		if _, known := clean.Load(line); known {
			continue
		}
		n := len(out)
		for _, look := range looks {
			for _, at := range look.FindAllStringIndex(line, -1) {
				what := line[at[0]:at[1]]
				if strings.HasSuffix(kind, ".csv") && what == ",," {
					continue
				}
				out = append(out, what+" in "+line[max(0, at[0]-60):min(len(line), at[1]+60)])
			}
		}
		if len(out) == n && !strings.HasSuffix(kind, ".csv") {
			clean.Store(line, true)
		}
	}
	return out
}

// spoken are the keys of a document whose text may not be empty.
var spoken = map[string]bool{"id": true, "label": true, "text": true, "measure": true, "symbol": true,
	"element": true, "key": true, "quantity": true, "kind": true, "verdict": true, "status": true,
	"title": true, "limit": true, "format": true, "notice": true}

// lists whose texts may not be empty.
var listed = map[string]bool{"missing": true, "figures": true, "not_assessed": true, "warnings": true,
	"not_known": true}

// emptyNames are the paths in a document at which a name is empty.
func emptyNames(v any, key, at string) []string {
	var out []string
	switch v := v.(type) {
	case string:
		if v == "" && spoken[key] {
			out = append(out, at)
		}
	case []any:
		for _, x := range v {
			if x == "" && listed[key] {
				out = append(out, at+"[]")
			}
			out = append(out, emptyNames(x, "", at+"[]")...)
		}
	case map[string]any:
		for k, x := range v {
			out = append(out, emptyNames(x, k, at+"."+k)...)
		}
	}
	return out
}

func holdNoSlip(t *testing.T, o madeOutput) {
	t.Helper()
	for i, s := range slipsOf(o.kind, string(o.text)) {
		if i == 3 {
			break
		}
		t.Errorf("%s of %s: %s", o.kind, o.from, s)
	}
	var v any
	if json.Unmarshal(o.text, &v) != nil {
		return
	}
	told := map[string]bool{}
	for _, at := range emptyNames(v, "", "") {
		if !told[at] {
			t.Errorf("%s of %s: nothing stands at %s", o.kind, o.from, at)
		}
		told[at] = true
	}
}

// No output in any format holds a number that is none, an empty name or a slip
// of a format.
func TestNoOutputSlips(t *testing.T) {
	long.Only(t)
	made, err := madeOutputs()
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range made {
		if !strings.HasPrefix(o.from, "nothing stated") {
			holdNoSlip(t, o)
		}
	}
}

// Nor where a route says less: lines are taken out of bundled routes, and what
// still loads is written in every format.
func TestLessOfARouteDoesNotSlip(t *testing.T) {
	long.Only(t)
	want := 2
	switch {
	case long.Form():
		want = 6
	case testing.Short():
		want = 1
	}
	names, err := filepath.Glob(filepath.Join("..", "testdata", "routes", "*-*g.yaml"))
	if err != nil || len(names) == 0 {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(1, 2))
	for n, tries := 0, 0; n < want; tries++ {
		if tries == 300*want { // few load: a line is mostly one of a whole step
			t.Fatalf("only %d of %d routes with lines left out load", n, tries)
		}
		name := names[r.IntN(len(names))]
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		c, ok := sparse(string(text), filepath.Base(name), r)
		if !ok {
			continue
		}
		n++
		m := maker{}
		review := m.review(c)
		m.ofReview(&review, filepath.Base(name)+" with less")
		if m.err != nil {
			t.Fatal(m.err)
		}
		for _, o := range m.out {
			holdNoSlip(t, o)
		}
	}
}

// sparse is a route without some of its lines and some keys of its flow maps,
// if that loads.
func sparse(text, name string, r *rand.Rand) (route.Case, bool) {
	var kept []string
	for line := range strings.Lines(text) {
		if r.IntN(12) > 0 {
			kept = append(kept, line)
		}
	}
	text = regexp.MustCompile(`, [a-z_]+: [^,{}\[\]]+`).ReplaceAllStringFunc(strings.Join(kept, ""),
		func(s string) string {
			if r.IntN(12) == 0 {
				return ""
			}
			return s
		})
	x, _, err := route.Load(name, strings.NewReader(text))
	if err != nil || x == nil {
		return route.Case{}, false
	}
	c, err := route.NewCase(x, nil, nil)
	if err != nil || hazards.Assess(c, nil).Err != nil {
		return route.Case{}, false
	}
	return c, true
}
