package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/limit"
	"etchbound/hazards/route"
	"etchbound/schemas"
	"etchbound/schemas/quantity"
)

// files are the files a command reads.
type files struct {
	route, site, limits string
	batch               string
	units               unitsFlag
	asked               string // what is worked out of them, for the control line
}

// inputs are the names of the files, which no output may overwrite.
func (f files) inputs() []string { return []string{f.route, f.site, f.limits} }

// open reads a whole file, or standard input for "-". One byte over the cap is
// enough for the loader to refuse it.
func open(name string, s streams) ([]byte, error) {
	const most = 1<<20 + 1
	if name == "-" {
		return io.ReadAll(io.LimitReader(s.in, most))
	}
	info, err := os.Stat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, input("%s: there is no such file; check the name and the folder you are in", name)
	case err != nil:
		return nil, input("%s: cannot be read: %v", name, err)
	case info.IsDir():
		return nil, input("%s: this is a folder; name the route file in it", name)
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, input("%s: cannot be read: %v", name, err)
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, most))
}

// twice reports whether more than one of the files is standard input.
func twice(names ...string) bool {
	n := 0
	for _, name := range names {
		if name == "-" {
			n++
		}
	}
	return n > 1
}

func shown(name string) string {
	if name == "-" {
		return "standard input"
	}
	return name
}

// refuse turns the problems of a file into an error if any of them stops the
// work; the others go to the error stream.
func refuse(problems []schemas.Problem, s streams) error {
	if !schemas.Refused(problems) {
		for _, p := range problems {
			fmt.Fprintln(s.err, p.String())
		}
		return nil
	}
	var b strings.Builder
	for _, p := range problems {
		b.WriteString(p.String())
		b.WriteByte('\n')
	}
	return &inputError{strings.TrimRight(b.String(), "\n")}
}

// load reads the files of a command into a case.
func load(f files, s streams) (route.Case, error) {
	var none route.Case
	go hazards.Ready()
	if twice(f.route, f.site, f.limits) {
		return none, input("-: standard input can be only one of the files; name the others")
	}
	raw, err := open(f.route, s)
	if err != nil {
		return none, err
	}
	r, problems, err := route.Load(shown(f.route), bytes.NewReader(raw))
	if err != nil {
		return none, err
	}
	if err := refuse(problems, s); err != nil {
		return none, err
	}
	if f.batch != "" {
		m, err := quantity.Parse(f.batch, quantity.Mass)
		if err != nil {
			return none, input("--batch: %v", err)
		}
		if r.Precursor == nil || !(m.SI > 0) {
			return none, input("--batch: the route needs a precursor and the batch a mass above zero")
		}
		r = r.Scaled(m)
	}
	site, limits, err := around(f, s)
	if err != nil {
		return none, err
	}
	c, err := route.NewCase(r, site, limit.Base().With(limits))
	if err != nil {
		return none, input("%s: %v", shown(f.route), err)
	}
	return c, nil
}

// around reads the site and limits files, where there are any.
func around(f files, s streams) (*route.Site, *limit.Set, error) {
	var site *route.Site
	if f.site != "" {
		raw, err := open(f.site, s)
		if err != nil {
			return nil, nil, err
		}
		got, problems, err := route.LoadSite(shown(f.site), bytes.NewReader(raw))
		if err != nil {
			return nil, nil, err
		}
		if err := refuse(problems, s); err != nil {
			return nil, nil, err
		}
		site = got
	}
	if f.limits == "" {
		return site, nil, nil
	}
	raw, err := open(f.limits, s)
	if err != nil {
		return nil, nil, err
	}
	got, problems, err := limit.Load(shown(f.limits), bytes.NewReader(raw), figure.Units{})
	if err != nil {
		return nil, nil, err
	}
	return site, got, refuse(problems, s)
}
