package main

import (
	"io"

	"github.com/spf13/cobra"

	"etchbound/hazards"
	"etchbound/reports"
	"etchbound/reports/document"
	"etchbound/reports/draft"
)

// onePaper makes a command write one document of the review of one route, as Markdown, HTML
// or PDF. more are the flags beside the usual ones that have to be given with a text.
func onePaper(s streams, c *cobra.Command, brief bool,
	build func(hazards.Review, draft.Options) (document.Document, error), more ...string) *cobra.Command {
	return twoPapers(s, c, brief, false, func(r hazards.Review, o draft.Options) (twofold, error) {
		d, err := build(r, o)
		return twofold{d, nil}, err
	}, more...)
}

// twofold is a document, and how the same is written for programs.
type twofold struct {
	document document.Document
	json     func(io.Writer) error // nil where it is not
}

// twoPapers is onePaper that may write JSON too.
func twoPapers(s streams, c *cobra.Command, brief, programs bool,
	build func(hazards.Review, draft.Options) (twofold, error),
	more ...string) *cobra.Command {
	var f files
	var format, output string
	c.Args = exactly(1, "one route file")
	c.RunE = func(c *cobra.Command, args []string) error {
		f.route = args[0]
		if err := given(c, append([]string{"site", "limits", "batch", "format", "output"}, more...)...); err != nil {
			return err
		}
		kind, err := paperOf(format, output, f.inputs(), s)
		if err != nil {
			return err
		}
		if kind == "json" && !programs {
			return input("%s: found json, accepted are markdown, html and pdf", c.Name())
		}
		r, err := reviewOf(f, brief, s)
		if err != nil {
			return err
		}
		d, err := build(r, f.options(false))
		if err != nil {
			return err
		}
		return deliver(output, f.inputs(), s,
			printed(c.Context(), s, kind, func(w io.Writer, kind string) error {
				switch kind {
				case "json":
					return d.json(w)
				case "html":
					return reports.HTML(w, d.document)
				}
				return reports.Markdown(w, d.document)
			}))
	}
	caseFlags(c, &f)
	unitsFor(c, &f)
	c.Flags().StringVar(&f.batch, "batch", "", "at this mass of powder, such as \"50 g\"")
	says := "markdown, html or pdf"
	if programs {
		says = "markdown, html, pdf or json"
	}
	c.Flags().StringVar(&format, "format", "", says)
	c.Flags().StringVarP(&output, "output", "o", "", "file to write, whole or not at all")
	return c
}
