package main

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"etchbound/schemas/long"
)

// own gives a command and all below it, but what the library adds by itself.
func own(c *cobra.Command) []*cobra.Command {
	list := []*cobra.Command{c}
	for _, sub := range c.Commands() {
		if sub.Name() != "completion" {
			list = append(list, own(sub)...)
		}
	}
	return list
}

func tree() []*cobra.Command {
	return own(root(streams{in: strings.NewReader(""), out: io.Discard, err: io.Discard}))
}

// Every command has an example, and every example runs as it is printed: typed
// into a shell, in a folder that holds the module's testdata.
func TestExamplesRun(t *testing.T) {
	long.Only(t)
	if runtime.GOOS == "windows" {
		t.Skip("the examples are written for a POSIX shell")
	}
	dir := t.TempDir()
	if err := os.CopyFS(filepath.Join(dir, "testdata", "routes"), os.DirFS(routes(t))); err != nil {
		t.Fatal(err)
	}
	path := filepath.Dir(program(t)) + string(os.PathListSeparator) + os.Getenv("PATH")
	told := regexp.MustCompile(`^written: [^\n]*\n$`) // of a file that an example writes
	for _, c := range long.Some(tree(), 5, 1) {
		t.Run(c.CommandPath(), func(t *testing.T) {
			lines := strings.FieldsFunc(c.Example, func(r rune) bool { return r == '\n' })
			if len(lines) == 0 {
				t.Fatal("no example in the help")
			}
			for _, line := range lines {
				if !strings.HasPrefix(strings.TrimSpace(line), c.CommandPath()) && c.HasParent() {
					t.Errorf("the example %q is not of this command", line)
				}
				sh := exec.Command("sh", "-c", line)
				sh.Dir, sh.Env = dir, append(os.Environ(), "PATH="+path)
				var out, msg bytes.Buffer
				sh.Stdout, sh.Stderr = &out, &msg
				err := sh.Run()
				if said := msg.String(); err != nil || said != "" && !told.MatchString(said) {
					t.Errorf("%s: %v\n%s", line, err, &msg)
				}
				if !strings.Contains(line, "-o ") && out.Len() == 0 {
					t.Errorf("%s: nothing was printed", line)
				}
			}
		})
	}
}

// Help says what a command does, in a line and in full, and what each flag is.
func TestHelpIsWhole(t *testing.T) {
	for _, c := range tree() {
		r := call(t, t.TempDir(), nil, append(strings.Fields(c.CommandPath())[1:], "--help")...)
		if r.code != exitDone || r.err != "" {
			t.Errorf("%s --help: exit code %d: %s", c.CommandPath(), r.code, r.err)
		}
		for _, part := range []string{"Usage:", "Examples:", strings.TrimSpace(c.Long)} {
			if part == "" || !strings.Contains(r.out, part) {
				t.Errorf("%s --help lacks %q", c.CommandPath(), part)
			}
		}
		if c.Short == "" {
			t.Errorf("%s has no short description", c.CommandPath())
		}
		for _, word := range []string{"approved", "compliant"} {
			if strings.Contains(strings.ToLower(r.out), word) {
				t.Errorf("%s --help says %q, which no program can", c.CommandPath(), word)
			}
		}
	}
}
