package main

import (
	"io"

	"github.com/spf13/cobra"

	"etchbound/reports"
)

func keepCommand(s streams) *cobra.Command {
	var f files
	var format, output string
	c := &cobra.Command{
		Use:   "keep ROUTE",
		Short: "Set side by side how the product of a route can be kept",
		Long: "Set side by side how stored product can be kept: cold, frozen, under argon, vented, with an\n" +
			"antioxidant, in isopropanol, dry. Each is the route with a few edits, assessed again: days to\n" +
			"10, 20 and 50 % lost, pressure at the end of the store, and the hazard that it brings itself;\n" +
			"what is weighed for the batch, what to watch, and when it goes to waste. None is recommended.\n" +
			"The same stands in the review. The format follows the suffix of -o (.html, .pdf, else\n" +
			"Markdown) unless --format names it.",
		Example: "  etchbound keep testdata/routes/demo-lif-hcl-2g.yaml",
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
				return input("keep: found json, accepted are markdown, html and pdf")
			}
			r, err := reviewOf(f, true, s)
			if err != nil {
				return err
			}
			return deliver(output, []string{f.route, f.site, f.limits}, s,
				printed(c.Context(), s, kind, func(w io.Writer, kind string) error {
					d := reports.BuildKeep(r, f.options(false))
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
