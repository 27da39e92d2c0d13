package main

import (
	"io"

	"github.com/spf13/cobra"

	"etchbound/hazards"
	"etchbound/reports"
)

func upsetCommand(s streams) *cobra.Command {
	var f files
	var format, output string
	c := &cobra.Command{
		Use:   "upset ROUTE",
		Short: "Work out what happens when something stops or is done wrong",
		Long: "Work out what each vessel does when cooling, stirring, extraction or power fail, and when\n" +
			"the powder, the acid or the order is wrong: the highest temperature, the largest flow of\n" +
			"hydrogen, the minutes to boiling, what would have kept it from happening, and what is done\n" +
			"first. The same stands in the review. The format follows the suffix of -o (.html, .pdf, .json,\n" +
			".csv, else Markdown) unless --format names it.",
		Example: "  etchbound upset testdata/routes/demo-lif-hcl-2g.yaml",
		Args:    exactly(1, "one route file"),
		RunE: func(c *cobra.Command, args []string) error {
			f.route = args[0]
			if err := given(c, "site", "limits", "batch", "format", "output"); err != nil {
				return err
			}
			kind, err := paperOf(format, output, f.inputs(), s, "csv")
			if err != nil {
				return err
			}
			r, err := reviewOf(f, false, s)
			if err != nil {
				return err
			}
			return deliver(output, f.inputs(), s,
				printed(c.Context(), s, kind, func(w io.Writer, kind string) error {
					return writeUpset(w, r, kind, f.options(false))
				}))
		},
	}
	caseFlags(c, &f)
	unitsFor(c, &f)
	c.Flags().StringVar(&f.batch, "batch", "", "at this mass of powder, such as \"50 g\"")
	c.Flags().StringVar(&format, "format", "", "markdown, html, pdf, json or csv")
	c.Flags().StringVarP(&output, "output", "o", "", "file to write, whole or not at all")
	return c
}

func writeUpset(w io.Writer, r hazards.Review, kind string, o reports.Options) error {
	switch kind {
	case "json":
		return reports.JSON(w, reports.OnlyUpset(r), o)
	case "csv":
		return reports.CSV(w, reports.OnlyUpset(r))
	case "html":
		return reports.HTML(w, reports.BuildUpset(r, o))
	}
	return reports.Markdown(w, reports.BuildUpset(r, o))
}
