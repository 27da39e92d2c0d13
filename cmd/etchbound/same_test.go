package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"etchbound/schemas/long"
)

// The same input gives the same bytes: again, on one processor or two, at
// another time of day, in another place and language.
func TestSameBytes(t *testing.T) {
	long.NotShort(t)
	list, err := filepath.Glob(filepath.Join(routes(t), "*.yaml"))
	if err != nil || len(list) == 0 {
		t.Fatal("no routes", err)
	}
	site, limits := filepath.Join(routes(t), "site-demo.yaml"), filepath.Join(routes(t), "limits-demo.yaml")
	var all [][2]string // route and format
	for _, format := range []string{"json", "html", "markdown"} {
		for _, path := range list {
			if path != site && path != limits {
				all = append(all, [2]string{path, format})
			}
		}
	}
	elsewhere := []string{"GOMAXPROCS=2", "TZ=Pacific/Kiritimati", "LC_ALL=de_DE.UTF-8", "LANG=de_DE.UTF-8", "NO_COLOR=1",
		"COLUMNS=20", "HOME=/nonexistent"}
	settings := [][]string{{"GOMAXPROCS=1"}, elsewhere, {"GOMAXPROCS=2"}}
	if !long.Form() {
		settings = settings[:2]
	}
	for _, x := range long.Some(all, 1, 1) {
		path, format := x[0], x[1]
		t.Run(filepath.Base(path)+"/"+format, func(t *testing.T) {
			t.Parallel()
			args := []string{"review", filepath.Base(path), "--format", format, "--site", site, "--limits", limits}
			want := ""
			for _, env := range settings {
				r := callEnv(t, filepath.Dir(path), env, nil, args...)
				if r.code != exitDone {
					t.Fatalf("exit code %d: %s", r.code, r.err)
				}
				if want == "" {
					want = r.out
				}
				if r.out != want {
					t.Errorf("%v: %s", env, firstDifference(want, r.out))
				}
			}
		})
	}
}

// Nothing of the machine, the folder or the user gets into a review.
func TestNothingOfTheMachine(t *testing.T) {
	long.Only(t)
	dir := t.TempDir()
	name := filepath.Join(home, "testdata", "weak.yaml")
	if long.Form() {
		name = filepath.Join(routes(t), demoName)
	}
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	put(t, dir, "route.yaml", string(text))
	host, _ := os.Hostname()
	for _, format := range []string{"json", "html", "markdown"} {
		out := call(t, dir, nil, "review", "route.yaml", "--format", format).out
		for _, secret := range []string{dir, host, os.Getenv("HOME") + "/"} {
			if len(secret) > 3 && strings.Contains(out, secret) {
				t.Errorf("the %s review holds %q", format, secret)
			}
		}
		for _, bad := range []string{"NaN", "+Inf", "-Inf", "%!", "<nil>"} {
			if strings.Contains(out, bad) {
				t.Errorf("the %s review holds %q", format, bad)
			}
		}
	}
}

// The program reaches no network, and starts no other program but the browser that
// prints a PDF: nothing else of it is linked with what that takes.
func TestReachesNothing(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "-f", `{{.ImportPath}} {{join .Imports ","}}`, ".").Output()
	if err != nil {
		t.Fatal(err)
	}
	deps := map[string]bool{}
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		name, imports, _ := strings.Cut(line, " ")
		deps[name] = true
		starts := slices.Contains(strings.Split(imports, ","), "os/exec")
		if starts && name != "etchbound/reports/paper" {
			t.Errorf("%s can start another program", name)
		}
	}
	if !deps["os"] || !deps["etchbound/reports/paper"] {
		t.Fatal("the list of packages is not what it should be")
	}
	for _, bad := range []string{"net/http", "crypto/tls", "plugin", "net/rpc"} {
		if deps[bad] {
			t.Errorf("the program is linked with %s", bad)
		}
	}
}

func firstDifference(a, b string) string {
	x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
	i := changed(a, b) - 1
	return "line " + clip(x[i]) + "\nbecomes " + clip(y[i])
}

func clip(s string) string { return s[:min(len(s), 200)] }
