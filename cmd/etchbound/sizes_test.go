package main

import (
	"bytes"
	"slices"
	"strings"
	"testing"
)

// endless gives bytes for ever, as a device does.
type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '#'
	}
	return len(p), nil
}

// What has no end is read to the cap and refused.
func TestEndlessInputIsRefused(t *testing.T) {
	for _, args := range [][]string{{"check", "-"}, {"review", "-"}, {"scale", "-"}, {"upset", "-"}, {"stock", "-"}} {
		var out, msg bytes.Buffer
		code := run(args, streams{in: endless{}, out: &out, err: &msg})
		if code != exitInput || out.Len() > 0 || !strings.Contains(msg.String(), "at most 1 MiB") {
			t.Errorf("%v: exit code %d, %s", args, code, msg.String())
		}
	}
}

// An argument that nobody meant is refused at once, and not looked for.
func TestLongArgumentsAreRefused(t *testing.T) {
	long := strings.Repeat("x", 1<<20)
	for _, args := range [][]string{{"data", long}, {"explain", "route.yaml", long}, {"schema", long}, {long},
		{"starter", "hf", "--precursor", long}, {"review", "route.yaml", "--batch", long}} {
		var out, msg bytes.Buffer
		code := run(args, streams{out: &out, err: &msg})
		if code != exitInput || out.Len() > 0 || msg.Len() > 500 {
			t.Errorf("%.20q: exit code %d, %.200s", args, code, msg.String())
		}
	}
	many := append([]string{"stock"}, slices.Repeat([]string{"route.yaml"}, mostRoutes+1)...)
	var out, msg bytes.Buffer
	code := run(many, streams{out: &out, err: &msg})
	if code != exitInput || !strings.Contains(msg.String(), "1 to 10000") {
		t.Errorf("exit code %d, %.200s", code, msg.String())
	}
}

// On Windows a colon would write to a hidden stream of another file.
func TestNamesOfOutputs(t *testing.T) {
	for _, c := range []struct {
		name, system string
		good         bool
	}{
		{`C:\reviews\route.html`, "windows", true}, {`c:route.html`, "windows", true},
		{`\\server\share\route.html`, "windows", true},
		{`reviews/route.html`, "windows", true}, {`route:1.html`, "windows", false},
		{`C:\reviews\route.html:x`, "windows", false},
		{`12:30.html`, "windows", false}, {`route:1.html`, "linux", true},
	} {
		if err := plainName(c.name, c.system); (err == nil) != c.good {
			t.Errorf("%s on %s: %v", c.name, c.system, err)
		}
	}
	for name, want := range map[string]string{`C:\reviews\route.JSON`: "json",
		`C:\a.b\route`: "markdown", `..\route.htm`: "html"} {
		if got, err := formatOf("", strings.ReplaceAll(name, `\`, "/")); err != nil || got != want {
			t.Errorf("%s is written as %s", name, got)
		}
	}
}

// What is too large is refused before a file is read, so before any work.
func TestSizesAreLookedAtFirst(t *testing.T) {
	for _, args := range [][]string{{"review", "none.yaml", "--draws", "1000000000000"},
		{"compare", "a.yaml", "b.yaml", "--draws", "3"},
		{"scale", "none.yaml", "--draws", "100001"}, {"scale", "none.yaml", "--pots", "1000000000"},
		{"scale", "none.yaml", "--from", "1 g", "--to", "1e300 g"},
		{"review", "none.yaml", "--draws", "20", "--workers", "100000"}} {
		var out, msg bytes.Buffer
		code := run(args, streams{out: &out, err: &msg})
		if code != exitInput || out.Len() > 0 || !strings.HasPrefix(msg.String(), "--") {
			t.Errorf("%v: exit code %d, %s", args, code, msg.String())
		}
	}
}
