package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
)

// deliver writes what make produces to a file or, without one, to standard
// output. Nothing is written unless make succeeds; a file is replaced whole or
// left as it was, and never one of the inputs.
func deliver(name string, inputs []string, s streams, make func(io.Writer) error) error {
	var b pages
	if name == "" || name == "-" {
		if err := make(&b); err != nil {
			return err
		}
		return b.writeTo(s.out)
	}
	if err := errors.Join(plainName(name, runtime.GOOS), notInput(name, inputs, s)); err != nil {
		return err
	}
	if err := make(&b); err != nil {
		return err
	}
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		return into(name, &b) // a pipe or a device cannot be replaced
	}
	return replace(name, &b)
}

// plainName refuses a name that would put the output where nobody finds it: on
// Windows a colon behind the drive names a hidden stream of another file.
func plainName(name, system string) error {
	rest := name
	if len(rest) > 1 && rest[1] == ':' {
		rest = rest[2:]
	}
	if system == "windows" && strings.Contains(rest, ":") {
		return input("%s: a file name has no colon here, other than behind the letter of a drive; choose another name", name)
	}
	return nil
}

func into(name string, data *pages) error {
	f, err := os.OpenFile(name, os.O_WRONLY, 0)
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", name, err)
	}
	if err := data.writeTo(f); err != nil {
		f.Close()
		return fmt.Errorf("%s cannot be written: %w", name, err)
	}
	return f.Close()
}

// notInput refuses an output that is one of the inputs, by whatever name.
func notInput(name string, inputs []string, s streams) error {
	out, err := os.Stat(name)
	if err != nil {
		return nil // not there yet
	}
	if out.IsDir() {
		return input("%s: this is a folder; name a file in it", name)
	}
	for _, in := range inputs {
		if in == "" {
			continue
		}
		if info, err := stat(in, s); err == nil && os.SameFile(out, info) {
			return input("%s: the output would overwrite the input %s; choose another name", name, in)
		}
	}
	return nil
}

// stat looks at an input, which for - is whatever standard input is.
func stat(name string, s streams) (os.FileInfo, error) {
	if name != "-" {
		return os.Stat(name)
	}
	if f, ok := s.in.(*os.File); ok {
		return f.Stat()
	}
	return nil, os.ErrNotExist
}

// replace writes the bytes beside the file, then puts them in its place in one
// move, keeping the permissions of a file that was there.
func replace(name string, data *pages) (err error) {
	if target, e := filepath.EvalSymlinks(name); e == nil {
		name = target
	}
	f, err := beside(name)
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", name, err)
	}
	defer func() {
		if err != nil {
			os.Remove(f.Name())
			err = fmt.Errorf("%s cannot be written: %w", name, err)
		}
	}()
	if err = data.writeTo(f); err != nil {
		f.Close()
		return err
	}
	if err = f.Sync(); err != nil {
		f.Close()
		return err
	}
	if err = f.Close(); err != nil {
		return err
	}
	if info, e := os.Stat(name); e == nil {
		if err = os.Chmod(f.Name(), info.Mode().Perm()); err != nil {
			return err
		}
	}
	return os.Rename(f.Name(), name)
}

// beside makes a new file in the folder of name, with the permissions a new
// file gets there.
func beside(name string) (*os.File, error) {
	for i := 0; ; i++ {
		f, err := os.OpenFile(filepath.Join(filepath.Dir(name), fmt.Sprintf(".etchbound-%d-%d", os.Getpid(), i)),
			os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
		if err == nil || !errors.Is(err, fs.ErrExist) {
			return f, err
		}
	}
}

// formatOf is the format asked for, or the one the suffix of the output
// names, or Markdown.
func formatOf(asked, output string, more ...string) (string, error) {
	formats := append([]string{"markdown", "html", "json"}, more...)
	if asked != "" && !slices.Contains(formats, asked) {
		last := len(formats) - 1
		return "", input("--format: found %q, accepted are %s and %s", asked, strings.Join(formats[:last], ", "),
			formats[last])
	}
	if asked != "" {
		return asked, nil
	}
	suffix := strings.TrimPrefix(strings.ToLower(filepath.Ext(output)), ".")
	if suffix == "htm" {
		suffix = "html"
	}
	if slices.Contains(formats, suffix) {
		return suffix, nil
	}
	return "markdown", nil
}
