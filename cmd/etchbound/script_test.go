package main

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"etchbound/schemas/long"
)

// TestScripts runs the scripts of testdata/script. Each begins in a folder with
// a copy of the bundled routes in routes/, and weak.yaml, which is reviewed in no
// time: for what does not ask which route it is.
func TestScripts(t *testing.T) {
	from := routes(t)
	weak, err := os.ReadFile(filepath.Join("testdata", "weak.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	scripts, err := filepath.Glob(filepath.Join(home, "testdata", "script", "*.txtar"))
	if err != nil || len(scripts) < 15 {
		t.Fatal(scripts, err)
	}
	testscript.Run(t, testscript.Params{
		Files:              long.Some(scripts, len(scripts), 2),
		RequireUniqueNames: true,
		Setup: func(e *testscript.Env) error {
			e.Values[fed{}] = new(string)
			if err := os.CopyFS(filepath.Join(e.WorkDir, "routes"), os.DirFS(from)); err != nil {
				return err
			}
			return os.WriteFile(filepath.Join(e.WorkDir, "weak.yaml"), weak, 0o644)
		},
		Condition: func(name string) (bool, error) {
			switch name {
			case "long": // runs in .ci/run
				return long.Form(), nil
			case "root":
				return os.Geteuid() == 0, nil
			case "full": // a device that is always full
				_, err := os.Stat("/dev/full")
				return err == nil, nil
			}
			return false, fmt.Errorf("no condition %s", name)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits(program(t)),
			"feed":  feed,
			"json":  validJSON,
			"mode":  mode,
			"clean": clean,
			"swap":  swap,
		},
	})
}

// fed is the standard input of the next run of a script.
type fed struct{}

// feed FILE gives the next run a standard input.
func feed(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: feed FILE")
	}
	*ts.Value(fed{}).(*string) = ts.ReadFile(args[0])
}

// exits CODE etchbound [ARGUMENTS] runs the program, by name, and holds its exit code:
// within the test, where no script needs another process, or in the long form as it
// is built. A run that is refused or fails says nothing on standard output and
// something on standard error.
func exits(name string) func(*testscript.TestScript, bool, []string) {
	return func(ts *testscript.TestScript, neg bool, args []string) {
		if neg || len(args) < 2 || args[1] != "etchbound" {
			ts.Fatalf("usage: exits CODE etchbound [ARGUMENTS]")
		}
		want, err := strconv.Atoi(args[0])
		ts.Check(err)
		in := ts.Value(fed{}).(*string)
		var got result
		if long.Form() {
			got, err = process(name, ts.MkAbs("."), nil, strings.NewReader(*in), args[2:]...)
		} else {
			got, err = runIn(ts.MkAbs("."), strings.NewReader(*in), args[2:]...)
		}
		ts.Check(err)
		*in = ""
		io.WriteString(ts.Stdout(), got.out)
		io.WriteString(ts.Stderr(), got.err)
		switch {
		case got.code != want:
			ts.Fatalf("exit code %d, want %d", got.code, want)
		case got.code >= exitInput && got.out != "":
			ts.Fatalf("exit code %d with text on standard output", got.code)
		case got.code != exitDone && got.err == "":
			ts.Fatalf("exit code %d without a message", got.code)
		}
		if bad := inside.FindString(got.err); bad != "" {
			ts.Fatalf("the message speaks of the inside of the program: %q", bad)
		}
	}
}

// json FILE... holds that the files are one JSON value each.
func validJSON(ts *testscript.TestScript, neg bool, args []string) {
	for _, name := range args {
		if json.Valid([]byte(ts.ReadFile(name))) == neg {
			ts.Fatalf("%s: valid JSON: %v", name, neg)
		}
	}
}

// mode PERMISSIONS FILE holds the permission bits of a file.
func mode(ts *testscript.TestScript, _ bool, args []string) {
	info, err := os.Stat(ts.MkAbs(args[1]))
	ts.Check(err)
	if got := fmt.Sprintf("%03o", info.Mode().Perm()); got != args[0] {
		ts.Fatalf("%s has the permissions %s, want %s", args[1], got, args[0])
	}
}

// clean FOLDER holds that no temporary file is left in it.
func clean(ts *testscript.TestScript, _ bool, args []string) {
	list, err := os.ReadDir(ts.MkAbs(args[0]))
	ts.Check(err)
	for _, e := range list {
		if strings.HasPrefix(e.Name(), ".etchbound") {
			ts.Fatalf("%s was left in %s", e.Name(), args[0])
		}
	}
}

// swap FILE OLD NEW replaces a text that must be there; \n in NEW begins a line.
func swap(ts *testscript.TestScript, _ bool, args []string) {
	text := ts.ReadFile(args[0])
	if !strings.Contains(text, args[1]) {
		ts.Fatalf("%s has no %q", args[0], args[1])
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(strings.Replace(text, args[1],
		strings.ReplaceAll(args[2], `\n`, "\n"), 1)), 0o644))
}
