package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"etchbound/reports/document"
	"etchbound/reports/paper"
)

// deliver writes what make produces to a file or, without one, to standard
// output. Nothing is written unless make succeeds; a file is replaced whole or
// left as it was, and never one of the inputs.
//
// One line says that a file was written, and what of it is worst, where that is given.
func deliver(name string, inputs []string, s streams, make func(io.Writer) error, worst ...string) error {
	var b pages
	if name == "" || name == "-" {
		if err := make(&b); err != nil {
			return err
		}
		return b.writeTo(s.out)
	}
	if err := mayWrite(name, inputs, s); err != nil {
		return err
	}
	if err := make(&b); err != nil {
		return err
	}
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		return into(name, &b) // a pipe or a device cannot be replaced
	}
	if err := replace(name, &b); err != nil {
		return err
	}
	_, err := fmt.Fprintln(s.err, wrote(name, b, strings.Join(worst, "")))
	return err
}

// mayWrite refuses the name of an output that would not be written. Commands ask before
// they work anything out, so that nobody waits for a refusal, and deliver asks again.
func mayWrite(name string, inputs []string, s streams) error {
	if name == "" || name == "-" {
		return nil
	}
	return errors.Join(plainName(name, runtime.GOOS), notInput(name, inputs, s), replaceable(name))
}

// paperOf is the format of an output that may be written.
func paperOf(asked, output string, inputs []string, s streams, more ...string) (string, error) {
	kind, err := formatOf(asked, output, more...)
	return kind, errors.Join(err, mayWrite(output, inputs, s))
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

// replaceable refuses a file that somebody has made read-only: a signed review stays.
func replaceable(name string) error {
	const byOwner = 0o200
	if info, err := os.Stat(name); err == nil && info.Mode().IsRegular() && info.Mode().Perm()&byOwner == 0 {
		return input("%s: this file is read-only and stays as it is; choose another name", name)
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

// suffixes are the endings of a file name and the formats they name.
var suffixes = map[string]string{"md": "markdown", "markdown": "markdown", "txt": "markdown", "html": "html",
	"htm": "html", "pdf": "pdf", "json": "json", "csv": "csv"}

// formatOf is the format asked for, or the one that the ending of the output names, or
// Markdown where it has none. An ending that names no format is refused: a review in a
// file that another program then opens as something else is lost.
func formatOf(asked, output string, more ...string) (string, error) {
	formats := append([]string{"markdown", "html", "pdf", "json"}, more...)
	last := len(formats) - 1
	accepted := strings.Join(formats[:last], ", ") + " and " + formats[last]
	switch {
	case asked != "" && !slices.Contains(formats, asked):
		return "", input("--format: found %q, accepted are %s", asked, accepted)
	case asked != "":
		return asked, nil
	}
	ending := strings.ToLower(filepath.Ext(output))
	kind := suffixes[strings.TrimPrefix(ending, ".")]
	switch {
	case ending == "" || output == os.DevNull:
		return "markdown", nil
	case !slices.Contains(formats, kind):
		return "", input("%s: a name that ends in %s says no format; accepted are the endings .md, .html, .pdf and .json%s, "+
			"or any name with --format (%s)", output, ending, csvToo(more), accepted)
	}
	return kind, nil
}

func csvToo(more []string) string {
	if len(more) == 0 {
		return ""
	}
	return " and ." + more[0]
}

// numbered prints a page twice where the first print shows on which sheet its sections
// begin: the second has the numbers in its contents.
func numbered(ctx context.Context, page []byte) ([]byte, error) {
	pdf, err := paper.PDF(ctx, page)
	if err != nil {
		return nil, err
	}
	with := document.Numbered(page, paper.Places(pdf))
	if bytes.Equal(with, page) {
		return pdf, nil
	}
	return paper.PDF(ctx, with)
}

// printed makes an output of a kind: a PDF is the page of HTML printed by a browser.
func printed(ctx context.Context, s streams, kind string, write func(io.Writer, string) error) func(io.Writer) error {
	if kind != "pdf" {
		return func(w io.Writer) error { return write(w, kind) }
	}
	return func(w io.Writer) error {
		if _, err := paper.Browser(); err != nil {
			return input("%v", err)
		}
		var page bytes.Buffer
		if err := write(&page, "html"); err != nil {
			return err
		}
		done := waiting(s.err, "printing by the browser")
		pdf, err := numbered(ctx, page.Bytes())
		done()
		if err != nil {
			return err
		}
		_, err = w.Write(pdf)
		return err
	}
}
