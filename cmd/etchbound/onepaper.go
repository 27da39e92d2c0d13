package main

import (
	"io"

	"github.com/spf13/cobra"

	"etchbound/hazards"
	"etchbound/reports"
	"etchbound/reports/document"
	"etchbound/reports/draft"
)

// twofold is a document, and how the same is written for programs.
type twofold struct {
	document document.Document
	json     func(io.Writer) error
}

// onePaper makes a command write one document of the review of one route, as Markdown, HTML,
// PDF or JSON. more are the flags beside the usual ones that have to be given with a text.
func onePaper(s streams, c *cobra.Command, brief bool,
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
	c.Flags().StringVar(&format, "format", "", "markdown, html, pdf or json")
	c.Flags().StringVarP(&output, "output", "o", "", "file to write, whole or not at all")
	return c
}
