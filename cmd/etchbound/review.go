package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"runtime"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"etchbound/hazards"
	"etchbound/hazards/figure"
	"etchbound/hazards/route"
	"etchbound/reports"
	"etchbound/reports/plain"
	"etchbound/scaling"
)

// version of the program and of the data it carries.
const (
	version     = "0.2.0"
	dataVersion = "2026-11"
)

func (f files) options(brief bool) reports.Options {
	return reports.Options{Brief: brief, Version: version, DataVersion: dataVersion, DataDigest: hazards.DataDigest(),
		Platform: runtime.GOOS + "/" + runtime.GOARCH, Units: f.units.Units,
		Asked: f.asked}
}

func caseFlags(c *cobra.Command, f *files) {
	c.Flags().StringVar(&f.site, "site", "", "site file: hood, room, jurisdiction, local data")
	c.Flags().StringVar(&f.limits, "limits", "", "file of local limits; they count where they are stricter")
	c.PreRun = func(c *cobra.Command, _ []string) { f.asked = worksOut(c) }
}

// worksOut is what a command works out and what was chosen for it, for the control line: two papers
// on which another verdict stands carry others. What is in the digests of the files, and what
// changes no number, is not in it.
func worksOut(c *cobra.Command) string {
	var out []string
	if c.Name() != "review" {
		out = append(out, c.Name())
	}
	c.Flags().Visit(func(g *pflag.Flag) {
		if !slices.Contains(toldElsewhere, g.Name) {
			out = append(out, g.Name+" "+plain.Printable(plain.Fold(strings.Trim(g.Value.String(), "[]"))))
		}
	})
	return strings.Join(out, ", ")
}

// toldElsewhere are the flags of which a control line says nothing by itself.
var toldElsewhere = []string{"site", "limits", "batch", "reviewed", "reviewed-batch", "reviewed-site",
	"reviewed-limits", "format", "output", "paper", "units", "workers", "brief", "working", "stop-when", "records"}

// unitsFor lets a reader choose the units of what a command writes.
func unitsFor(c *cobra.Command, f *files) {
	c.Flags().Var(&f.units, "units", "of pages and Markdown: kPa or bar, ppm or mg/m3, such as \"bar,mg/m3\"")
}

// reviewLong is what the command says of itself.
const reviewLong = "Write the hazard review of a route. The format follows the suffix of -o (.html, .pdf, .json,\n" +
	"else Markdown) unless --format names it. ROUTE may be - for standard input. The contents of a\n" +
	".pdf have the sheet of each section; a .html that you print yourself has them without.\n\n" +
	"With --stop-when the exit code is 1 if a finding reaches the verdict named; a finding\n" +
	"that is unknown counts as one that exceeds. The review is written all the same.\n" +
	"With --draws the data are drawn so many times from their shapes, and the review says where\n" +
	"the figures lie, how often a finding exceeds and what to measure first.\n\n" +
	"With --working the auditor's book is written beside it: every figure, finding, datum and source,\n" +
	"and the working of the figures that are not within every limit."

// asked are the flags of a review that are words.
type asked struct{ format, output, stopWhen, working, reviewed, paper string }

func (a *asked) flags(c *cobra.Command, f *files) {
	caseFlags(c, f)
	unitsFor(c, f)
	c.Flags().StringVar(&f.batch, "batch", "", "review the route at this mass of powder, such as \"50 g\"")
	c.Flags().StringVar(&a.format, "format", "", "markdown, html, pdf or json")
	c.Flags().StringVarP(&a.output, "output", "o", "", "file to write, whole or not at all")
	c.Flags().StringVar(&a.working, "working", "",
		"file to write the auditor's book into: every figure, finding, datum and source, and the working of what counts")
	c.Flags().StringVar(&a.paper, "paper", "", "A4 or letter, that it is printed on; left out, the printer decides")
	c.Flags().StringVar(&a.reviewed, "reviewed", "",
		"route that was reviewed before: the change record lists what is written otherwise")
	c.Flags().StringVar(&a.stopWhen, "stop-when", "",
		"exit with 1 if a finding reaches this verdict: exceeds or near, or exceeds as expected: expected")
}

// refused says what of the flags is no word that is accepted, else on what is printed.
func (a *asked) refused() (reports.Paper, error) {
	if a.stopWhen != "" && !slices.Contains(stopsWhen, a.stopWhen) {
		return reports.AnyPaper, input("--stop-when: found %q, accepted are exceeds and near, and expected", a.stopWhen)
	}
	for _, p := range [...]reports.Paper{reports.AnyPaper, reports.A4, reports.Letter} {
		if strings.EqualFold(a.paper, string(p)) {
			return p, nil
		}
	}
	return reports.AnyPaper, input("--paper: found %q, accepted are A4 and letter", a.paper)
}

func reviewCommand(s streams) *cobra.Command {
	var f files
	var a asked
	var brief bool
	var d drawing
	c := &cobra.Command{
		Use:     "review ROUTE",
		Short:   "Write the hazard review of a route",
		Long:    reviewLong,
		Example: "  etchbound review testdata/routes/demo-lif-hcl-2g.yaml --batch \"5 g\" --brief",
		Args:    exactly(1, "one route file"),
		RunE: func(c *cobra.Command, args []string) error {
			f.route = args[0]
			if err := given(c, "site", "limits", "batch", "format", "output", "stop-when", "working", "reviewed",
				"paper"); err != nil {
				return err
			}
			if err := errors.Join(d.asked(c), mayWork(a.working, f, s)); err != nil {
				return err
			}
			kind, err := paperOf(a.format, a.output, f.inputs(), s)
			if err != nil {
				return err
			}
			printedOn, err := a.refused()
			if err != nil {
				return err
			}
			r, err := reviewOf(f, brief && a.stopWhen == "" && kind == "json", s) // page 1 and a verdict need all of it
			if err != nil {
				return err
			}
			o := f.options(brief)
			o.Batches, o.Paper = kind != "json", printedOn
			if o.Sample, err = d.sample(c.Context(), r.Case, s); err != nil {
				return err
			}
			if o.Since, err = since(a.reviewed, f, r.Case, s); err != nil {
				return err
			}
			err = deliver(a.output, append(f.inputs(), a.reviewed), s,
				printed(c.Context(), s, kind, func(w io.Writer, kind string) error { return write(w, r, kind, o) }),
				worstOf(r, o, a.output))
			if err == nil && a.working != "" {
				err = writeWorking(c.Context(), a.working, f, r, printedOn, s)
			}
			if err != nil {
				return err
			}
			return stop(r, reports.Stops(r, o), a.stopWhen)
		},
	}
	a.flags(c, &f)
	c.Flags().BoolVar(&brief, "brief", false, "page 1 and the figures only, without what happens when something fails")
	d.flags(c)
	return c
}

func reviewOf(f files, brief bool, s streams) (hazards.Review, error) {
	c, err := load(f, s)
	if err != nil {
		return hazards.Review{}, err
	}
	c.Brief = brief
	done := waiting(s.err, "working out "+plain.Printable(shown(f.route)))
	r, err := hazards.Make(c)
	done()
	if err != nil {
		return r, input("%s: %v", shown(f.route), err)
	}
	return r, nil
}

// since is what is written otherwise than in a route that was reviewed before, with the
// same site and limits; nil where none is named.
func since(name string, f files, now route.Case, s streams) (*reports.Since, error) {
	if name == "" {
		return nil, nil
	}
	if twice(name, f.route, f.site, f.limits) {
		return nil, input("-: standard input can be only one of the files; name the others")
	}
	f.route, f.batch = name, ""
	was, err := load(f, s)
	if err != nil {
		return nil, err
	}
	return &reports.Since{Title: was.Route.Title, Digest: was.Route.Digest, Changed: scaling.Written(was, now)}, nil
}

// worstOf is what is worst in a review that goes into a file, and how often work stops.
func worstOf(r hazards.Review, o reports.Options, output string) string {
	if output == "" || output == "-" {
		return ""
	}
	return reports.Worst(r, o)
}

// mayWork refuses the name of a file for the auditor's book that would not be written.
func mayWork(name string, f files, s streams) error {
	kind, err := formatOf("", name)
	if err != nil {
		return err
	}
	if kind == "json" {
		return input("--working: found %q, accepted are names that end in .html, .pdf or .md", name)
	}
	return mayWrite(name, f.inputs(), s)
}

// writeWorking writes the auditor's book into a file of its own.
func writeWorking(ctx context.Context, name string, f files, r hazards.Review, p reports.Paper, s streams) error {
	kind, err := formatOf("", name)
	if err != nil {
		return err
	}
	o := f.options(false)
	o.Paper = p
	book := reports.BuildWorking(r, o)
	return deliver(name, f.inputs(), s,
		printed(ctx, s, kind, func(w io.Writer, kind string) error {
			if kind == "html" {
				return reports.HTML(w, book)
			}
			return reports.Markdown(w, book)
		}))
}

func write(w io.Writer, r hazards.Review, kind string, o reports.Options) error {
	switch kind {
	case "json":
		return reports.JSON(w, r, o)
	case "html":
		return reports.HTML(w, reports.Build(r, o))
	}
	return reports.Markdown(w, reports.Build(r, o))
}

// stopsWhen are the words of --stop-when: expected leaves out what exceeds with the
// dangerous end of its range alone.
var stopsWhen = []string{"exceeds", "near", "expected"}

// mostNamed is how many matters --stop-when names; the output has all.
const mostNamed = 10

// stop returns an error if any finding reaches the verdict named, or work stops at any
// hold point. It names the worst, one a matter: the quantity, whatever limit and place
// it meets.
func stop(r hazards.Review, holds []string, when string) error {
	if when == "" {
		return nil
	}
	least := figure.Exceeds.Rank()
	if when == "near" {
		least = figure.Near.Rank()
	}
	count, found := map[string]int{}, 0
	var worst []*figure.Finding
	for i := range r.Findings {
		f := &r.Findings[i]
		if f.Verdict.Rank() < least || when == "expected" && f.Surely == figure.DangerousEnd {
			continue
		}
		if found++; count[f.Figure.Quantity] == 0 {
			worst = append(worst, f)
		}
		count[f.Figure.Quantity]++
	}
	if found+len(holds) == 0 {
		return nil
	}
	slices.SortStableFunc(worst, func(a, b *figure.Finding) int { return cmp.Compare(b.Verdict, a.Verdict) })
	lines := []string{fmt.Sprintf("%d finding(s) of %d matter(s) and %d hold point(s) reach --stop-when %s:", found,
		len(worst), len(holds), when)}
	for _, f := range worst[:min(mostNamed, len(worst))] {
		line := fmt.Sprintf("  %s: %s", f.ID(), f.Verdict)
		if n := count[f.Figure.Quantity]; n > 1 {
			line += fmt.Sprintf(" (and %d more of it)", n-1)
		}
		lines = append(lines, line)
	}
	if n := len(worst) - mostNamed; n > 0 {
		lines = append(lines, fmt.Sprintf("  and %d matter(s) more, in the review", n))
	}
	for _, h := range holds {
		lines = append(lines, "  hold point: "+h)
	}
	return &reached{strings.Join(lines, "\n")}
}
