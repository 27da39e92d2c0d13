package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strings"
	"sync"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"etchbound/schemas/long"
)

const demoName = "demo-lif-hcl-2g.yaml"

// suite removes the built program when all tests are done.
type suite struct{ m *testing.M }

func (s suite) Run() int {
	code := s.m.Run()
	if dir := builtIn; dir != "" {
		os.RemoveAll(dir)
	}
	return code
}

func TestMain(m *testing.M) {
	debug.SetGCPercent(400) // less often than the program has it: many runs in one process
	testscript.Main(suite{m}, map[string]func(){
		"etchbound": main,
	})
}

var builtIn string // set once, by built

var built = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "etchbound-built-")
	if err != nil {
		return "", err
	}
	builtIn = dir
	name := filepath.Join(dir, "etchbound")
	if runtime.GOOS == "windows" {
		name += ".exe"
	}
	c := exec.Command("go", "build", "-trimpath", "-o", name, ".")
	c.Dir = home
	if out, err := c.CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w: %s", err, out)
	}
	return name, nil
})

// program is the path of the program: in the long form what a user runs, built as
// a release is, else the test binary, which testscript.Main has put on the path
// under that name.
func program(tb testing.TB) string {
	tb.Helper()
	find := built
	if !long.Form() {
		find = func() (string, error) { return exec.LookPath("etchbound") }
	}
	name, err := find()
	if err != nil {
		tb.Fatal("the program does not build: ", err)
	}
	return name
}

// result is what one run of the program left behind.
type result struct {
	code     int
	out, err string
}

// call runs the program in a folder: within the test, or in the long form the
// built program.
func call(t *testing.T, dir string, in io.Reader, args ...string) result {
	t.Helper()
	if long.Form() {
		return callEnv(t, dir, nil, in, args...)
	}
	r, err := runIn(dir, in, args...)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// folder is held by who works in a folder of his own: a process has one.
var folder sync.Mutex

// runIn runs the program in a folder, without a process of its own.
func runIn(dir string, in io.Reader, args ...string) (result, error) {
	folder.Lock()
	defer folder.Unlock()
	if err := os.Chdir(dir); err != nil {
		return result{}, err
	}
	defer os.Chdir(home)
	if in == nil {
		in = strings.NewReader("")
	}
	var out, msg bytes.Buffer
	code := run(args, streams{in: in, out: &out, err: &msg})
	return result{code, out.String(), msg.String()}, nil
}

// callEnv runs the program as a process of its own.
func callEnv(t *testing.T, dir string, env []string, in io.Reader, args ...string) result {
	t.Helper()
	r, err := process(program(t), dir, env, in, args...)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// process runs a program with some more environment.
func process(name, dir string, env []string, in io.Reader, args ...string) (result, error) {
	c := exec.Command(name, args...)
	c.Dir, c.Stdin, c.Env = dir, in, append(os.Environ(), env...)
	var out, msg bytes.Buffer
	c.Stdout, c.Stderr = &out, &msg
	err := c.Run()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		return result{}, err
	}
	return result{c.ProcessState.ExitCode(), out.String(), msg.String()}, nil
}

// bundled is the text of a file in the module's routes.
func bundled(tb testing.TB, name string) string {
	tb.Helper()
	b, err := os.ReadFile(filepath.Join(routes(tb), name))
	if err != nil {
		tb.Fatal(err)
	}
	return string(b)
}

// home is the folder of the package: tests change to others.
var home, _ = filepath.Abs(".")

// routes is the folder of the bundled routes.
func routes(testing.TB) string { return filepath.Join(home, "..", "..", "testdata", "routes") }

// put writes a file and gives its path.
func put(tb testing.TB, dir, name, text string) string {
	tb.Helper()
	path := filepath.Join(dir, name)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		tb.Fatal(err)
	}
	return path
}

// noneLeft fails if a run left anything in a folder beside the files named: an
// output, or the temporary file it would have become.
func noneLeft(tb testing.TB, dir string, known ...string) {
	tb.Helper()
	list, err := os.ReadDir(dir)
	if err != nil {
		tb.Fatal(err)
	}
	for _, e := range list {
		if !strings.Contains(" "+strings.Join(known, " ")+" ", " "+e.Name()+" ") {
			tb.Errorf("the run left %s behind", e.Name())
		}
	}
}

// The name of a file gives no order to a terminal, and what is said keeps its lines.
func TestANameOrdersNothing(t *testing.T) {
	var msg bytes.Buffer
	if code := run([]string{"check", "no\x1b[31m\u009b2J.yaml"}, streams{in: strings.NewReader(""), out: io.Discard,
		err: &msg}); code != exitInput {
		t.Errorf("exit code %d", code)
	}
	for _, r := range msg.String() {
		if r < ' ' && r != '\n' || r >= 0x7f && r < 0xa0 {
			t.Errorf("%q holds %U", msg.String(), r)
		}
	}
	if got := visible("a\x1b\nb"); got != "a\nb" {
		t.Errorf("two lines become %q", got)
	}
}
