package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"etchbound/schemas/long"
)

// damage is one way in which a good file goes wrong: a text in it is replaced
// by another. The place at which the program must report it is that of the
// change, unless said otherwise.
type damage struct {
	name     string
	old, new string
	make     func(good string) string // in place of old and new
	want     string                   // regular expression the message must match
	line     int                      // where reported, if not where the change is; -1: none
}

func (d damage) apply(t *testing.T, good string) string {
	t.Helper()
	if d.make != nil {
		return d.make(good)
	}
	if n := strings.Count(good, d.old); n < 1 {
		t.Fatalf("%q is not in the good file", d.old)
	}
	return strings.Replace(good, d.old, d.new, 1)
}

// changed is the first line in which two texts differ, from 1.
func changed(a, b string) int {
	x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(x), len(y)) {
		if x[i] != y[i] {
			return i + 1
		}
	}
	return min(len(x), len(y))
}

// inside finds what no user should read: the program's own types, functions,
// formatting slips and the vocabulary of schema checkers.
var inside = regexp.MustCompile(`panic|goroutine|runtime error|%!|0x[0-9a-f]{6,}|` +
	`\b(?:float64|int64|int32|uint8|struct|interface|map\[|nil|boolean|NaN\(|bool)\b|\[\]string|` +
	`\*?\b(?:schemas|route|limit|quantity|chemicals|hazards|figure|working|yaml|jsonschema|strconv|json|` +
	`errors)\.[A-Z]\w*|` +
	`additionalProperties|oneOf|anyOf|allOf|\$ref|urn:|/steps/\d|!!(?:int|float|null|timestamp)|(?m:(?:^| )yaml:)|<nil>`)

var place = regexp.MustCompile(`(?m)^route\.yaml:(\d+):(\d+): `)

// refusal checks what holds for the refusal of any file.
func refusal(t *testing.T, dir string, r result, name string) {
	t.Helper()
	if r.code != exitInput {
		t.Errorf("exit code %d, want %d", r.code, exitInput)
	}
	if r.out != "" {
		t.Errorf("standard output is not empty: %.200q", r.out)
	}
	if !strings.Contains(r.err, name) {
		t.Errorf("the message does not name the file %s", name)
	}
	if bad := inside.FindString(r.err); bad != "" {
		t.Errorf("the message speaks of the inside of the program: %q", bad)
	}
	if !strings.Contains(r.err, "accepted: ") && !strings.Contains(r.err, "hint: ") {
		t.Error("the message says neither what is accepted nor what to try")
	}
	noneLeft(t, dir, name)
	if t.Failed() {
		t.Log(r.err)
	}
}

func TestDamagedRoutes(t *testing.T) {
	long.Only(t)
	good := bundled(t, demoName)
	for _, d := range damages {
		t.Run(d.name, func(t *testing.T) {
			dir := t.TempDir()
			bad := d.apply(t, good)
			put(t, dir, "route.yaml", bad)
			r := call(t, dir, nil, "review", "route.yaml", "-o", "out.json")
			t.Log("\n" + r.err)
			refusal(t, dir, r, "route.yaml")
			if !regexp.MustCompile(`(?i)` + d.want).MatchString(r.err) {
				t.Errorf("the message does not match %q", d.want)
			}
			line := d.line
			if line == 0 {
				line = changed(good, bad)
			}
			all := place.FindAllStringSubmatch(r.err, -1)
			if len(all) == 0 || line > 0 && all[0][1] != fmt.Sprint(line) {
				t.Errorf("reported at %q, want line %d", all, line)
			}
			if line > 0 && len(all) != 1 {
				t.Errorf("one mistake is told as %d", len(all))
			}
			if c := call(t, dir, nil, "check", "route.yaml"); c != r {
				t.Errorf("check says something else (exit code %d):\n%s", c.code, c.err)
			}
		})
	}
}

// What looks like damage and is none.
func TestSoundRoutes(t *testing.T) {
	good := bundled(t, demoName)
	for _, d := range sound {
		t.Run(d.name, func(t *testing.T) {
			dir := t.TempDir()
			put(t, dir, "route.yaml", d.apply(t, good))
			r := call(t, dir, nil, "check", "route.yaml")
			if r.code != exitDone || r.err != "" || !strings.Contains(r.out, "no mistakes found") {
				t.Errorf("exit code %d, %s%s", r.code, r.out, r.err)
			}
		})
	}
}

// A byte order mark and the line ends of other systems change the digest and
// nothing else.
func TestLineEndsChangeNothing(t *testing.T) {
	long.Only(t)
	good := bundled(t, demoName)
	if testing.Short() {
		weak, err := os.ReadFile(filepath.Join(home, "testdata", "weak.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		good = string(weak)
	}
	digest := regexp.MustCompile(`"digest": ?"[0-9a-f]+"|"control": ?"[^"]*"`)
	want := ""
	for _, text := range []string{good, "\ufeff" + good, strings.ReplaceAll(good, "\n", "\r\n"),
		"\ufeff" + strings.ReplaceAll(good, "\n", "\r\n")} {
		dir := t.TempDir()
		put(t, dir, "route.yaml", text)
		r := call(t, dir, nil, "review", "route.yaml", "--format", "json", "--brief")
		if r.code != exitDone || r.err != "" {
			t.Fatalf("exit code %d: %s", r.code, r.err)
		}
		got := digest.ReplaceAllString(r.out, `"digest": ""`)
		if want == "" {
			want = got
		}
		if got != want {
			t.Error("the review differs")
		}
	}
}

func TestDamagedSitesAndLimits(t *testing.T) {
	for _, d := range damagedAround {
		t.Run(d.flag+"/"+d.name, func(t *testing.T) {
			dir := t.TempDir()
			good := bundled(t, d.flag+"-demo.yaml")
			bad := d.apply(t, good)
			name := d.flag + ".yaml"
			put(t, dir, name, bad)
			r := call(t, dir, nil, "review", routes(t)+"/"+demoName, "--"+d.flag, name, "-o", "out.json")
			t.Log("\n" + r.err)
			refusal(t, dir, r, name)
			if !regexp.MustCompile(`(?i)` + d.want).MatchString(r.err) {
				t.Errorf("the message does not match %q", d.want)
			}
			if line := fmt.Sprintf("%s:%d:", name, changed(good, bad)); d.line == 0 && !strings.HasPrefix(r.err, line) {
				t.Errorf("reported elsewhere than at %s", line)
			}
		})
	}
}

// Several mistakes are told at once, by position.
func TestAllMistakesAtOnce(t *testing.T) {
	text := bundled(t, demoName)
	for _, d := range [][2]string{{"mass: 2 g\n", "mass: 2\n"}, {"closure: vented", "closure: vent"},
		{"time: 24 h", "time: -24 h"}, {"cycles: 8", "cycles: 8.5"}} {
		text = strings.Replace(text, d[0], d[1], 1)
	}
	dir := t.TempDir()
	put(t, dir, "route.yaml", text)
	r := call(t, dir, nil, "check", "route.yaml")
	all := place.FindAllStringSubmatch(r.err, -1)
	if len(all) != 4 {
		t.Fatalf("%d mistakes told, want 4:\n%s", len(all), r.err)
	}
	last := 0
	for _, m := range all {
		var line int
		fmt.Sscan(m[1], &line)
		if line < last {
			t.Errorf("line %d is told after line %d", line, last)
		}
		last = line
	}
}

// Names that are no readable file.
func TestNoFile(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(dir+"/folder", 0o755); err != nil {
		t.Fatal(err)
	}
	put(t, dir, "plain.txt", "x")
	for name, want := range map[string]string{
		"missing.yaml":       "no such file",
		"folder":             "folder",
		"folder/":            "folder",
		"plain.txt/r.yaml":   "",
		"missing/route.yaml": "no such file",
	} {
		r := call(t, dir, nil, "review", name, "-o", "out.json")
		if r.code != exitInput || r.out != "" || !strings.Contains(r.err, name) || !strings.Contains(r.err, want) {
			t.Errorf("%s: exit code %d, %s%s", name, r.code, r.out, r.err)
		}
		if bad := inside.FindString(r.err); bad != "" {
			t.Errorf("%s: the message speaks of %q", name, bad)
		}
	}
	noneLeft(t, dir, "folder", "plain.txt")
}
