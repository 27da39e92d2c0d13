package main

import (
	"io"

	"github.com/spf13/cobra"

	"etchbound/reports"
	"etchbound/scaling/measuring"
)

func measureCommand(s streams) *cobra.Command {
	var f files
	var format, output string
	c := &cobra.Command{
		Use:   "measure ROUTE",
		Short: "Say what to measure first, by what it would cut of the figures asked for first",
		Long: "Rank for each figure that people ask for first the experiments by how far they would bring its\n" +
			"dangerous end back to the best estimate, with pictures; how each experiment is made and the key\n" +
			"of the route that takes its result; and what is not known at all. The format follows the suffix\n" +
			"of -o (.html, .pdf, else Markdown) unless --format names it.",
		Example: "  etchbound measure testdata/routes/demo-lif-hcl-2g.yaml",
		Args:    exactly(1, "one route file"),
		RunE: func(c *cobra.Command, args []string) error {
			f.route = args[0]
			if err := given(c, "site", "limits", "batch", "format", "output"); err != nil {
				return err
			}
			kind, err := formatOf(format, output)
			if err != nil {
				return err
			}
			if kind == "json" {
				return input("measure: found json, accepted are markdown, html and pdf")
			}
			r, err := reviewOf(f, false, s)
			if err != nil {
				return err
			}
			found := measuring.Of(&r)
			return deliver(output, []string{f.route, f.site, f.limits}, s,
				printed(c.Context(), s, kind, func(w io.Writer, kind string) error {
					d := reports.BuildMeasure(r, found, f.options(false))
					if kind == "html" {
						return reports.HTML(w, d)
					}
					return reports.Markdown(w, d)
				}))
		},
	}
	caseFlags(c, &f)
	unitsFor(c, &f)
	c.Flags().StringVar(&f.batch, "batch", "", "at this mass of powder, such as \"50 g\"")
	c.Flags().StringVar(&format, "format", "", "markdown, html or pdf")
	c.Flags().StringVarP(&output, "output", "o", "", "file to write, whole or not at all")
	return c
}
